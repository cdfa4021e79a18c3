package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.MatrixFeatures_DDRM;
import org.ejml.dense.row.RandomMatrices_DDRM;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FactorInverseTest {
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 31, 32, 33, 71})
  void inverseTimesMatrixIsIdentity(int size) {
    DMatrixRMaj matrix = RandomMatrices_DDRM.symmetricPosDef(size, new Random(size));
    CholeskyDecompositionInner_DDRM cholesky = new CholeskyDecompositionInner_DDRM(true);
    assertTrue(cholesky.decompose(matrix.copy()));
    DMatrixRMaj inverse = new DMatrixRMaj(size, size);
    new FactorInverse(size).invert(cholesky.getT().data, inverse.data);
    DMatrixRMaj product = new DMatrixRMaj(size, size);
    CommonOps_DDRM.mult(matrix, inverse, product);
    assertTrue(MatrixFeatures_DDRM.isIdentity(product, 1e-6 * size));
    assertEquals(inverse.get(0, size - 1), inverse.get(size - 1, 0));
  }
}

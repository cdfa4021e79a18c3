package traytally.numeric;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM;

/**
 * A factorised stand-in P = L Lᵀ for the Hessian H of the effects.
 *
 * <p>Effects are of three kinds: families, each an outer level with the columns nested in it (a
 * colour and its columns by species, clarity and season); blocks; and plain columns. Families meet
 * only through blocks and plain columns, so they are eliminated one by one. That ties blocks to
 * each other, where they were independent, if weakly: P leaves these ties out and has all else of
 * H.
 *
 * <pre>
 *     [ F   R   B ]        [ K           ]   F = K Kᵀ, U = K⁻¹ R, Y = K⁻¹ B
 * H = [ Rᵀ  D   C ],   L = [ Uᵀ  √d      ]   d = diag(D − Uᵀ U), V = (C − Uᵀ Y) / √d
 *     [ Bᵀ  Cᵀ  A ]        [ Yᵀ  Vᵀ   M  ]   M Mᵀ = A − Yᵀ Y − Vᵀ V
 * </pre>
 *
 * <p>(block Cholesky; Golub &amp; Van Loan, Matrix Computations, 4th ed., 2013, §4.2.9). Work and
 * memory are linear in the observations, the outer levels and the blocks.
 */
final class NestedFactor {

  private final CountDesign design;
  private final int[] plain; // the plain columns
  private final int[] number; // columns: place among the plain ones or in the family
  private final Family[] families;
  private final double[] root; // blocks: √d
  private final double[] v; // blocks × plain
  private final DMatrixRMaj rest; // M Mᵀ, plain × plain
  private final CholeskyDecompositionInner_DDRM cholesky =
      new CholeskyDecompositionInner_DDRM(true);
  private double[] m = new double[0]; // M, plain × plain, lower
  private final double[] plainPart; // scratch

  NestedFactor(CountDesign design) {
    this.design = design;
    this.number = new int[design.columns];
    int[] sizes = new int[design.outerLevels];
    int[] found = new int[design.columns];
    int count = 0;
    for (int c = 0; c < design.columns; c++) {
      if (design.outer[c] < 0) {
        found[count] = c;
        number[c] = count++;
      } else {
        number[c] = sizes[design.outer[c]]++;
      }
    }
    this.plain = Arrays.copyOf(found, count);
    this.families = families(sizes);
    this.root = new double[design.blocks];
    this.v = new double[design.blocks * count];
    this.rest = new DMatrixRMaj(count, count);
    this.plainPart = new double[count];
  }

  private Family[] families(int[] sizes) {
    int[][] columns = new int[sizes.length][];
    Arrays.setAll(columns, o -> new int[sizes[o]]);
    for (int c = 0; c < design.columns; c++) {
      if (design.outer[c] >= 0) {
        columns[design.outer[c]][number[c]] = c;
      }
    }
    int[][] observations = design.observationsByOuter();
    Family[] all = new Family[sizes.length];
    for (int o = 0; o < all.length; o++) {
      all[o] = new Family(design, columns[o], observations[o], number, plain.length);
    }
    return all;
  }

  /**
   * Builds and factorises P.
   *
   * @param weight W, one per observation
   * @param sds Λ, one standard deviation per effect
   * @return whether it could be factorised
   */
  boolean assemble(double[] weight, Effects sds) {
    double[] sd = sds.columns;
    double blockSd = sds.blocks[0];
    int p = plain.length;
    double[] a = rest.data;
    Arrays.fill(a, 0);
    Arrays.fill(v, 0);
    Arrays.fill(root, 1);
    int width = design.width;
    for (int i = 0; i < design.observations; i++) {
      int block = design.blockOf[i];
      root[block] += blockSd * blockSd * weight[i];
      for (int k = i * width; k < (i + 1) * width; k++) {
        int row = design.column[k];
        if (design.outer[row] < 0) {
          double scaled = weight[i] * sd[row];
          v[block * p + number[row]] += blockSd * scaled;
          for (int j = i * width; j <= k; j++) {
            int col = design.column[j];
            if (design.outer[col] < 0) {
              a[number[row] * p + number[col]] += scaled * sd[col];
            }
          }
        }
      }
    }
    for (int k = 0; k < p; k++) {
      a[k * p + k] += 1;
    }
    for (Family family : families) {
      family.fill(design, number, weight, sds);
      family.eliminate(root, v, rest.data);
    }
    eliminateBlocks();
    boolean sound = cholesky.decompose(rest);
    m = cholesky.getT().data;
    return sound;
  }

  private void eliminateBlocks() {
    int p = plain.length;
    for (int b = 0; b < root.length; b++) {
      root[b] = Math.sqrt(root[b]);
      Run.scale(v, b * p, 1 / root[b], p);
      for (int row = 0; row < p; row++) {
        double factor = v[b * p + row];
        if (factor != 0) {
          Run.add(rest.data, row * p, v, b * p, -factor, row + 1);
        }
      }
    }
  }

  /** ln |P|. */
  double logDeterminant() {
    double sum = 0;
    for (Family family : families) {
      sum += family.logDeterminant();
    }
    for (double each : root) {
      sum += 2 * Math.log(each);
    }
    for (int k = 0; k < plain.length; k++) {
      sum += 2 * Math.log(m[k * plain.length + k]);
    }
    return sum;
  }

  /** Solves P x = r in place. */
  void solve(Effects r) {
    forward(r);
    backward(r);
  }

  /** r becomes L⁻¹ r. */
  private void forward(Effects r) {
    gatherPlain(r);
    int p = plain.length;
    for (Family family : families) {
      family.forward(r, plainPart);
    }
    for (int b = 0; b < root.length; b++) {
      r.blocks[b] /= root[b];
      Run.add(plainPart, 0, v, b * p, -r.blocks[b], p);
    }
    for (int row = 0; row < p; row++) {
      plainPart[row] = (plainPart[row] - Run.dot(m, row * p, plainPart, row)) / m[row * p + row];
    }
    scatterPlain(r);
  }

  /** r becomes L⁻ᵀ r. */
  void backward(Effects r) {
    gatherPlain(r);
    int p = plain.length;
    for (int row = p - 1; row >= 0; row--) {
      plainPart[row] /= m[row * p + row];
      Run.add(plainPart, 0, m, row * p, -plainPart[row], row);
    }
    scatterPlain(r);
    for (int b = 0; b < root.length; b++) {
      r.blocks[b] = (r.blocks[b] - Run.dot(v, b * p, plainPart, p)) / root[b];
    }
    for (Family family : families) {
      family.backward(r, plainPart);
    }
  }

  /** r becomes L r. */
  void multiply(Effects r) {
    gatherPlain(r);
    int p = plain.length;
    for (int row = p - 1; row >= 0; row--) {
      plainPart[row] = Run.dot(m, row * p, plainPart, row + 1);
    }
    for (int b = 0; b < root.length; b++) {
      Run.add(plainPart, 0, v, b * p, r.blocks[b], p);
      r.blocks[b] *= root[b];
    }
    for (Family family : families) {
      family.multiply(r, plainPart);
    }
    scatterPlain(r);
  }

  private void gatherPlain(Effects r) {
    for (int k = 0; k < plain.length; k++) {
      plainPart[k] = r.columns[plain[k]];
    }
  }

  private void scatterPlain(Effects r) {
    for (int k = 0; k < plain.length; k++) {
      r.columns[plain[k]] = plainPart[k];
    }
  }

  /** The diagonal of P⁻¹ = L⁻ᵀ L⁻¹: the squared lengths of the columns of L⁻¹. */
  Effects inverseDiagonal() {
    int p = plain.length;
    double[] dense = new double[p * p]; // (M Mᵀ)⁻¹
    new FactorInverse(p).invert(m, dense);
    Effects diagonal = Effects.zero(design);
    for (int k = 0; k < p; k++) {
      diagonal.columns[plain[k]] = dense[k * p + k];
    }
    double[] ties = new double[p];
    for (int b = 0; b < root.length; b++) {
      System.arraycopy(v, b * p, ties, 0, p);
      diagonal.blocks[b] = (1 + Run.quadratic(dense, ties)) / (root[b] * root[b]);
    }
    for (Family family : families) {
      for (int f = 0; f < family.size(); f++) {
        diagonal.columns[family.column(f)] = family.inverseDiagonal(f, root, v, dense, ties);
      }
    }
    return diagonal;
  }
}

package traytally.numeric;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionBlock_DDRM;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionCommon_DDRM;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM;
import org.ejml.dense.row.linsol.chol.LinearSolverChol_DDRM;

/**
 * The Hessian I + Λ Xᵀ W X Λ of the effects, in units of their standard deviations Λ, factorised.
 *
 * <p>An observation has one block, so the blocks' part D is diagonal. Eliminating it leaves the
 * Schur complement S = C − Bᵀ D⁻¹ B of the columns (Golub &amp; Van Loan, Matrix Computations, 4th
 * ed., 2013, §3.2), dense, columns × columns; in these units neither D nor S has an eigenvalue
 * below one, so both can always be factorised. The cost of assembling is the sum over blocks of the
 * square of the columns each block touches.
 */
final class BlockedHessian implements Hessian {
  /** Columns from which a factorisation by tiles is faster; EJML's own switch is near. */
  private static final int BLOCKED_FROM = 200;

  private static final int TILE = 60; // EJML's usual width

  private final CountDesign design;
  private final DMatrixRMaj schur; // columns × columns; its factor after assembling
  private final DMatrixRMaj covariance; // V = Λ S⁻¹ Λ, once asked for
  private final CholeskyDecompositionCommon_DDRM cholesky;
  private final LinearSolverChol_DDRM solver;
  private final FactorInverse inverse;
  private final double[] columnSd;
  private double blockSd;
  private final double[] blockWeight; // blocks: Σ W
  private final double[] crossWeight; // as design.blockColumn: Σ W of block and column
  private final double[] local; // scratch, as wide as the widest block
  private final double[] blockVariance; // of each block's effect given the columns, σ² / D

  BlockedHessian(CountDesign design) {
    this.design = design;
    int p = design.columns;
    this.schur = new DMatrixRMaj(p, p);
    this.covariance = new DMatrixRMaj(p, p);
    this.cholesky =
        p < BLOCKED_FROM
            ? new CholeskyDecompositionInner_DDRM(true)
            : new CholeskyDecompositionBlock_DDRM(TILE);
    this.solver = new LinearSolverChol_DDRM(cholesky);
    this.inverse = new FactorInverse(p);
    this.columnSd = new double[p];
    this.blockWeight = new double[design.blocks];
    this.crossWeight = new double[design.blockColumn.length];
    this.local = new double[design.widestBlock()];
    this.blockVariance = new double[design.blocks];
  }

  /**
   * Builds and factorises the Hessian.
   *
   * @param weight W, one per observation
   * @param sds Λ, one standard deviation per effect
   * @return whether it could be factorised
   */
  @Override
  public boolean assemble(double[] weight, Effects sds) {
    System.arraycopy(sds.columns, 0, columnSd, 0, columnSd.length);
    blockSd = sds.blocks[0];
    Arrays.fill(schur.data, 0);
    Arrays.fill(crossWeight, 0);
    for (int b = 0; b < design.blocks; b++) {
      addObservations(b, weight);
      blockVariance[b] = blockSd * blockSd / (1 + blockSd * blockSd * blockWeight[b]);
      eliminate(b);
    }
    int p = design.columns;
    double[] s = schur.data;
    for (int row = 0; row < p; row++) {
      for (int col = 0; col <= row; col++) {
        double value = s[row * p + col] * columnSd[row] * columnSd[col];
        s[row * p + col] = value;
        s[col * p + row] = value;
      }
      s[row * p + row] += 1;
    }
    return p == 0 || solver.setA(schur);
  }

  private void addObservations(int block, double[] weight) {
    int p = design.columns;
    int width = design.width;
    int[] column = design.column;
    int first = design.blockColumnStart[block];
    double[] s = schur.data;
    double total = 0;
    for (int i = design.blockStart[block]; i < design.blockStart[block + 1]; i++) {
      double w = weight[i];
      total += w;
      for (int k = i * width; k < (i + 1) * width; k++) {
        crossWeight[first + design.place[k]] += w;
        for (int j = i * width; j <= k; j++) {
          s[column[k] * p + column[j]] += w;
        }
      }
    }
    blockWeight[block] = total;
  }

  private void eliminate(int block) {
    double variance = blockVariance[block];
    if (variance == 0) {
      return;
    }
    int p = design.columns;
    int[] column = design.blockColumn;
    double[] s = schur.data;
    int first = design.blockColumnStart[block];
    for (int k = first; k < design.blockColumnStart[block + 1]; k++) {
      double scaled = variance * crossWeight[k];
      int row = column[k] * p;
      for (int j = first; j <= k; j++) {
        s[row + column[j]] -= scaled * crossWeight[j];
      }
    }
  }

  /** The natural logarithm of the determinant. */
  @Override
  public double logDeterminant() {
    double sum = 0;
    for (int b = 0; b < design.blocks; b++) {
      sum += Math.log(1 + blockSd * blockSd * blockWeight[b]);
    }
    int p = design.columns;
    for (int k = 0; k < p; k++) {
      sum += 2 * Math.log(cholesky.getT().data[k * p + k]);
    }
    return sum;
  }

  /**
   * Solves H x = g in place.
   *
   * @param g overwritten by x
   */
  @Override
  public void solve(Effects g, double tolerance) {
    double[] blockPart = g.blocks;
    double[] columnPart = g.columns;
    for (int b = 0; b < design.blocks; b++) {
      double shift = blockSd * blockPart[b] / (1 + blockSd * blockSd * blockWeight[b]);
      for (int k = design.blockColumnStart[b]; k < design.blockColumnStart[b + 1]; k++) {
        int column = design.blockColumn[k];
        columnPart[column] -= shift * crossWeight[k] * columnSd[column];
      }
    }
    if (design.columns > 0) {
      DMatrixRMaj right = DMatrixRMaj.wrap(design.columns, 1, columnPart);
      solver.solve(right, right);
    }
    for (int b = 0; b < design.blocks; b++) {
      double sum = 0;
      for (int k = design.blockColumnStart[b]; k < design.blockColumnStart[b + 1]; k++) {
        int column = design.blockColumn[k];
        sum += crossWeight[k] * columnSd[column] * columnPart[column];
      }
      blockPart[b] = (blockPart[b] - blockSd * sum) / (1 + blockSd * blockSd * blockWeight[b]);
    }
  }

  @Override
  public void precondition(Effects g) {
    solve(g, 0);
  }

  /** Measured on 80 and 1,000 columns. */
  @Override
  public int patience() {
    return 8;
  }

  @Override
  public double doubt() {
    return 0;
  }

  /** Inverts S into V = Λ S⁻¹ Λ; the methods below speak of the last matrix inverted. */
  @Override
  public void invert() {
    int p = design.columns;
    if (p == 0) {
      return;
    }
    inverse.invert(cholesky.getT().data, covariance.data);
    for (int row = 0; row < p; row++) {
      for (int col = 0; col < p; col++) {
        covariance.data[row * p + col] *= columnSd[row] * columnSd[col];
      }
    }
  }

  /** The posterior variance of a column's effect, in units of its prior variance. */
  @Override
  public double shrunkVariance(int column) {
    double variance = columnSd[column] * columnSd[column];
    return covariance.data[column * design.columns + column] / variance;
  }

  /** The joint posterior of the columns' effects; this Hessian must not be used afterwards. */
  @Override
  public JointEffects posterior() {
    double[] factor = design.columns == 0 ? new double[0] : cholesky.getT().data;
    return new DenseEffects(covariance.data, factor, columnSd);
  }

  /**
   * The posterior variances of each observation's linear predictor and each block's effect.
   *
   * <p>Given the columns v, a block's effect has mean (up to a constant) −c bᵀ v and variance c,
   * with b its cross weights and c = σ²/D; so a predictor x + block has variance c + (x − c b)ᵀ V
   * (x − c b).
   *
   * @param predictor one per observation, overwritten
   * @param shrunkBlock one per block, in units of the prior variance, overwritten
   */
  @Override
  public void variances(double[] predictor, double[] shrunkBlock) {
    for (int b = 0; b < design.blocks; b++) {
      double c = blockVariance[b];
      double crossVariance = c == 0 ? 0 : spread(b);
      for (int i = design.blockStart[b]; i < design.blockStart[b + 1]; i++) {
        predictor[i] = c + c * c * crossVariance + ownVariance(i, c);
      }
      shrunkBlock[b] = (1 + c * crossVariance) / (1 + blockSd * blockSd * blockWeight[b]);
    }
  }

  /** Fills {@code local} with V b over the block's columns; returns bᵀ V b. */
  private double spread(int block) {
    double[] v = covariance.data;
    int[] column = design.blockColumn;
    int first = design.blockColumnStart[block];
    int end = design.blockColumnStart[block + 1];
    double total = 0;
    for (int k = first; k < end; k++) {
      int row = column[k] * design.columns;
      double sum = 0;
      for (int j = first; j < end; j++) {
        sum += v[row + column[j]] * crossWeight[j];
      }
      local[k - first] = sum;
      total += sum * crossWeight[k];
    }
    return total;
  }

  /** xᵀ V x − 2 c xᵀ V b of one observation. */
  private double ownVariance(int observation, double c) {
    double[] v = covariance.data;
    int[] column = design.column;
    int first = observation * design.width;
    double sum = 0;
    for (int k = first; k < first + design.width; k++) {
      int row = column[k] * design.columns;
      sum += v[row + column[k]];
      for (int j = first; j < k; j++) {
        sum += 2 * v[row + column[j]];
      }
      if (c != 0) {
        sum -= 2 * c * local[design.place[k]];
      }
    }
    return sum;
  }
}

package traytally.numeric;

import java.util.Arrays;
import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * The Hessian where it has too many columns to be factorised.
 *
 * <p>H is only ever multiplied with, at a cost linear in the observations. {@link NestedFactor}'s P
 * = L Lᵀ is so near to it that conjugate gradients need a few products (Golub &amp; Van Loan,
 * Matrix Computations, 4th ed., 2013, §11.5.2). What P and H differ by in determinant and inverse
 * is estimated with a few fixed probes u of random signs: with b = L u, y = L⁻ᵀ u and x = H⁻¹ b,
 *
 * <pre>
 * ln|H| − ln|P| = E uᵀ ln(L⁻¹ H L⁻ᵀ) u,   by Lanczos quadrature from the same iterations
 * diag H⁻¹ − diag P⁻¹ = E (x − y) ∘ y
 * </pre>
 *
 * <p>(Hutchinson, Communications in Statistics – Simulation 19(2), 1990, 433–450; Ubaru, Chen &amp;
 * Saad, SIAM Journal on Matrix Analysis 38(4), 2017, 1075–1099.) The probes are the same at every
 * evaluation, so that the estimates are smooth in the parameters.
 */
final class NestedHessian implements Hessian {
  /** From here on it is faster than {@link BlockedHessian}: measured, see docs/benchmarks.md. */
  static final int FEWEST_COLUMNS = 400;

  private static final int PROBES = 6;
  private static final long SEED = 20_260_501;

  /** The error left in a probe's solution, of its size: far below what probing leaves open. */
  private static final double PROBE_TOLERANCE = 5e-2;

  private static final int MOST_ITERATIONS = 500;

  private final CountDesign design;
  private final NestedFactor factor;
  private final double[] perObservation; // scratch
  private final Effects[] signs; // one per probe
  private double[] weight = new double[0];
  private final Effects sds;

  private boolean probed;
  private double determinantGap; // ln|H| − ln|P|
  private Effects shrunk; // diag H⁻¹
  private final double[] predictorVariance; // observations

  NestedHessian(CountDesign design) {
    this.design = design;
    this.factor = new NestedFactor(design);
    this.perObservation = new double[design.observations];
    this.sds = Effects.zero(design);
    this.shrunk = Effects.zero(design);
    this.predictorVariance = new double[design.observations];
    Random random = new Random(SEED);
    this.signs = new Effects[PROBES];
    for (int probe = 0; probe < PROBES; probe++) {
      signs[probe] = Effects.zero(design);
      Arrays.setAll(signs[probe].columns, k -> random.nextBoolean() ? 1 : -1);
      Arrays.setAll(signs[probe].blocks, k -> random.nextBoolean() ? 1 : -1);
    }
  }

  @Override
  public boolean assemble(double[] newWeight, Effects newSds) {
    weight = newWeight.clone();
    sds.set(newSds);
    probed = false;
    return factor.assemble(weight, sds);
  }

  /** H v. */
  private Effects times(Effects v) {
    Effects image = v.copy();
    image.scale(sds);
    design.sum(image, perObservation);
    for (int i = 0; i < perObservation.length; i++) {
      perObservation[i] *= weight[i];
    }
    design.collect(perObservation, image);
    image.scale(sds);
    image.add(1, v);
    return image;
  }

  /** What conjugate gradients found, and the lengths and ratios of its steps. */
  private static final class Solution {
    private final Effects x;
    private final double[] lengths;
    private final double[] ratios;

    private Solution(Effects x, double[] lengths, double[] ratios) {
      this.x = x;
      this.lengths = lengths;
      this.ratios = ratios;
    }
  }

  /** Solves H x = b; the lengths and ratios of the steps are those of Lanczos' method too. */
  private Solution conjugateGradients(Effects b, double tolerance) {
    Effects x = Effects.zero(design);
    Effects residual = b.copy();
    Effects conditioned = residual.copy();
    factor.solve(conditioned);
    double size = residual.dot(conditioned);
    double enough = tolerance * tolerance * size;
    Effects direction = conditioned.copy();
    double[] lengths = new double[MOST_ITERATIONS];
    double[] ratios = new double[MOST_ITERATIONS];
    int steps = 0;
    while (size > enough && steps < MOST_ITERATIONS) {
      Effects image = times(direction);
      double length = size / direction.dot(image);
      x.add(length, direction);
      residual.add(-length, image);
      conditioned.set(residual);
      factor.solve(conditioned);
      double left = residual.dot(conditioned);
      lengths[steps] = length;
      ratios[steps++] = left / size;
      conditioned.add(left / size, direction);
      direction.set(conditioned);
      size = left;
    }
    return new Solution(x, Arrays.copyOf(lengths, steps), Arrays.copyOf(ratios, steps));
  }

  /** Estimates, once for each assembly, what P leaves open of H. */
  private void probe() {
    if (probed) {
      return;
    }
    determinantGap = 0;
    Arrays.fill(predictorVariance, 0);
    shrunk = factor.inverseDiagonal();
    double[] other = new double[design.observations];
    for (Effects sign : signs) {
      Effects b = sign.copy();
      factor.multiply(b);
      Effects y = sign.copy();
      factor.backward(y);
      Solution solution = conjugateGradients(b, PROBE_TOLERANCE);
      determinantGap += sign.dot(sign) * meanLog(solution) / PROBES;
      Effects x = solution.x;
      Effects gap = x.copy();
      gap.add(-1, y);
      gap.scale(y);
      shrunk.add(1.0 / PROBES, gap);
      x.scale(sds);
      y.scale(sds);
      design.sum(x, other);
      design.sum(y, perObservation);
      for (int i = 0; i < other.length; i++) {
        predictorVariance[i] += other[i] * perObservation[i] / PROBES;
      }
    }
    bound(shrunk.columns);
    bound(shrunk.blocks);
    probed = true;
  }

  /** A share of a prior variance, whatever the probes say. */
  private static void bound(double[] shares) {
    for (int k = 0; k < shares.length; k++) {
      shares[k] = Math.max(Double.MIN_NORMAL, Math.min(1, shares[k]));
    }
  }

  /** Σ τ² ln λ over the eigenvalues λ of Lanczos' tridiagonal, τ the first of each vector. */
  private static double meanLog(Solution solution) {
    int n = solution.lengths.length;
    if (n == 0) {
      return 0;
    }
    DMatrixRMaj tridiagonal = new DMatrixRMaj(n, n);
    for (int j = 0; j < n; j++) {
      double before = j == 0 ? 0 : solution.ratios[j - 1] / solution.lengths[j - 1];
      tridiagonal.set(j, j, 1 / solution.lengths[j] + before);
      if (j > 0) {
        double beside = Math.sqrt(solution.ratios[j - 1]) / solution.lengths[j - 1];
        tridiagonal.set(j, j - 1, beside);
        tridiagonal.set(j - 1, j, beside);
      }
    }
    EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(n, true, true);
    if (!eigen.decompose(tridiagonal)) {
      return Double.NaN;
    }
    double sum = 0;
    for (int j = 0; j < n; j++) {
      double first = eigen.getEigenVector(j).get(0);
      sum += first * first * Math.log(eigen.getEigenvalue(j).getReal());
    }
    return sum;
  }

  @Override
  public double logDeterminant() {
    probe();
    return factor.logDeterminant() + determinantGap;
  }

  /** Even made anew, P takes a dozen products; an older one some more. */
  @Override
  public int patience() {
    return 40;
  }

  /** Value and slopes are probed apart, so they agree only nearly. */
  @Override
  public double doubt() {
    return 0.05;
  }

  @Override
  public void solve(Effects g, double tolerance) {
    g.set(conjugateGradients(g, tolerance).x);
  }

  @Override
  public void precondition(Effects g) {
    factor.solve(g);
  }

  @Override
  public void invert() {
    probe();
  }

  @Override
  public double shrunkVariance(int column) {
    return shrunk.columns[column];
  }

  @Override
  public void variances(double[] predictor, double[] shrunkBlock) {
    System.arraycopy(predictorVariance, 0, predictor, 0, predictor.length);
    System.arraycopy(shrunk.blocks, 0, shrunkBlock, 0, shrunkBlock.length);
  }

  @Override
  public JointEffects posterior() {
    return new NestedEffects(this, design);
  }

  Effects sds() {
    return sds;
  }

  /** H⁻¹ b, as nearly as the tolerance says. */
  Effects solved(Effects b, double tolerance) {
    return conjugateGradients(b, tolerance).x;
  }

  /** A draw with covariance H: ε + Λ Xᵀ √W ε'. */
  Effects drawScores(Random random) {
    Arrays.setAll(perObservation, i -> Math.sqrt(weight[i]) * random.nextGaussian());
    Effects drawn = Effects.zero(design);
    design.collect(perObservation, drawn);
    drawn.scale(sds);
    Effects own = Effects.zero(design);
    Arrays.setAll(own.columns, k -> random.nextGaussian());
    Arrays.setAll(own.blocks, k -> random.nextGaussian());
    drawn.add(1, own);
    return drawn;
  }
}

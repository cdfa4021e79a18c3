package traytally.numeric;

/**
 * The gradient of the Laplace approximation by the model's parameters, at a mode just found.
 *
 * <p>It follows the mode ẑ by the implicit function theorem, dẑ/dt = H⁻¹ ∂F'/∂t, as in Skaug &amp;
 * Fournier, "Automatic approximation of the marginal likelihood in non-Gaussian hierarchical
 * models", Computational Statistics &amp; Data Analysis 51, 2006, 699–709,
 * doi:10.1016/j.csda.2006.03.005. One adjoint solve serves all parameters: with v the posterior
 * variance of each η, q = H⁻¹ Λ Xᵀ (−ℓ''' v), a = X Λ q and m = −ℓ''' v − W a,
 *
 * <pre>
 * d ln|H| / d ln σ = 2 Σ (1 − (H⁻¹)ₗₗ) + Σ uₗ (Xᵀ m)ₗ + Σ qₗ zₗ   over the levels l of a group
 * d ln|H| / d β0   = Σ m
 * d ln|H| / d ln κ = Σ v ∂W/∂ln κ + Σ a ∂ℓ'/∂ln κ
 * </pre>
 *
 * <p>while F itself changes by Σ zₗ², Σ ℓ' and Σ ∂ℓ/∂ln κ.
 */
final class LaplaceGradient {
  /** The error left in the adjoint, of its size: far below that of variances that are probed. */
  private static final double SLOPE_TOLERANCE = 1e-4;

  private final LaplaceApproximation mode;
  private final CountDesign design;
  private final double[] variance; // v, observations
  private final double[] adjoint; // a, observations
  private final double[] moved; // m, observations
  private final double[] shrunkBlock; // blocks: (H⁻¹)ₗₗ
  private final Effects pushed; // q
  private final Effects collected; // Xᵀ m
  private final Effects effects; // u

  LaplaceGradient(LaplaceApproximation mode) {
    this.mode = mode;
    this.design = mode.design();
    this.variance = new double[design.observations];
    this.adjoint = new double[design.observations];
    this.moved = new double[design.observations];
    this.shrunkBlock = new double[design.blocks];
    this.pushed = Effects.zero(design);
    this.collected = Effects.zero(design);
    this.effects = mode.effects();
    mode.hessian().invert();
    mode.hessian().variances(variance, shrunkBlock);
    followMode();
  }

  private void followMode() {
    mode.likelihood().weightSlopes(mode.linearPredictors(), moved);
    for (int i = 0; i < moved.length; i++) {
      moved[i] *= variance[i];
    }
    design.collect(moved, pushed);
    pushed.scale(mode.sds());
    mode.hessian().solve(pushed, SLOPE_TOLERANCE);
    Effects push = pushed.copy();
    push.scale(mode.sds());
    design.sum(push, adjoint);
    double[] weight = mode.weights();
    for (int i = 0; i < moved.length; i++) {
      moved[i] -= weight[i] * adjoint[i];
    }
    design.collect(moved, collected);
  }

  /** By β0, where it is a parameter. */
  double byIntercept() {
    double[] score = mode.scores();
    double sum = 0;
    for (int i = 0; i < moved.length; i++) {
      sum += score[i] - moved[i] / 2;
    }
    return sum;
  }

  /** By ln σ of the block effects. */
  double byBlockSd() {
    double[] z = mode.mode().blocks;
    double[] u = effects.blocks;
    double sum = 0;
    for (int b = 0; b < z.length; b++) {
      double determinant =
          2 * (1 - shrunkBlock[b]) + u[b] * collected.blocks[b] + pushed.blocks[b] * z[b];
      sum += z[b] * z[b] - determinant / 2;
    }
    return sum;
  }

  /** By ln σ of a group of columns. */
  double byGroupSd(int group) {
    double[] z = mode.mode().columns;
    double[] u = effects.columns;
    double sum = 0;
    for (int k = design.groupStart[group]; k < design.groupStart[group + 1]; k++) {
      double shrunk = mode.hessian().shrunkVariance(k);
      double determinant =
          2 * (1 - shrunk) + u[k] * collected.columns[k] + pushed.columns[k] * z[k];
      sum += z[k] * z[k] - determinant / 2;
    }
    return sum;
  }

  /** By ln κ. */
  double byLogDispersion(NegativeBinomialLikelihood counts) {
    double[] eta = mode.linearPredictors();
    return counts.dispersionSlope(eta) - counts.determinantSlope(eta, variance, adjoint) / 2;
  }

  /**
   * How sharply L bends in ln σ of the block, about: 2 Σ (1 − (H⁻¹)ₗₗ)², which is exact for normal
   * observations at the mode.
   */
  double blockSdCurvature() {
    double sum = 0;
    for (double shrunk : shrunkBlock) {
      sum += 2 * (1 - shrunk) * (1 - shrunk);
    }
    return sum;
  }

  /** The same for a group of columns. */
  double groupSdCurvature(int group) {
    double sum = 0;
    for (int k = design.groupStart[group]; k < design.groupStart[group + 1]; k++) {
      double kept = 1 - mode.hessian().shrunkVariance(k);
      sum += 2 * kept * kept;
    }
    return sum;
  }
}

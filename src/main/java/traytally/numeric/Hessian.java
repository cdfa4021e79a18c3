package traytally.numeric;

/**
 * The Hessian H = I + Λ Xᵀ W X Λ of the effects, in units of their standard deviations Λ.
 *
 * <p>What is asked of it holds for the weights it was last assembled with.
 */
sealed interface Hessian permits BlockedHessian, NestedHessian {

  /** The Hessian that suits a design: exact, or where that would take too long, by probes. */
  static Hessian of(CountDesign design) {
    return design.columns >= NestedHessian.FEWEST_COLUMNS && design.nested()
        ? new NestedHessian(design)
        : new BlockedHessian(design);
  }

  /**
   * Builds and factorises.
   *
   * @param weight W, one per observation
   * @param sds Λ, one standard deviation per effect
   * @return whether it could be factorised
   */
  boolean assemble(double[] weight, Effects sds);

  /** The natural logarithm of the determinant. */
  double logDeterminant();

  /** How far {@link #logDeterminant} may be off beside rounding. */
  double doubt();

  /**
   * Solves H x = g in place.
   *
   * @param tolerance the error that may be left, of the size of x, where it saves work
   */
  void solve(Effects g, double tolerance);

  /** How many products with H cost less than to assemble it anew. */
  int patience();

  /** Solves a system near H x = g in place, quickly. */
  void precondition(Effects g);

  /** Makes ready what the methods below tell. */
  void invert();

  /** The posterior variance of a column's effect, in units of its prior variance. */
  double shrunkVariance(int column);

  /**
   * The posterior variances of each observation's linear predictor and each block's effect.
   *
   * @param predictor one per observation, overwritten
   * @param shrunkBlock one per block, in units of the prior variance, overwritten
   */
  void variances(double[] predictor, double[] shrunkBlock);

  /** The joint posterior of the columns' effects; this Hessian must not be used afterwards. */
  JointEffects posterior();
}

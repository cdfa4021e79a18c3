package traytally.numeric;

/**
 * The log likelihood ℓ of the counts given their linear predictors η = ln μ, with its derivatives.
 *
 * <p>All arrays have one entry per observation, in the design's order. An η beyond ±{@link
 * #HIGHEST} counts as ±{@link #HIGHEST}, so that no hostile log overflows.
 */
sealed interface CountLikelihood permits PoissonLikelihood, NegativeBinomialLikelihood {
  /** e³⁰⁰ squared is still a double; no log comes near it. */
  double HIGHEST = 300;

  /**
   * Returns Σ ℓ and fills in its derivatives.
   *
   * @param eta the linear predictors
   * @param first dℓ/dη, overwritten
   * @param weight the observed information −d²ℓ/dη², never negative, overwritten
   */
  double evaluate(double[] eta, double[] first, double[] weight);

  /** Fills in how the observed information changes with the predictor, −d³ℓ/dη³. */
  void weightSlopes(double[] eta, double[] slope);

  /** The rounding error to expect in Σ ℓ, whose largest terms cancel against Σ ln y!. */
  double noise();

  static double bounded(double eta) {
    return Math.max(-HIGHEST, Math.min(HIGHEST, eta));
  }
}

package traytally.numeric;

import java.util.Map;

/**
 * What is believed of the model's scales before any count is seen.
 *
 * @param sdScales by grouping, the scale s of the half-normal prior of its standard deviation, p(σ)
 *     ∝ exp(−σ² / 2s²)
 * @param logDispersionMean mean of the normal prior of ln κ
 * @param logDispersionSd standard deviation of the normal prior of ln κ
 * @param interceptSd standard deviation of the intercept's normal prior, whose mean is 0
 */
public record Priors(
    Map<String, Double> sdScales,
    double logDispersionMean,
    double logDispersionSd,
    double interceptSd) {
  public Priors {
    sdScales = Map.copyOf(sdScales);
    sdScales.forEach((name, scale) -> requirePositive(name, scale));
    requirePositive("log dispersion", logDispersionSd);
    requirePositive("intercept", interceptSd);
    if (!Double.isFinite(logDispersionMean)) {
      throw new IllegalArgumentException("prior mean must be finite: " + logDispersionMean);
    }
  }

  /** The given scales, with ln κ ~ N(ln 2, 1) and an intercept ~ N(0, 10²) (common practice). */
  public static Priors halfNormal(Map<String, Double> sdScales) {
    return new Priors(sdScales, Math.log(2), 1, 10);
  }

  double sdScale(String grouping) {
    Double scale = sdScales.get(grouping);
    if (scale == null) {
      throw new IllegalArgumentException("no prior scale for the grouping " + grouping);
    }
    return scale;
  }

  private static void requirePositive(String what, double scale) {
    if (!(scale > 0) || Double.isInfinite(scale)) {
      throw new IllegalArgumentException(what + ": prior scale must be positive: " + scale);
    }
  }
}

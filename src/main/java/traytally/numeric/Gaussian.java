package traytally.numeric;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The normal distribution; with deviation 0, the certainty of its mean.
 *
 * @param sd standard deviation, not negative
 */
public record Gaussian(double mean, double sd) {
  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  public Gaussian {
    if (!Double.isFinite(mean) || !(sd >= 0) || Double.isInfinite(sd)) {
      throw new IllegalArgumentException("not a normal distribution: " + mean + ", " + sd);
    }
  }

  /** P(Y > x); one half where nothing speaks either way, at a certain mean of x. */
  public double above(double x) {
    if (sd == 0) {
      return mean == x ? 0.5 : mean > x ? 1 : 0;
    }
    return STANDARD.survivalProbability((x - mean) / sd);
  }

  /** The x with P(Y ≤ x) = {@code probability}. */
  public double quantile(double probability) {
    return sd == 0 ? mean : mean + sd * STANDARD.inverseCumulativeProbability(probability);
  }
}

package traytally.numeric;

import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.numbers.gamma.RegularizedGamma;

/**
 * The negative binomial distribution by its mean and dispersion, NB2: variance = mean + mean² /
 * dispersion. An infinite dispersion makes it Poisson.
 *
 * <p>Distribution function: regularised incomplete beta I_p(κ, x + 1) with p = κ/(κ + μ) (Johnson,
 * Kemp &amp; Kotz, Univariate Discrete Distributions, 3rd ed., 2005, eq. 5.31); Poisson: Q(x + 1,
 * μ) (the same, eq. 4.25).
 *
 * @param mean μ, not negative
 * @param dispersion κ, above 0, may be infinite
 */
public record NegativeBinomial(double mean, double dispersion) {
  /**
   * Dispersion per unit of (1 + mean) from which the Poisson stands in. The probabilities differ by
   * less than (1 + mean) / κ, 1e-9, and the incomplete beta would need ever more terms.
   */
  private static final double AS_GOOD_AS_POISSON = 1e9;

  public NegativeBinomial {
    if (!(mean >= 0) || Double.isInfinite(mean)) {
      throw new IllegalArgumentException("mean must be 0 or more and finite: " + mean);
    }
    if (!(dispersion > 0)) {
      throw new IllegalArgumentException("dispersion must be above 0: " + dispersion);
    }
    if (dispersion > AS_GOOD_AS_POISSON * (1 + mean)) {
      dispersion = Double.POSITIVE_INFINITY;
    }
  }

  /** The one with these moments; Poisson where the variance is not above the mean. */
  public static NegativeBinomial ofMoments(double mean, double variance) {
    if (!(variance >= 0)) {
      throw new IllegalArgumentException("variance must be 0 or more: " + variance);
    }
    double excess = variance - mean;
    return new NegativeBinomial(
        mean, mean > 0 && excess > 0 ? mean * mean / excess : Double.POSITIVE_INFINITY);
  }

  public double variance() {
    return mean + mean * mean / dispersion;
  }

  /** P(Y ≤ x). */
  public double cumulative(int x) {
    return x < 0 ? 0 : 1 - tail(x, dispersion);
  }

  /** P(Y ≥ x), accurate however small. */
  public double atLeast(int x) {
    return x <= 0 ? 1 : tail(x - 1, dispersion);
  }

  /**
   * E(Y − x)⁺, the mean shortage when x are on hand.
   *
   * <p>By y P(y; κ) = μ P(y − 1; κ + 1), with p the same, it is μ P(Y' ≥ x) − x P(Y > x) with Y' of
   * dispersion κ + 1; for the Poisson Y' is Y.
   */
  public double expectedShortage(int x) {
    if (x <= 0) {
      return mean - x;
    }
    double above = mean * tail(x - 1, dispersion + 1);
    return Math.max(0, above - x * tail(x, dispersion));
  }

  /** The least x with P(Y ≤ x) ≥ {@code probability}. */
  public int quantile(double probability) {
    if (!(probability >= 0 && probability < 1)) {
      throw new IllegalArgumentException("probability must be from 0 to below 1: " + probability);
    }
    double allowed = 1 - probability;
    int high = (int) Math.min(Integer.MAX_VALUE / 2.0, Math.ceil(mean));
    while (atLeast(high + 1) > allowed && high < Integer.MAX_VALUE / 2) {
      high = 2 * high + 1;
    }
    int low = -1;
    while (high - low > 1) {
      int middle = low + (high - low) / 2;
      if (atLeast(middle + 1) > allowed) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** P(Y > x) for x ≥ 0, at dispersion {@code size} but with this distribution's p. */
  private double tail(int x, double size) {
    if (mean == 0) {
      return 0;
    }
    if (Double.isInfinite(dispersion)) {
      return RegularizedGamma.P.value(x + 1.0, mean);
    }
    return RegularizedBeta.value(mean / (dispersion + mean), x + 1.0, size);
  }
}

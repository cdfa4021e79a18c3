package traytally.numeric;

/**
 * What is known of a quantity on the log rate: normal with this mean and variance.
 *
 * @param mean the posterior mode
 * @param variance never negative
 */
public record Estimate(double mean, double variance) {
  public Estimate {
    if (!Double.isFinite(mean) || !(variance >= 0)) {
      throw new IllegalArgumentException("not an estimate: " + mean + ", variance " + variance);
    }
  }

  /** The standard deviation. */
  public double sd() {
    return Math.sqrt(variance);
  }
}

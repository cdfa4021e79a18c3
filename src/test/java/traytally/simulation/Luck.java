package traytally.simulation;

import java.util.Random;

/** What chance brings a simulated angler; the same seed brings the same. */
public final class Luck {
  private final Random random;

  /** Neighbouring seeds of Random begin alike; a factor spreads them (Knuth's golden ratio). */
  Luck(long seed) {
    this(new Random(seed * 0x9E3779B97F4A7C15L));
  }

  /** What that source brings. */
  public Luck(Random random) {
    this.random = random;
  }

  /** Uniform from 0 to 1. */
  double share() {
    return random.nextDouble();
  }

  /** A whole number from 0, below {@code bound}. */
  int below(int bound) {
    return random.nextInt(bound);
  }

  /** Standard normal. */
  double gaussian() {
    return random.nextGaussian();
  }

  double[] gaussians(int count, double sd) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = sd * random.nextGaussian();
    }
    return values;
  }

  /** Poisson about a gamma mean: negative binomial. */
  int count(double mean, double dispersion) {
    double rate = mean * gamma(dispersion) / dispersion;
    int count = 0;
    double product = random.nextDouble();
    double limit = Math.exp(-Math.min(rate, 500));
    while (product > limit) {
      count++;
      product *= random.nextDouble();
    }
    return count;
  }

  /**
   * A gamma draw of scale 1 (Marsaglia &amp; Tsang, ACM Transactions on Mathematical Software
   * 26(3), 2000, 363–372).
   */
  public double gamma(double shape) {
    if (shape < 1) {
      return gamma(shape + 1) * Math.pow(1 - random.nextDouble(), 1 / shape);
    }
    double d = shape - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double x = random.nextGaussian();
      double v = Math.pow(1 + c * x, 3);
      double u = 1 - random.nextDouble();
      if (v > 0 && Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
        return d * v;
      }
    }
  }
}

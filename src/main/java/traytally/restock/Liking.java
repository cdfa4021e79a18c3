package traytally.restock;

import java.util.Arrays;

/**
 * How much each plastic is wanted, given how often it was chosen.
 *
 * <p>With c choices to a trip, a plastic tied on for the time n of e trips' worth of chances (Σ w
 * a_p / V, see {@link Choice}) was chosen c n times, about Poisson with mean c e v. Its weight v is
 * its prior times a log-normal of mean one, ln v = ln prior + z − σ²/2 with z ~ N(0, σ²): likings
 * multiply. Posterior mean and spread of v are by the trapezoid rule about the mode of z, exact to
 * many digits for so smooth a function (Trefethen &amp; Weideman, SIAM Review 56, 2014, 385). σ,
 * how far likings differ, is the mode of its marginal likelihood times a half-normal prior.
 */
final class Liking {
  /** Half-normal scale of σ: wide, likings may differ by a factor of fifty (assumption). */
  private static final double PRIOR_SD = 2;

  /** σ where no log tells. */
  private static final double ASSUMED_SD = 1;

  private static final double LEAST_SD = 0.05;
  private static final double MOST_SD = 4;

  /** From one σ looked at to the next. */
  private static final double STEP = 1.15;

  /** Points of the rule, and how many standard deviations they reach either way. */
  private static final int POINTS = 41;

  private static final double REACH = 8;

  private static final int MOST_NEWTON_STEPS = 100;

  private final double[] mean;
  private final double[] doubt;
  private final double sd;
  private double logMarginal; // up to what does not depend on σ

  /**
   * By plastic, and σ.
   *
   * @param chosen c n
   * @param expected c e × the prior weight
   */
  Liking(double[] chosen, double[] expected, double[] prior, double sd) {
    this.mean = new double[chosen.length];
    this.doubt = new double[chosen.length];
    this.sd = sd;
    for (int p = 0; p < chosen.length; p++) {
      integrate(p, chosen[p], expected[p] * Math.exp(-sd * sd / 2), prior[p]);
    }
  }

  /** The likeliest σ. */
  static double sd(double[] chosen, double[] expected, double[] prior) {
    if (Arrays.stream(chosen).allMatch(each -> each == 0)) {
      return ASSUMED_SD;
    }
    double likeliest = LEAST_SD;
    double most = Double.NEGATIVE_INFINITY;
    for (double sd = LEAST_SD; sd < MOST_SD; sd *= STEP) {
      double log =
          new Liking(chosen, expected, prior, sd).logMarginal - sd * sd / (2 * PRIOR_SD * PRIOR_SD);
      if (log > most) {
        most = log;
        likeliest = sd;
      }
    }
    return likeliest;
  }

  /** The moments of exp(z), its density being exp(chosen z − rate e^z − z² / 2σ²). */
  private void integrate(int p, double chosen, double rate, double prior) {
    double mode = mode(chosen, rate);
    double width = 1 / Math.sqrt(rate * Math.exp(mode) + 1 / (sd * sd));
    double top = logDensity(mode, chosen, rate);
    double[] moments = new double[3];
    for (int i = 0; i < POINTS; i++) {
      double z = mode + width * REACH * (2.0 * i / (POINTS - 1) - 1);
      double density = Math.exp(logDensity(z, chosen, rate) - top);
      moments[0] += density;
      moments[1] += density * Math.exp(z - mode);
      moments[2] += density * Math.exp(2 * (z - mode));
    }
    double first = moments[1] / moments[0];
    mean[p] = prior * first * Math.exp(mode - sd * sd / 2);
    doubt[p] = Math.max(0, moments[2] / moments[0] / (first * first) - 1);
    logMarginal += top + Math.log(moments[0] * width / sd) - chosen * sd * sd / 2;
  }

  private double logDensity(double z, double chosen, double rate) {
    return chosen * z - rate * Math.exp(z) - z * z / (2 * sd * sd);
  }

  /** Newton's steps from the right, whence they fall steadily: the slope is concave. */
  private double mode(double chosen, double rate) {
    double z = chosen > rate && rate > 0 ? Math.log(chosen / rate) : 0;
    if (rate == 0) {
      return chosen * sd * sd;
    }
    for (int step = 0; step < MOST_NEWTON_STEPS; step++) {
      double fished = rate * Math.exp(z);
      double change = (chosen - fished - z / (sd * sd)) / (fished + 1 / (sd * sd));
      z += change;
      if (Math.abs(change) < 1e-9) {
        break;
      }
    }
    return z;
  }

  /** The weights, summing to one. */
  double[] weights() {
    double sum = 0;
    for (double each : mean) {
      sum += each;
    }
    double[] weights = mean.clone();
    for (int p = 0; p < weights.length; p++) {
      weights[p] /= sum;
    }
    return weights;
  }

  /** Variance of each weight over its square. */
  double[] doubts() {
    return doubt.clone();
  }

  /** The same of a plastic of which nothing is known but its prior. */
  double newcomersDoubt() {
    return Math.expm1(sd * sd);
  }
}

package traytally.numeric;

import java.util.Arrays;
import org.apache.commons.numbers.gamma.Digamma;
import org.apache.commons.numbers.gamma.LogGamma;

/**
 * Negative binomial counts with a log link, variance μ + μ²/κ (NB2).
 *
 * <p>The parametrisation is that of Lawless, "Negative binomial and mixed Poisson regression",
 * Canadian Journal of Statistics 15(3), 1987, 209–225, equation 2.1 with a = 1/κ, written so that
 * nothing cancels as κ grows towards the Poisson:
 *
 * <pre>ℓ = y η − (y + κ) ln(1 + μ/κ) + Σ_{j&lt;y} ln(1 + j/κ) − ln y!</pre>
 *
 * <p>With r = μ/(μ+κ) and s = 1 − r the derivatives by η are s (y − μ), −(y+κ) r s and −(y+κ) r s
 * (s − r). Derivatives by κ are by t = ln κ, where dr/dt = −r s.
 */
final class NegativeBinomialLikelihood implements CountLikelihood {
  /** Larger counts take the gamma function instead of the running sum; where speeds cross. */
  private static final int LONGEST_SUM = 2000;

  /** Below this μ/κ a plain logarithm of 1 + μ/κ has lost digits that matter. */
  private static final double SMALL_RATIO = 1e-3;

  private final int[] counts;
  private final int[] valueOf; // observations: index into values
  private final int[] values; // the distinct counts, ascending
  private final double[] timesSeen; // of each distinct count
  private final double constant; // −Σ ln y!
  private double kappa = 1;
  private double risingSum; // Σ over observations of Σ_{j<y} ln(1 + j/κ)
  private double risingSlope; // its derivative by ln κ

  NegativeBinomialLikelihood(int[] counts) {
    this.counts = counts;
    this.values = Arrays.stream(counts).distinct().sorted().toArray();
    this.valueOf = new int[counts.length];
    this.timesSeen = new double[values.length];
    double sum = 0;
    for (int i = 0; i < counts.length; i++) {
      valueOf[i] = Arrays.binarySearch(values, counts[i]);
      timesSeen[valueOf[i]]++;
    }
    for (int v = 0; v < values.length; v++) {
      sum -= timesSeen[v] * LogGamma.value(values[v] + 1.0);
    }
    this.constant = sum;
    dispersion(1);
  }

  /** Sets κ and sums the terms that depend on nothing else, once per distinct count. */
  void dispersion(double newKappa) {
    kappa = newKappa;
    risingSum = 0;
    risingSlope = 0;
    double sum = 0;
    double slope = 0;
    int reached = 0;
    for (int v = 0; v < values.length; v++) {
      int y = values[v];
      if (y <= LONGEST_SUM) {
        for (; reached < y; reached++) {
          sum += Math.log1p(reached / kappa);
          slope -= reached / (kappa + reached);
        }
      } else {
        sum = LogGamma.value(y + kappa) - LogGamma.value(kappa) - y * Math.log(kappa);
        slope = kappa * (Digamma.value(y + kappa) - Digamma.value(kappa)) - y;
      }
      risingSum += timesSeen[v] * sum;
      risingSlope += timesSeen[v] * slope;
    }
  }

  @Override
  public double evaluate(double[] eta, double[] first, double[] weight) {
    double sum = constant + risingSum;
    for (int i = 0; i < counts.length; i++) {
      double y = counts[i];
      double predictor = CountLikelihood.bounded(eta[i]);
      double mean = Math.exp(predictor);
      double s = kappa / (mean + kappa);
      sum += y * predictor - (y + kappa) * logOnePlus(mean / kappa);
      first[i] = s * (y - mean);
      weight[i] = (y + kappa) * s * (mean / (mean + kappa));
    }
    return sum;
  }

  @Override
  public double noise() {
    return 1e-15 * Math.abs(constant);
  }

  @Override
  public void weightSlopes(double[] eta, double[] slope) {
    for (int i = 0; i < counts.length; i++) {
      double mean = Math.exp(CountLikelihood.bounded(eta[i]));
      double r = mean / (mean + kappa);
      double s = kappa / (mean + kappa);
      slope[i] = (counts[i] + kappa) * r * s * (s - r);
    }
  }

  /** The derivative of Σ ℓ by ln κ with every η held. */
  double dispersionSlope(double[] eta) {
    double sum = risingSlope;
    for (int i = 0; i < counts.length; i++) {
      double mean = Math.exp(CountLikelihood.bounded(eta[i]));
      double r = mean / (mean + kappa);
      sum += (counts[i] + kappa) * r - kappa * logOnePlus(mean / kappa);
    }
    return sum;
  }

  /**
   * The derivative of the log determinant of the Hessian by ln κ: Σ v ∂W/∂t + Σ a ∂(dℓ/dη)/∂t.
   *
   * @param variance v, the posterior variance of each η
   * @param adjoint a, how the log determinant changes as each η's score is pushed
   */
  double determinantSlope(double[] eta, double[] variance, double[] adjoint) {
    double sum = 0;
    for (int i = 0; i < counts.length; i++) {
      double y = counts[i];
      double mean = Math.exp(CountLikelihood.bounded(eta[i]));
      double r = mean / (mean + kappa);
      double s = kappa / (mean + kappa);
      sum += r * s * (variance[i] * (kappa + (y + kappa) * (r - s)) + adjoint[i] * (y - mean));
    }
    return sum;
  }

  private static double logOnePlus(double ratio) {
    return ratio < SMALL_RATIO ? Math.log1p(ratio) : Math.log(1 + ratio);
  }
}

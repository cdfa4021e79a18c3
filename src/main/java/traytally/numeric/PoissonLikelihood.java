package traytally.numeric;

import org.apache.commons.numbers.gamma.LogGamma;

/** Poisson counts with a log link: ℓ = y η − μ − ln y!. */
final class PoissonLikelihood implements CountLikelihood {
  private final int[] counts;
  private final double constant; // −Σ ln y!

  PoissonLikelihood(int[] counts) {
    this.counts = counts;
    double sum = 0;
    for (int count : counts) {
      sum -= LogGamma.value(count + 1.0);
    }
    this.constant = sum;
  }

  @Override
  public double evaluate(double[] eta, double[] first, double[] weight) {
    double sum = constant;
    for (int i = 0; i < counts.length; i++) {
      double predictor = CountLikelihood.bounded(eta[i]);
      double mean = Math.exp(predictor);
      sum += counts[i] * predictor - mean;
      first[i] = counts[i] - mean;
      weight[i] = mean;
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
      slope[i] = Math.exp(CountLikelihood.bounded(eta[i]));
    }
  }
}

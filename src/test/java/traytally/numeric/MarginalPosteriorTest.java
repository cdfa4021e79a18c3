package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarginalPosteriorTest {
  private static final Priors PRIORS =
      Priors.halfNormal(Map.of("day", 1.5, "colour", 0.4, "body", 0.3));

  @ParameterizedTest
  @CsvSource({"true, true", "true, false", "false, true", "false, false"})
  void gradientIsThatOfCentralDifferences(boolean dispersed, boolean withPriors) {
    Optional<Priors> priors = withPriors ? Optional.of(PRIORS) : Optional.empty();
    CountData data = new SimulatedCounts(7, 25, 120, 9, 4).data();
    MarginalPosterior posterior = new MarginalPosterior(data, dispersed, priors, Hessian::of);
    Random random = new Random(8);
    for (int trial = 0; trial < 4; trial++) {
      double[] at = posterior.start();
      for (int j = 0; j < at.length; j++) {
        at[j] += random.nextGaussian();
      }
      double[] gradient = new double[at.length];
      posterior.evaluate(at, gradient);
      for (int j = 0; j < at.length; j++) {
        assertEquals(difference(posterior, at, j), gradient[j], 1e-6 * (1 + Math.abs(gradient[j])));
      }
    }
  }

  @Test
  void gradientHoldsWithoutABlock() {
    SimulatedCounts simulated = new SimulatedCounts(9, 1, 60, 6, 3);
    CountData data =
        CountData.of(simulated.counts, simulated.logExposures)
            .groupedBy("colour", simulated.levelOf[0], 6)
            .groupedBy("body", simulated.levelOf[1], 3);
    MarginalPosterior posterior =
        new MarginalPosterior(data, true, Optional.of(PRIORS), Hessian::of);
    double[] at = posterior.start();
    double[] gradient = new double[at.length];
    posterior.evaluate(at, gradient);
    for (int j = 0; j < at.length; j++) {
      assertEquals(difference(posterior, at, j), gradient[j], 1e-6 * (1 + Math.abs(gradient[j])));
    }
  }

  private static double difference(MarginalPosterior posterior, double[] at, int j) {
    double step = 1e-4;
    double[] moved = at.clone();
    double[] unused = new double[at.length];
    moved[j] = at[j] + step;
    double above = posterior.evaluate(moved, unused);
    moved[j] = at[j] - step;
    double below = posterior.evaluate(moved, unused);
    return (above - below) / (2 * step);
  }

  /**
   * One count, one parameter to integrate: ∫ Poisson(3 | e^β) N(β; 0, 10²) dβ by the trapezoidal
   * rule, which Laplace's approximation meets within its own error, about 1/(12·3).
   */
  @Test
  void oneCountsIntegralIsNearTheTrueOne() {
    CountData data = CountData.of(new int[] {3}, new double[] {0});
    MarginalPosterior posterior =
        new MarginalPosterior(data, false, Optional.of(Priors.halfNormal(Map.of())), Hessian::of);
    posterior.evaluate(posterior.start(), new double[0]);
    double sum = 0;
    double step = 1e-3;
    for (double beta = -60; beta < 8; beta += step) {
      sum +=
          step
              * Math.exp(3 * beta - Math.exp(beta) - beta * beta / 200)
              / (6 * 10 * Math.sqrt(2 * Math.PI));
    }
    assertEquals(Math.log(sum), posterior.logLikelihood(), 1.0 / 30);
  }
}

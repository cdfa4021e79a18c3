package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LikingTest {
  /** Against the integrals by the Gauss rule of Apache Commons Math. */
  @ParameterizedTest
  @CsvSource({"0, 0.5, 1", "0, 30, 1.5", "1.7, 0.2, 0.8", "12, 3, 1.2", "400, 90, 1", "0, 0, 1"})
  void momentsAreThoseOfTheIntegrals(double chosen, double expected, double sd) {
    double rate = expected * Math.exp(-sd * sd / 2);
    double[] moments = new double[3];
    for (int k = 0; k < 3; k++) {
      int power = k;
      UnivariateFunction density =
          z ->
              Math.exp(
                  (chosen + power) * z
                      - rate * Math.exp(z)
                      - z * z / (2 * sd * sd)
                      - top(chosen, rate));
      moments[k] =
          new IterativeLegendreGaussIntegrator(20, 1e-11, 1e-300, 2, 20)
              .integrate(1_000_000, density, -8 * sd, 8 * sd);
    }
    double mean = moments[1] / moments[0] * Math.exp(-sd * sd / 2);
    double doubt = moments[2] * moments[0] / (moments[1] * moments[1]) - 1;
    // The second, never at hand, keeps its prior.
    Liking liking =
        new Liking(
            new double[] {chosen, 0}, new double[] {expected, 0}, new double[] {0.5, 0.5}, sd);
    assertEquals(mean / (mean + 1), liking.weights()[0], 1e-6);
    assertEquals(doubt, liking.doubts()[0], 1e-4 * (1 + doubt));
  }

  private static double top(double chosen, double rate) {
    return chosen > rate && rate > 0 ? chosen * Math.log(chosen / rate) - chosen : -rate;
  }

  @Test
  void whatIsLikedAlikeIsDrawnToItsPriorAndWhatIsNotIsKept() {
    double[] chosen = {30, 10};
    double[] expected = {20, 20};
    double[] prior = {0.5, 0.5};
    double[] alike = new Liking(chosen, expected, prior, 0.05).weights();
    assertArrayEquals(new double[] {0.5, 0.5}, alike, 0.02);
    double[] apart = new Liking(chosen, expected, prior, 4).weights();
    assertArrayEquals(new double[] {0.75, 0.25}, apart, 0.02);
  }

  /** Likings drawn with a known σ, seeds 1 to 20: the estimate must come near it on average. */
  @ParameterizedTest
  @CsvSource({"0.5", "1.2"})
  void howFarLikingsDifferIsFoundFromTheLog(double sd) {
    double sum = 0;
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      double[] chosen = new double[60];
      double[] expected = new double[60];
      double[] prior = new double[60];
      Arrays.fill(expected, 4);
      Arrays.fill(prior, 1.0 / 60);
      for (int p = 0; p < chosen.length; p++) {
        double rate = 4 * Math.exp(sd * random.nextGaussian() - sd * sd / 2);
        for (double wait = wait(random); wait < rate; wait += wait(random)) {
          chosen[p]++;
        }
      }
      sum += Liking.sd(chosen, expected, prior);
    }
    assertEquals(sd, sum / 20, 0.1);
  }

  private static double wait(Random random) {
    return -Math.log(1 - random.nextDouble());
  }
}

package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.plastic.Plastic;

class RateDrawsTest {
  private static final Plastic INK = paddle("ink");
  private static final Plastic OLIVE = paddle("olive");
  private static final Plastic INK_GRUB = Plastic.of("", "grub", "ink", 50);
  private static final StandingRule RULE = new StandingRule(0.8, 0.65, 0.1);

  private static Plastic paddle(String colour) {
    return Plastic.of("", "paddle", colour, 75);
  }

  private static double[] logs(double[][] draws, int column) {
    return Arrays.stream(draws).mapToDouble(draw -> Math.log(draw[column])).toArray();
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  private static double covariance(double[] a, double[] b) {
    double meanOfA = mean(a);
    double meanOfB = mean(b);
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - meanOfA) * (b[i] - meanOfB);
    }
    return sum / (a.length - 1);
  }

  /**
   * Bodies differ by 0.3 and colours by 0.4 in the log: the variance is 0.09 + 0.16, of which two
   * of one body share 0.09 and two of one colour 0.16. With 2000 draws a variance of 0.25 has a
   * standard error of 0.008, and the mean one of 0.011.
   */
  @Test
  void withoutALogPlasticsDifferAsFarAsTheyUsuallyDo() {
    double[][] draws = new Stints().performance().drawRates(List.of(INK, OLIVE, INK_GRUB), 2000, 7);
    double[] ink = logs(draws, 0);
    assertEquals(0, mean(ink), 0.04);
    assertEquals(0.25, covariance(ink, ink), 0.03);
    assertEquals(0.09, covariance(ink, logs(draws, 1)), 0.03);
    assertEquals(0.16, covariance(ink, logs(draws, 2)), 0.03);
    assertEquals(0, covariance(logs(draws, 1), logs(draws, 2)), 0.03);
  }

  @Test
  void drawsAreTheSameForASeed() {
    Performance performance = new Stints().on(0, "ink", 60, 3).performance();
    double[][] draws = performance.drawRates(List.of(INK, OLIVE), 5, 7);
    assertArrayEquals(draws, performance.drawRates(List.of(INK, OLIVE), 5, 7));
    double[][] turned = performance.drawRates(List.of(OLIVE, INK), 5, 7);
    for (int d = 0; d < draws.length; d++) {
      assertArrayEquals(new double[] {draws[d][1], draws[d][0]}, turned[d], 1e-12);
    }
  }

  /** Three hours and six takes: every draw's rates give the log's own 6½ in its own hours. */
  @Test
  void everyDrawGivesTheLogsOwnCount() {
    Stints one = new Stints().on(0, "ink", 90, 4).on(1, "ink", 90, 2);
    for (double[] draw : one.performance().drawRates(List.of(INK), 20, 3)) {
      assertEquals(6.5 / 3, draw[0], 1e-9);
    }
    Stints two = new Stints().on(0, "ink", 60, 4).on(0, "olive", 120, 3).on(1, "ink", 30, 0);
    for (double[] draw : two.performance().drawRates(List.of(INK, OLIVE), 20, 3)) {
      assertEquals(7.5, 1.5 * draw[0] + 2 * draw[1], 1e-9);
    }
  }

  /** Half of the takes were hooked. */
  @Test
  void measureAskedForIsDrawn() {
    Stints log = new Stints().on(0, "ink", 90, 4).on(1, "ink", 90, 2);
    Performance hooked = Performance.of(log.log(), LogReading.plain(1), Measure.HOOKED, RULE);
    assertEquals(3.5 / 3, hooked.drawRates(List.of(INK), 1, 3)[0][0], 1e-9);
  }

  @Test
  void whatTheLogDoesNotKnowIsOpen() {
    Stints log = new Stints();
    for (int day = 0; day < 10; day++) {
      log.inTurn(day, "ink", 60, 4, "olive", 60, 4);
    }
    double[][] draws = log.performance().drawRates(List.of(INK, paddle("rust")), 500, 3);
    double known = covariance(logs(draws, 0), logs(draws, 0));
    double unknown = covariance(logs(draws, 1), logs(draws, 1));
    assertTrue(unknown > known, unknown + " against " + known);
  }

  /** The level is that of ink's 6½ in 3 hours; rust, drawn alone, strays from it. */
  @Test
  void levelIsTheLogsOwnWhateverIsAskedFor() {
    Stints log = new Stints().on(0, "ink", 90, 4).on(1, "ink", 90, 2);
    double[] rust = logs(log.performance().drawRates(List.of(paddle("rust")), 500, 3), 0);
    assertEquals(Math.log(6.5 / 3), mean(rust), 0.1);
    assertTrue(covariance(rust, rust) > 0.01, "variance " + covariance(rust, rust));
  }
}

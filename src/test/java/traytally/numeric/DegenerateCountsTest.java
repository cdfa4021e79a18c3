package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Logs at their worst still give numbers. */
class DegenerateCountsTest {
  private static final Priors PRIORS = Priors.halfNormal(Map.of("day", 1.5, "colour", 0.4));

  static Stream<Arguments> logs() {
    int[] busy = new int[40];
    busy[7] = 10_000;
    int[] huge = new int[20];
    Arrays.fill(huge, Integer.MAX_VALUE);
    huge[3] = 0;
    int[] alternating = new int[30];
    for (int i = 0; i < alternating.length; i += 2) {
      alternating[i] = 1_000_000;
    }
    return Stream.of(
        Arguments.of("one stint", log(new int[] {3}, 1, 1, 0)),
        Arguments.of("one stint without a take", log(new int[] {0}, 1, 1, 0)),
        Arguments.of("no takes at all", log(new int[50], 10, 4, 0)),
        Arguments.of("one colour, one day", log(new int[] {1, 4, 0, 2}, 1, 1, 0)),
        Arguments.of("every stint its own day", log(new int[] {1, 4, 0, 2}, 4, 1, 0)),
        Arguments.of("10,000 takes on one day", log(busy, 10, 4, 0)),
        Arguments.of("counts at the top of int", log(huge, 5, 4, 0)),
        Arguments.of("a million or nothing", log(alternating, 15, 2, 0)),
        Arguments.of("the same count each time", log(same(30, 5), 10, 3, 0)),
        Arguments.of("a second of fishing", log(new int[] {5, 0, 7, 1}, 2, 2, -8)),
        Arguments.of("next to no fishing", log(new int[] {5, 0, 7, 1}, 2, 2, -100)),
        Arguments.of("endless fishing", log(new int[] {5, 0, 7, 1}, 2, 2, 100)));
  }

  private static int[] same(int size, int count) {
    int[] counts = new int[size];
    Arrays.fill(counts, count);
    return counts;
  }

  private static CountData log(int[] counts, int days, int colours, double logExposure) {
    double[] exposures = new double[counts.length];
    Arrays.fill(exposures, logExposure);
    int[] day = new int[counts.length];
    int[] colour = new int[counts.length];
    for (int i = 0; i < counts.length; i++) {
      day[i] = i * days / counts.length;
      colour[i] = i % colours;
    }
    return CountData.of(counts, exposures)
        .blockedBy("day", day, days)
        .groupedBy("colour", colour, colours);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("logs")
  void everyLogGivesNumbers(String name, CountData data) {
    for (MixedCountModel model :
        new MixedCountModel[] {MixedCountModel.negativeBinomial(), MixedCountModel.poisson()}) {
      assertDefined(name + ", priors", model.withPriors(PRIORS).fit(data), true);
      assertDefined(name + ", no priors", model.fit(data), false);
    }
  }

  private static void assertDefined(String name, MixedCountFit fit, boolean mustConverge) {
    assertTrue(fit.converged() || !mustConverge, name);
    assertTrue(Double.isFinite(fit.logLikelihood()), name);
    assertTrue(Double.isFinite(fit.intercept()), name);
    assertTrue(Arrays.stream(fit.blockEffects()).allMatch(Double::isFinite), name);
    assertTrue(fit.sd("day") > 0 && fit.sd("colour") > 0, name);
    fit.dispersion().ifPresent(kappa -> assertTrue(kappa > 0 && Double.isFinite(kappa), name));
    Estimate estimate = fit.estimate(Contrast.intercept().plus("colour", 0, 1));
    assertTrue(Double.isFinite(estimate.mean()) && Double.isFinite(estimate.variance()), name);
  }

  @Test
  void noTakesAtAllLeaveColoursEqual() {
    MixedCountFit fit =
        MixedCountModel.negativeBinomial().withPriors(PRIORS).fit(log(new int[50], 10, 4, 0));
    double[] colours = fit.effects("colour");
    for (double colour : colours) {
      assertEquals(colours[0], colour, 0.02);
    }
    assertTrue(fit.intercept() < -1);
  }

  /**
   * Half-normal times σ, the Jacobian of ln σ, is highest at the scale itself; and κ where its own
   * prior is.
   */
  @Test
  void whatTheCountsDoNotTellStaysAtItsPriorsMode() {
    CountData nothing = log(new int[] {0}, 1, 1, -20);
    MixedCountFit fit = MixedCountModel.negativeBinomial().withPriors(PRIORS).fit(nothing);
    assertEquals(0.4, fit.sd("colour"), 1e-3);
    assertEquals(1.5, fit.sd("day"), 1e-2);
    assertEquals(2, fit.dispersion().orElseThrow(), 1e-3);
  }

  @Test
  void emptyAndImpossibleLogsAreRefused() {
    assertRefused(new int[0]);
    assertRefused(new int[] {-1}, 0);
    assertRefused(new int[] {1}, Double.NaN);
    assertRefused(new int[] {1}, Double.NEGATIVE_INFINITY);
    assertRefused(new int[] {1}, 101);
    assertRefused(new int[] {1}, 0, 0);
    CountData data = CountData.of(new int[] {1}, new double[] {0});
    assertThrows(IllegalArgumentException.class, () -> data.groupedBy("colour", new int[] {1}, 1));
    assertThrows(IllegalArgumentException.class, () -> data.blockedBy("day", new int[] {0, 0}, 1));
    CountData grouped = data.groupedBy("water", new int[] {0}, 1);
    assertThrows(
        IllegalArgumentException.class, () -> grouped.groupedBy("water", new int[] {0}, 1));
    assertThrows(
        IllegalArgumentException.class,
        () -> MixedCountModel.poisson().withPriors(PRIORS).fit(grouped));
  }

  private static void assertRefused(int[] counts, double... logExposures) {
    assertThrows(IllegalArgumentException.class, () -> CountData.of(counts, logExposures));
  }
}

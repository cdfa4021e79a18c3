package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class MixedCountFitTest {
  private static final Priors PRIORS =
      Priors.halfNormal(Map.of("day", 1.5, "colour", 0.4, "body", 0.3));
  private static final MixedCountModel MODEL =
      MixedCountModel.negativeBinomial().withPriors(PRIORS);

  @Test
  void recoversSimulatedTruth() {
    SimulatedCounts truth = new SimulatedCounts(11, 800, 4000, 60, 30);
    MixedCountFit fit = MODEL.fit(truth.data());
    assertTrue(fit.converged());
    assertEquals(truth.blockSd, fit.sd("day"), 0.06);
    assertEquals(truth.dispersion, fit.dispersion().orElseThrow(), 0.35);
    // with 60 and 30 levels a standard deviation is known to about 1/√(2·levels) of itself
    assertEquals(truth.sds[0], fit.sd("colour"), 0.12);
    assertEquals(truth.sds[1], fit.sd("body"), 0.12);
    int covered = 0;
    for (int g = 0; g < 2; g++) {
      double[] theirs = centred(truth.effects[g]);
      for (int level = 0; level < theirs.length; level++) {
        Estimate ours = fit.estimate(againstMean(SimulatedCounts.name(g), level, theirs.length));
        covered += Math.abs(ours.mean() - theirs[level]) < 1.645 * ours.sd() ? 1 : 0;
      }
    }
    // 90 intervals of 90 %: 81 expected, standard deviation about 3
    assertEquals(81, covered, 8);
  }

  @Test
  void manyCountsEndWhereASearchFromTheUsualStartEnds() {
    CountData data = new SimulatedCounts(13, 6000, 36_000, 40, 5).data();
    MarginalPosterior posterior =
        new MarginalPosterior(data, true, Optional.of(PRIORS), Hessian::of);
    QuasiNewton.Minimum usual =
        QuasiNewton.minimise(posterior, posterior.start(), posterior.lowest(), posterior.highest());
    MixedCountFit fit = MODEL.fit(data);
    assertTrue(fit.converged());
    double[] sds = posterior.sds(usual.parameters());
    assertArrayEquals(
        sds, fit.sds().values().stream().mapToDouble(Double::doubleValue).toArray(), 1e-4);
    assertTrue(fit.evaluations() < usual.evaluations(), "no steps saved: " + fit.evaluations());
  }

  @Test
  void aPartHasWholeBlocksWithTheirOwnLevels() {
    int[] counts = {1, 2, 3, 4, 5, 6};
    CountData part =
        CountData.of(counts, new double[6])
            .blockedBy("day", new int[] {0, 1, 2, 2, 1, 0}, 3)
            .groupedBy("colour", new int[] {0, 1, 2, 3, 1, 2}, 4)
            .thinned(2);
    assertEquals(4, part.observations());
    assertEquals(List.of(1, 3, 4, 6), IntStream.range(0, 4).mapToObj(part::count).toList());
    Grouping colour = part.groupings().get(0);
    assertEquals(4, colour.levels());
    assertEquals(List.of(0, 2, 3, 2), IntStream.range(0, 4).mapToObj(colour::levelOf).toList());
  }

  private static double[] centred(double[] effects) {
    double mean = java.util.Arrays.stream(effects).average().orElseThrow();
    return java.util.Arrays.stream(effects).map(effect -> effect - mean).toArray();
  }

  private static Contrast againstMean(String grouping, int level, int levels) {
    Contrast contrast = Contrast.none().plus(grouping, level, 1);
    for (int other = 0; other < levels; other++) {
      contrast = contrast.plus(grouping, other, -1.0 / levels);
    }
    return contrast;
  }

  @Test
  void reorderingRowsAndRelabellingChangesNothing() {
    SimulatedCounts log = new SimulatedCounts(12, 40, 200, 10, 4);
    MixedCountFit plain = MODEL.fit(log.data());
    Random random = new Random(13);
    int[] rows = shuffled(200, random);
    int[] days = shuffled(40, random);
    int[] colours = shuffled(10, random);
    int[] counts = IntStream.of(rows).map(row -> log.counts[row]).toArray();
    double[] hours = IntStream.of(rows).mapToDouble(row -> log.logExposures[row]).toArray();
    CountData moved =
        CountData.of(counts, hours)
            .groupedBy("body", IntStream.of(rows).map(row -> log.levelOf[1][row]).toArray(), 4)
            .blockedBy("day", IntStream.of(rows).map(row -> days[log.blockOf[row]]).toArray(), 40)
            .groupedBy(
                "colour",
                IntStream.of(rows).map(row -> colours[log.levelOf[0][row]]).toArray(),
                10);
    MixedCountFit other = MODEL.fit(moved);
    assertEquals(plain.logPosterior(), other.logPosterior(), 1e-9);
    assertEquals(plain.intercept(), other.intercept(), 1e-9);
    plain.sds().forEach((name, sd) -> assertEquals(sd, other.sd(name), 1e-9));
    for (int day = 0; day < 40; day++) {
      assertEquals(plain.blockEffects()[day], other.blockEffects()[days[day]], 1e-9);
    }
    for (int colour = 0; colour < 10; colour++) {
      Estimate ours = plain.estimate(Contrast.none().plus("colour", colour, 1));
      Estimate theirs = other.estimate(Contrast.none().plus("colour", colours[colour], 1));
      assertEquals(ours.mean(), theirs.mean(), 1e-9);
      assertEquals(ours.variance(), theirs.variance(), 1e-9);
    }
  }

  private static int[] shuffled(int size, Random random) {
    List<Integer> order = new java.util.ArrayList<>(IntStream.range(0, size).boxed().toList());
    java.util.Collections.shuffle(order, random);
    return order.stream().mapToInt(Integer::intValue).toArray();
  }

  @Test
  void blockEliminatedIsTheSameAsBlockKept() {
    SimulatedCounts log = new SimulatedCounts(14, 12, 60, 5);
    CountData counts = CountData.of(log.counts, log.logExposures);
    int[] colours = log.levelOf[0];
    MixedCountFit eliminated =
        MODEL.fit(counts.blockedBy("day", log.blockOf, 12).groupedBy("colour", colours, 5));
    MixedCountFit kept =
        MODEL.fit(counts.groupedBy("day", log.blockOf, 12).groupedBy("colour", colours, 5));
    assertEquals(kept.logPosterior(), eliminated.logPosterior(), 1e-8);
    assertArrayEquals(kept.effects("day"), eliminated.blockEffects(), 1e-5);
    assertArrayEquals(kept.effects("colour"), eliminated.effects("colour"), 1e-5);
    Contrast first = Contrast.intercept().plus("colour", 1, 1);
    assertEquals(kept.estimate(first).variance(), eliminated.estimate(first).variance(), 1e-6);
  }

  @Test
  void unseenLevelHasThePriorsVariance() {
    MixedCountFit fit = MODEL.fit(new SimulatedCounts(15, 12, 60, 5, 3).data());
    Estimate seen = fit.estimate(Contrast.intercept().plus("colour", 0, 1));
    Estimate newDay =
        fit.estimate(Contrast.intercept().plus("colour", 0, 1).plusUnseen("day", "new", 1));
    assertEquals(seen.mean(), newDay.mean());
    assertEquals(seen.variance() + Math.pow(fit.sd("day"), 2), newDay.variance(), 1e-12);
  }

  @Test
  void levelWithoutCountsKeepsItsPrior() {
    SimulatedCounts log = new SimulatedCounts(16, 12, 60, 5);
    CountData data =
        CountData.of(log.counts, log.logExposures).groupedBy("colour", log.levelOf[0], 6);
    MixedCountFit fit = MODEL.fit(data);
    Estimate never = fit.estimate(Contrast.none().plus("colour", 5, 1));
    assertEquals(0, never.mean(), 1e-12);
    assertEquals(fit.sd("colour"), never.sd(), 1e-9);
  }

  @Test
  void drawsHaveTheContrastsMeansAndCovariance() {
    MixedCountFit fit = MODEL.fit(new SimulatedCounts(17, 30, 150, 6, 3).data());
    Contrast first = Contrast.intercept().plus("colour", 0, 1).plusUnseen("body", "new", 1);
    Contrast second = Contrast.none().plus("colour", 1, 1).plus(first, 0.5);
    int draws = 40_000;
    double[][] drawn = fit.draw(List.of(first, second), draws, 18);
    double[] mean = new double[2];
    for (double[] draw : drawn) {
      mean[0] += draw[0] / draws;
      mean[1] += draw[1] / draws;
    }
    double variance = 0;
    double shared = 0;
    for (double[] draw : drawn) {
      variance += Math.pow(draw[0] - mean[0], 2) / draws;
      shared += (draw[0] - mean[0]) * (draw[1] - mean[1]) / draws;
    }
    Estimate expected = fit.estimate(first);
    assertEquals(expected.mean(), mean[0], 4 * expected.sd() / Math.sqrt(draws));
    assertEquals(expected.variance(), variance, 0.03 * expected.variance());
    assertEquals(fit.covariance(first, second), shared, 0.03 * expected.variance());
    assertArrayEquals(drawn[99], fit.draw(List.of(first, second), 100, 18)[99]);
  }

  @Test
  void unknownNamesAndLevelsAreRefused() {
    MixedCountFit fit = MODEL.fit(new SimulatedCounts(19, 12, 60, 5, 3).data());
    assertThrows(
        IllegalArgumentException.class, () -> fit.estimate(Contrast.none().plus("colour", 5, 1)));
    assertThrows(IllegalArgumentException.class, () -> fit.effects("water"));
    assertThrows(IllegalArgumentException.class, () -> fit.sd("water"));
  }
}

package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import traytally.simulation.Luck;

/**
 * Simulation-based calibration of the engine: parameters and effects drawn from the priors, counts
 * from them; the rank of a true difference of effects among posterior draws must be uniform (Talts
 * et al., "Validating Bayesian inference algorithms with simulation-based calibration",
 * arXiv:1804.06788, 2018).
 */
class RankCalibrationTest {
  private static final int BINS = 10;
  private static final int DRAWS = 99; // ranks 0 to 99, ten to a bin
  private static final int DAYS = 60;
  private static final int COLOURS = 12;
  private static final Priors PRIORS =
      Priors.halfNormal(Map.of("day", 1.0, "colour", 0.4, "body", 0.3));

  private final Random random = new Random(20260501);
  private final Luck luck = new Luck(random);

  private int count(double mean, double dispersion) {
    double rate = mean * luck.gamma(dispersion) / dispersion;
    int count = 0;
    for (double wait = -Math.log(1 - random.nextDouble());
        wait < rate && count < 100_000;
        wait -= Math.log(1 - random.nextDouble())) {
      count++;
    }
    return count;
  }

  private double[] effects(int size, double scale) {
    double sd = scale * Math.abs(random.nextGaussian());
    double[] effects = new double[size];
    Arrays.setAll(effects, k -> sd * random.nextGaussian());
    return effects;
  }

  /** The bin of a true difference of two colours among draws of it. */
  private int bin() {
    double[] colour = effects(COLOURS, 0.4);
    double[] body = effects(4, 0.3);
    double[] day = effects(DAYS, 1.0);
    double dispersion = Math.exp(Math.log(2) + random.nextGaussian());
    int stints = DAYS * 4;
    int[] colourOf = new int[stints];
    int[] bodyOf = new int[stints];
    int[] dayOf = new int[stints];
    int[] counts = new int[stints];
    double[] logHours = new double[stints];
    for (int i = 0; i < stints; i++) {
      colourOf[i] = random.nextInt(COLOURS);
      bodyOf[i] = random.nextInt(4);
      dayOf[i] = i / 4;
      logHours[i] = Math.log(0.3 + random.nextDouble());
      double eta = 0.5 + logHours[i] + colour[colourOf[i]] + body[bodyOf[i]] + day[dayOf[i]];
      counts[i] = count(Math.exp(eta), dispersion);
    }
    CountData data =
        CountData.of(counts, logHours)
            .blockedBy("day", dayOf, DAYS)
            .groupedBy("body", bodyOf, 4)
            .groupedBy("colour", colourOf, COLOURS);
    MixedCountFit fit = MixedCountModel.negativeBinomial().withPriors(PRIORS).fit(data);
    Contrast difference = Contrast.none().plus("colour", 0, 1).plus("colour", 1, -1);
    double truth = colour[0] - colour[1];
    int rank = 0;
    for (double[] draw : fit.draw(List.of(difference), DRAWS, random.nextLong())) {
      rank += draw[0] < truth ? 1 : 0;
    }
    return rank * BINS / (DRAWS + 1);
  }

  /** The chance of a histogram as uneven as this, were ranks uniform. */
  private double evenness(int logs) {
    int[] histogram = new int[BINS];
    for (int log = 0; log < logs; log++) {
      histogram[bin()]++;
    }
    double expected = logs / (double) BINS;
    double chi = 0;
    for (int seen : histogram) {
      chi += (seen - expected) * (seen - expected) / expected;
    }
    return ChiSquaredDistribution.of(BINS - 1).survivalProbability(chi);
  }

  @Test
  void ranksAreUniformOverAFewLogs() {
    double chance = evenness(200);
    assertTrue(chance > 0.01, "chance " + chance);
  }

  @Test
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  void ranksAreUniformOverManyLogs() {
    double chance = evenness(2000);
    assertTrue(chance > 0.001, "chance " + chance);
  }
}

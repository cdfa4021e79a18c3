package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import traytally.numeric.NegativeBinomial;
import traytally.plastic.Name;

class UseTest {
  private static TripUse trip(double hours, double share, double turns, double rate, double day) {
    return new TripUse(
        BoxBuilder.TODAY, Name.BLANK, hours, share, turns, new LossRate(rate, 0, 0, day, 1));
  }

  @Test
  void plainPoissonTripsAddUp() {
    TripUse all = trip(5, 1, 4, 0.6, 0);
    Use use = new Use(List.of(all, all), Double.POSITIVE_INFINITY, 0, 0);
    assertEquals(6, use.mean(), 1e-12);
    assertEquals(6, use.variance(), 1e-12);
  }

  @Test
  void theVarianceIsThatOfTheStory() {
    // By hand: m = 4 × 0.25 × 0.5 = 0.5, q = 1 + 0.75/(0.25 × 3) = 2, e^σ² = 1.2, κ = 2, A = 0.3:
    // 2 (0.5 + 0.25 × 1.3 × (1.5 × 2 × 1.2 − 1)) + 0.3 × 1 = 2.99.
    TripUse one = trip(4, 0.25, 3, 0.5, Math.log(1.2));
    Use use = new Use(List.of(one, one), 2, Math.log(1.04), 0.25);
    assertEquals(1, use.mean(), 1e-12);
    assertEquals(2.99, use.variance(), 1e-12);
  }

  @Test
  void drawsOfTheStoryHaveTheseMoments() {
    double rateVariance = 0.09;
    double dayVariance = 0.16;
    TripUse one = trip(6, 0.3, 3, 0.8, dayVariance);
    Use use = new Use(Collections.nCopies(4, one), 2.0, rateVariance, 0);
    Random random = new Random(20260501);
    int draws = 200_000;
    double sum = 0;
    double squares = 0;
    for (int d = 0; d < draws; d++) {
      double rate = 0.8 * Math.exp(0.3 * random.nextGaussian() - rateVariance / 2);
      int total = 0;
      for (int t = 0; t < 4; t++) {
        int turns = 0;
        for (int c = 0; c < 3; c++) {
          turns += random.nextDouble() < 0.3 ? 1 : 0;
        }
        double day = Math.exp(0.4 * random.nextGaussian() - dayVariance / 2);
        double gamma = -(Math.log(1 - random.nextDouble()) + Math.log(1 - random.nextDouble())) / 2;
        total += poisson(6 * (turns / 3.0) * rate * day * gamma, random);
      }
      sum += total;
      squares += (double) total * total;
    }
    double mean = sum / draws;
    double variance = squares / draws - mean * mean;
    assertEquals(use.mean(), mean, 0.02 * use.mean());
    assertEquals(use.variance(), variance, 0.04 * use.variance());
  }

  private static int poisson(double mean, Random random) {
    int count = -1;
    double product = 1;
    do {
      count++;
      product *= random.nextDouble();
    } while (product > Math.exp(-mean));
    return count;
  }

  @Test
  void noTripsUseNothing() {
    Use none = new Use(List.of(), 2, 0, 0);
    assertEquals(0, none.mean());
    assertEquals(0, none.ninetyPercentBound());
    assertEquals(0, none.distribution().atLeast(1));
  }

  @Test
  void theBoundHoldsNineTimesInTen() {
    Use use = new Use(List.of(trip(5, 0.4, 3, 0.9, 0.1)), 2, 0.1, 0.1);
    NegativeBinomial distribution = use.distribution();
    int bound = use.ninetyPercentBound();
    assertTrue(distribution.cumulative(bound) >= 0.9);
    assertTrue(distribution.cumulative(bound - 1) < 0.9);
  }
}

package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class NegativeBinomialTest {
  /** R 4.2.2: pnbinom, qnbinom and direct summation; see reference/README.md. */
  @ParameterizedTest
  @CsvFileSource(resources = "/reference/negative-binomial.csv", numLinesToSkip = 1)
  void agreesWithR(double mean, double dispersion, int x, double cdf, double shortage, int q90) {
    NegativeBinomial use = new NegativeBinomial(mean, dispersion);
    assertEquals(cdf, use.cumulative(x), 1e-11);
    assertEquals(1 - cdf, use.atLeast(x + 1), 1e-11);
    // R's sums stop at 20,000 and were printed with 14 decimals.
    assertEquals(shortage, use.expectedShortage(x), 1e-12 * (1 + mean));
    assertEquals(q90, use.quantile(0.9));
  }

  @Test
  void momentsComeBackAsGiven() {
    NegativeBinomial use = NegativeBinomial.ofMoments(4.5, 12);
    assertEquals(4.5, use.mean());
    assertEquals(12, use.variance(), 1e-12);
  }

  @Test
  void poissonTakesOverWhereTheVarianceIsNotAboveTheMean() {
    NegativeBinomial use = NegativeBinomial.ofMoments(2, 1.5);
    assertEquals(2, use.variance());
    assertEquals(Math.exp(-2), use.cumulative(0), 1e-15);
    assertEquals(Math.exp(-2) * (1 + 2 + 2), use.cumulative(2), 1e-15);
    assertEquals(1 - 3 * Math.exp(-2), use.atLeast(2), 1e-15);
  }

  @ParameterizedTest
  @CsvSource({"0.01", "1", "30", "2000"})
  void largeDispersionsMeetThePoisson(double mean) {
    NegativeBinomial poisson = new NegativeBinomial(mean, Double.POSITIVE_INFINITY);
    NegativeBinomial near = new NegativeBinomial(mean, 0.9e9 * (1 + mean));
    for (int x : new int[] {0, 1, (int) mean, (int) (1.1 * mean) + 1}) {
      assertEquals(poisson.cumulative(x), near.cumulative(x), 1e-8);
      assertEquals(poisson.expectedShortage(x), near.expectedShortage(x), 1e-6);
    }
  }

  @Test
  void noUseAtAllLeavesTheTrayAsItIs() {
    NegativeBinomial none = NegativeBinomial.ofMoments(0, 0);
    assertEquals(1, none.cumulative(0));
    assertEquals(0, none.atLeast(1));
    assertEquals(1, none.atLeast(0));
    assertEquals(0, none.quantile(0.9));
    assertEquals(0, none.expectedShortage(0));
  }

  @Test
  void shortageFallsByTheTailWithEachPiece() {
    NegativeBinomial use = new NegativeBinomial(6.3, 0.8);
    for (int x = 0; x < 40; x++) {
      double saved = use.expectedShortage(x) - use.expectedShortage(x + 1);
      assertEquals(use.atLeast(x + 1), saved, 1e-13);
    }
  }

  @Test
  void quantilesReachFarTails() {
    NegativeBinomial wild = new NegativeBinomial(50, 0.01);
    int far = wild.quantile(0.999);
    assertTrue(wild.cumulative(far) >= 0.999 && wild.cumulative(far - 1) < 0.999);
  }

  /**
   * The newsvendor's critical ratio 18/(18+2) of a normal demand with mean 120 and standard
   * deviation 10 is reached at 132.815515655446 (Snyder &amp; Shen, Fundamentals of Supply Chain
   * Theory, 2nd ed., Wiley 2019). A count spread 1 % about its mean is as good as normal; what is
   * left of its skewness, 0.02, moves the quantile by (z² − 1)/6 of that, 0.002 deviations.
   */
  @Test
  void serviceLevelsMeetTheNewsvendorInTheNormalLimit() {
    NegativeBinomial demand = NegativeBinomial.ofMoments(1e6, 1e4 * 1e4);
    double deviations = (demand.quantile(18.0 / (18 + 2)) - 1e6) / 1e4;
    assertEquals(132.815515655446, 120 + 10 * deviations, 0.03);
  }

  @Test
  void nonsenseIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new NegativeBinomial(-1, 1));
    assertThrows(IllegalArgumentException.class, () -> new NegativeBinomial(Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> new NegativeBinomial(1, 0));
    NegativeBinomial use = new NegativeBinomial(1, 1);
    assertThrows(IllegalArgumentException.class, () -> use.quantile(1));
  }
}

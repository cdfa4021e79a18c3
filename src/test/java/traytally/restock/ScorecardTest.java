package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import traytally.numeric.NegativeBinomial;

/**
 * Worked by hand. Of a Poisson count of mean 2, P(0) = 0.1353, P(≤ 2) = 0.6767, P(≤ 3) = 0.8571 and
 * P(≤ 4) = 0.9473 (any table of it): its median is 2, its nine-tenths quantile 4; of mean 1 they
 * are 1 and 2, of mean 3 they are 3 and 5.
 */
class ScorecardTest {
  private static final int ENDLESS = Integer.MAX_VALUE;

  private final Scorecard score = new Scorecard();

  private static NegativeBinomial poisson(double mean) {
    return NegativeBinomial.ofMoments(mean, mean);
  }

  @Test
  void lossIsThePinballsOfTheTwoQuantiles() {
    score.use(poisson(2), 5, ENDLESS, 1, 3);
    score.use(poisson(2), 0, ENDLESS, 1, 3);
    Audit.UseScore use = score.use();
    assertEquals(2, use.forecasts());
    assertEquals(4, use.forecast(), 1e-12);
    assertEquals(5, use.used());
    // Own: ½ (5 − 2) and ½ (2 − 0); 0.9 (5 − 4) and 0.1 (4 − 0).
    assertEquals((1.5 + 1) / 2, use.own().half(), 1e-12);
    assertEquals((0.9 + 0.4) / 2, use.own().nineTenths(), 1e-12);
    // Quantiles 1 and 2: ½ (5 − 1) and ½ (1 − 0); 0.9 (5 − 2) and 0.1 (2 − 0).
    assertEquals((2 + 0.5) / 2, use.croston().half(), 1e-12);
    assertEquals((2.7 + 0.2) / 2, use.croston().nineTenths(), 1e-12);
    // Quantiles 3 and 5: ½ (5 − 3) and ½ (3 − 0); 0 and 0.1 (5 − 0).
    assertEquals((1 + 1.5) / 2, use.average().half(), 1e-12);
    assertEquals((0 + 0.5) / 2, use.average().nineTenths(), 1e-12);
  }

  @Test
  void boundsHoldUpToTheirEdge() {
    score.use(poisson(2), 4, ENDLESS, 1, 1);
    score.use(poisson(2), 5, ENDLESS, 1, 1);
    assertEquals(0.5, score.use().held());
    assertEquals(0.9473, score.use().heldBySaying(), 1e-4);
  }

  /** E min(U, 1) = 1 − P(0); more than the tray's one piece cannot go, and the bound says so. */
  @Test
  void forecastsEndWhereTheTrayDoes() {
    score.use(poisson(2), 1, 1, 1, 3);
    Audit.UseScore use = score.use();
    assertEquals(1 - 0.1353, use.forecast(), 1e-4);
    assertEquals(1, use.heldBySaying());
    assertEquals(new Audit.Pinball(0, 0), use.own());
    assertEquals(new Audit.Pinball(0, 0), use.average());
    score.use(poisson(2), 4, 4, 1, 3);
    assertEquals(1, score.use().heldBySaying(), "a bound of four pieces of four");
  }

  @Test
  void newcomersAreCountedByThemselves() {
    score.newcomer(2);
    score.newcomer(3);
    Audit.UseScore use = score.use();
    assertEquals(5, use.newcomers());
    assertEquals(0, use.forecasts());
    assertEquals(0, use.held());
    assertEquals(new Audit.Pinball(0, 0), use.own());
  }

  @Test
  void chancesAreTakenTogetherByTenths() {
    score.runOut(0.2, false);
    score.runOut(0.28, true);
    score.runOut(1, true);
    score.runOut(0, false);
    List<Audit.Bin> bins = score.runOuts();
    assertEquals(3, bins.size());
    assertEquals(new Audit.Bin(0, 0.1, 1, 0, 0), bins.get(0));
    assertEquals(0.2, bins.get(1).from());
    assertEquals(0.3, bins.get(1).to(), 1e-12);
    assertEquals(2, bins.get(1).trays());
    assertEquals(0.24, bins.get(1).said(), 1e-12);
    assertEquals(0.5, bins.get(1).came());
    assertEquals(new Audit.Bin(0.9, 1, 1, 1, 1), bins.get(2));
  }

  /** Two trays off by 0.26 and two by none. */
  @Test
  void errorIsTheMeanGapByTrays() {
    Audit.UseScore none = score.use();
    List<Audit.Bin> bins =
        List.of(new Audit.Bin(0.2, 0.3, 2, 0.24, 0.5), new Audit.Bin(0.9, 1, 2, 1, 1));
    Audit.Calls calls = new Audit.Calls(0, 0, 0, 0, OptionalDouble.empty());
    assertEquals(0.13, new Audit(BoxBuilder.TODAY, 4, 34, none, bins, calls).runOutError(), 1e-12);
    assertEquals(0, new Audit(BoxBuilder.TODAY, 4, 34, none, List.of(), calls).runOutError());
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.ledger.Fact;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

class LossModelTest {
  private static final Name ROCKS = Name.of("Gull Rocks");
  private static final Name SAND = Name.of("Long Sand");
  private static final Plastic CRAW = Plastic.of("", "craw", "ink", 75);
  private static final Plastic PADDLE = Plastic.of("", "paddle", "ink", 75);

  private static List<Turn> turns(BoxBuilder box) {
    return Turn.of(
        box.book().facts(Fact.Fished.class).stream().map(Fact.Fished::stint).toList(), 1);
  }

  private static BoxBuilder rocksTakeMore() {
    BoxBuilder box = new BoxBuilder();
    for (int day = 1; day <= 20; day++) {
      String water = day % 2 == 0 ? "Gull Rocks" : "Long Sand";
      box.fished(BoxBuilder.daysAgo(day), water, CRAW, 60, 0, day % 2 == 0 ? 3 : 1);
      box.fished(BoxBuilder.daysAgo(day), water, PADDLE, 60, 0, day % 2 == 0 ? 1 : 0);
    }
    return box;
  }

  @Test
  void ratesFollowWaterAndPlastic() {
    LossModel losses = new LossModel(turns(rocksTakeMore()), 0.5);
    double most = losses.rate(CRAW, ROCKS).perHour();
    assertTrue(most > losses.rate(CRAW, SAND).perHour());
    assertTrue(most > losses.rate(PADDLE, ROCKS).perHour());
    assertFalse(losses.assumed());
  }

  @Test
  void theLevelFitsTheLogsOwnLosses() {
    List<Turn> turns = turns(rocksTakeMore());
    LossModel losses = new LossModel(turns, 0.5);
    double lost = turns.stream().mapToDouble(Turn::use).sum();
    double scale = losses.rate(CRAW, ROCKS).scale();
    double unscaled =
        turns.stream()
            .mapToDouble(
                t -> t.rodHours() * losses.rate(t.plastic(), t.trip().water()).perHour() / scale)
            .sum();
    assertEquals((lost + 1) / (unscaled + 1), scale, 1e-12);
    LossRate rate = losses.rate(PADDLE, SAND);
    assertEquals(
        Math.exp(rate.logMean() + rate.logVariance() / 2) * rate.scale(), rate.perHour(), 1e-12);
  }

  @Test
  void whatTheLogDoesNotKnowIsLessSure() {
    LossModel losses = new LossModel(turns(rocksTakeMore()), 0.5);
    double known = losses.rate(CRAW, ROCKS).logVariance();
    assertTrue(losses.rate(CRAW, Name.of("Mill Weir")).logVariance() > known);
    assertTrue(losses.rate(Plastic.of("", "shrimp", "ink", 75), ROCKS).logVariance() > known);
    double blank = losses.rate(CRAW, Name.BLANK).perHour();
    assertTrue(blank < losses.rate(CRAW, ROCKS).perHour());
    assertTrue(blank > losses.rate(CRAW, SAND).perHour());
  }

  @Test
  void withoutALogTheSettingIsTaken() {
    LossModel losses = new LossModel(List.of(), 0.7);
    assertTrue(losses.assumed());
    assertEquals(0.7, losses.rate(CRAW, ROCKS).perHour());
    assertEquals(2, losses.dispersion());
  }

  @Test
  void aLogWithoutLossesForecastsFew() {
    BoxBuilder box = new BoxBuilder();
    for (int day = 1; day <= 10; day++) {
      box.fished(BoxBuilder.daysAgo(day), CRAW, 60, 0, 0);
    }
    double perHour = new LossModel(turns(box), 0.5).rate(CRAW, ROCKS).perHour();
    assertTrue(perHour > 0 && perHour < 0.15, "per hour " + perHour);
  }

  @Test
  void ofVeryManyPlasticsTheSeldomFishedShareARate() {
    BoxBuilder box = rocksTakeMore();
    for (int number = 0; number < 600; number++) {
      Plastic seldom = Plastic.of("", "paddle", "shade " + number, 75);
      box.fished(BoxBuilder.daysAgo(30 + number / 10), "Gull Rocks", seldom, 60, 0, number % 2);
    }
    LossModel losses = new LossModel(turns(box), 0.5);
    double half = losses.rate(Plastic.of("", "paddle", "shade 598", 75), ROCKS).perHour();
    assertEquals(half, losses.rate(Plastic.of("", "paddle", "shade 599", 75), ROCKS).perHour());
    assertEquals(0.5, half, 0.1);
    LossRate own = losses.rate(CRAW, ROCKS);
    assertTrue(own.perHour() > 2 * half, "often fished: " + own.perHour());
    assertTrue(
        own.logVariance()
            < losses.rate(Plastic.of("", "craw", "shade 1", 75), ROCKS).logVariance());
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "50, 1", "55, 1", "56, 2", "75, 2", "100, 3", "130, 4", "131, 5", "500, 5"})
  void lengthsFallIntoClasses(int lengthMm, int expected) {
    assertEquals(expected, Plastic.of("", "craw", "ink", lengthMm).lengthClass());
  }

  /** A log-normal rate's mean is exp(mean + v/2); the setting is the mean. */
  @Test
  void assumedRateIsTheSettingOnAverage() {
    LossRate rate = new LossModel(List.of(), 0.7).rate(CRAW, ROCKS);
    assertEquals(0.7, Math.exp(rate.logMean() + rate.logVariance() / 2), 1e-12);
    assertEquals(0.25, rate.logVariance());
    assertEquals(0, rate.dayVariance());
  }

  /** The craw loses as many in an hour as the paddle, which is fished four times as long. */
  @Test
  void lossesAreReckonedByTheHour() {
    BoxBuilder box = new BoxBuilder();
    for (int day = 1; day <= 20; day++) {
      box.fished(BoxBuilder.daysAgo(day), CRAW, 60, 0, 10);
      box.fished(BoxBuilder.daysAgo(day), PADDLE, 240, 0, 40);
    }
    LossModel losses = new LossModel(turns(box), 0.5);
    assertEquals(10, losses.rate(CRAW, ROCKS).perHour(), 0.5);
    assertEquals(10, losses.rate(PADDLE, ROCKS).perHour(), 0.5);
  }

  /** Three hours at the rocks for every one on the sand. */
  @Test
  void waterNobodyNamesIsTheMeanOfThoseFishedByTheirHours() {
    BoxBuilder box = new BoxBuilder();
    for (int day = 1; day <= 20; day++) {
      boolean rocks = day % 2 == 0;
      String water = rocks ? "Gull Rocks" : "Long Sand";
      box.fished(BoxBuilder.daysAgo(day), water, CRAW, rocks ? 180 : 60, 0, rocks ? 9 : 1);
    }
    LossModel losses = new LossModel(turns(box), 0.5);
    assertEquals(
        0.75 * losses.rate(CRAW, ROCKS).logMean() + 0.25 * losses.rate(CRAW, SAND).logMean(),
        losses.rate(CRAW, Name.BLANK).logMean(),
        1e-9);
  }

  @Test
  void turnsWithoutTimeTeachNothing() {
    BoxBuilder box = new BoxBuilder().fished(BoxBuilder.daysAgo(1), CRAW, 0, 0, 0);
    assertTrue(new LossModel(turns(box), 0.5).assumed());
  }
}

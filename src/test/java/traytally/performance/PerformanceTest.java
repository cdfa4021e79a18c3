package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Stint;

class PerformanceTest {
  private static final Name INK = Name.of("ink");
  private static final Name OLIVE = Name.of("olive");

  /** Olive takes twice as many as ink whenever both are fished; ink has the good days alone. */
  private static Stints inkOnGoodDaysOnly() {
    Stints log = new Stints();
    int[] bite = {1, 2, 6, 0};
    for (int day = 0; day < 16; day++) {
      int ink = bite[day / 2 % 4];
      log.inTurn(day, "ink", 60, ink, "olive", 60, 2 * ink + (ink == 0 ? 1 : 0));
    }
    for (int day = 16; day < 22; day++) {
      log.on(day, "ink", 120, 20);
    }
    return log;
  }

  @Test
  void coloursAreComparedOnTheSameDay() {
    Performance performance = inkOnGoodDaysOnly().performance();
    Trust ink = performance.colour(INK);
    Trust olive = performance.colour(OLIVE);
    assertTrue(
        ink.evidence().rawPerHour().orElseThrow() > olive.evidence().rawPerHour().orElseThrow());
    assertTrue(olive.trust() > 0.9, "olive " + olive.trust());
    assertTrue(ink.trust() < 0.1, "ink " + ink.trust());
    assertEquals(Standing.TRUSTED, olive.standing());
    assertEquals(Standing.DOUBTFUL, ink.standing());
  }

  @Test
  void twoColoursOutfishTheirMeanByAsMuchAsEachOtherLacks() {
    Performance performance = inkOnGoodDaysOnly().performance();
    Trust ink = performance.colour(INK);
    Trust olive = performance.colour(OLIVE);
    assertEquals(1, ink.rateRatio() * olive.rateRatio(), 1e-9);
    assertEquals(1, ink.trust() + olive.trust(), 1e-9);
    assertEquals(ink.low(), 1 / olive.high(), 1e-9);
    assertTrue(olive.low() < olive.rateRatio() && olive.rateRatio() < olive.high());
  }

  @Test
  void aChangedMindIsNotNewEvidence() {
    Stints once = new Stints();
    Stints twice = new Stints();
    for (int day = 0; day < 6; day++) {
      once.on(day, "ink", 60, 1).on(day, "olive", 40, 4);
      twice.on(day, "olive", 25, 3).on(day, "ink", 60, 1).on(day, "olive", 15, 1);
    }
    assertEquals(
        once.performance().colour(OLIVE).trust(), twice.performance().colour(OLIVE).trust(), 1e-9);
  }

  @Test
  void evidenceIsCountedByDay() {
    Stints log = new Stints();
    log.on(0, "ink", 30, 2).on(0, "ink", 30, 0).on(1, "ink", 60, 0).on(2, "ink", 60, 4);
    Evidence seen = log.performance().colour(INK).evidence();
    assertEquals(new Evidence(3, 2, 180, 10, 6, 3, 1, 6, 4), seen);
    assertEquals(2, seen.rawPerHour().orElseThrow());
  }

  @Test
  void aPlasticStandsWhereItsColourStands() {
    Stints log = inkOnGoodDaysOnly();
    Plastic rare = Plastic.of("", "craw", "olive", 100);
    log.add(3, rare, OptionalDouble.of(10), 0);
    Performance performance = log.performance();
    Trust own =
        performance.by(Grain.PLASTIC).stream()
            .filter(t -> t.plastic().orElseThrow().equals(rare))
            .findFirst()
            .orElseThrow();
    assertEquals(1, own.evidence().days());
    assertEquals(performance.colour(OLIVE).standing(), own.standing());
    assertEquals(OptionalInt.of(100), own.lengthMm());
    assertEquals(2, performance.by(Grain.BODY).size());
  }

  @Test
  void whatWasNeverFishedIsAsLikelyGoodAsBad() {
    Trust unknown = inkOnGoodDaysOnly().performance().colour(Name.of("rust"));
    assertEquals(0.5, unknown.trust());
    assertEquals(1, unknown.rateRatio());
    assertTrue(unknown.low() < 1 && unknown.high() > 1);
    assertEquals(Standing.UNPROVEN, unknown.standing());
    assertEquals(OptionalDouble.empty(), unknown.evidence().rawPerHour());
  }

  static Stream<Stints> poorLogs() {
    Stints oneTrip = new Stints().on(0, "ink", 60, 2).on(0, "olive", 60, 1);
    Stints oneColour = new Stints().on(0, "ink", 60, 2).on(1, "ink", 60, 0);
    Stints oneStint = new Stints().on(0, "ink", 60, 2);
    Stints noTakes = new Stints().on(0, "ink", 60, 0).on(0, "olive", 60, 0).on(1, "ink", 9, 0);
    Stints noMinutes = new Stints().on(0, "ink", 0, 0).on(1, "olive", 0, 0);
    Stints takesWithoutMinutes = new Stints().on(0, "ink", 0, 3).on(1, "olive", 0, 1);
    Stints unknownMinutes =
        new Stints().add(0, Plastic.of("", "paddle", "ink", 0), OptionalDouble.empty(), 3);
    Stints secondsOnly = new Stints().on(0, "ink", 1e-6, 1).on(0, "olive", 60, 1);
    Stints alike = new Stints();
    Stints plenty = new Stints();
    for (int day = 0; day < 10; day++) {
      alike.on(day, "ink", 60, 1).on(day, "olive", 60, 1);
      plenty.on(day, "ink", 600, 10_000).on(day, "olive", 600, 9_000);
    }
    return Stream.of(
        new Stints(),
        oneStint,
        oneTrip,
        oneColour,
        noTakes,
        noMinutes,
        takesWithoutMinutes,
        unknownMinutes,
        secondsOnly,
        alike,
        plenty);
  }

  @ParameterizedTest
  @MethodSource("poorLogs")
  void everyLogGivesDefinedNumbers(Stints log) {
    for (Grain grain : Grain.values()) {
      for (Trust trust : log.performance().by(grain)) {
        assertTrue(trust.trust() >= 0 && trust.trust() <= 1, trust.toString());
        assertTrue(trust.low() > 0 && trust.low() <= trust.rateRatio(), trust.toString());
        assertTrue(trust.high() >= trust.rateRatio() && trust.high() < 1e9, trust.toString());
      }
    }
  }

  @Test
  void aSingleColourHasNothingToBeComparedWith() {
    Trust ink = new Stints().on(0, "ink", 60, 2).on(1, "ink", 60, 5).performance().colour(INK);
    assertEquals(0.5, ink.trust(), 1e-6);
    assertEquals(1, ink.rateRatio(), 1e-9);
  }

  @Test
  void likeColoursAreTrustedAlike() {
    Stints alike = new Stints();
    for (int day = 0; day < 10; day++) {
      alike.on(day, "ink", 60, 1).on(day, "olive", 60, 1);
    }
    assertEquals(0.5, alike.performance().colour(INK).trust(), 1e-6);
  }

  @Test
  void plentyOfFishTellsColoursApartForCertain() {
    Stints plenty = new Stints();
    for (int day = 0; day < 10; day++) {
      plenty.inTurn(day, "ink", 600, 10_000, "olive", 600, 5_000);
    }
    Trust ink = plenty.performance().colour(INK);
    assertTrue(ink.trust() > 0.999);
    assertEquals(Math.sqrt(2), ink.rateRatio(), 0.02);
  }

  @Test
  void rowsComeMostTrustedFirst() {
    List<Trust> rows = inkOnGoodDaysOnly().performance().by(Grain.COLOUR);
    assertEquals(List.of(OLIVE, INK), rows.stream().map(t -> t.colour().orElseThrow()).toList());
  }

  @ParameterizedTest
  @EnumSource(Measure.class)
  void everyMeasureHasItsWord(Measure measure) {
    assertEquals(measure, Measure.parse(" " + measure.name() + " ").orElseThrow());
  }

  @Test
  void anotherMeasureCountsOtherFish() {
    List<Trust> byHooked =
        Performance.of(
                new Stints().on(0, "ink", 60, 5).log(),
                LogReading.plain(1),
                Measure.HOOKED,
                new StandingRule(0.8, 0.65, 0.1))
            .by(Grain.COLOUR);
    assertEquals(2, byHooked.get(0).evidence().counted());
  }

  @Test
  void aTurnOfNoTimeInWhichNothingHappenedSaysNothing() {
    Performance with =
        Performance.of(
            withNothing(inkOnGoodDaysOnly()),
            LogReading.plain(1),
            Measure.TAKES,
            new StandingRule(0.8, 0.65, 0.1));
    assertEquals(
        inkOnGoodDaysOnly().performance().colour(OLIVE).advantage(),
        with.colour(OLIVE).advantage());
    Trust rust = with.colour(Name.of("rust"));
    assertEquals(1, rust.evidence().days());
    assertEquals(0.5, rust.trust());
    assertTrue(rust.logRatioSd() > 0);
  }

  private static List<Stint> withNothing(Stints log) {
    Stint stint = log.log().get(0);
    Stint nothing =
        new Stint(
            stint.trip(),
            stint.species(),
            stint.clarity(),
            Plastic.of("", "paddle", "rust", 75),
            OptionalDouble.of(0),
            OptionalInt.empty(),
            Fish.NONE,
            0,
            Optional.empty(),
            0,
            1,
            "");
    return Stream.concat(log.log().stream(), Stream.of(nothing)).toList();
  }

  /** Each has one take a day more than the one before it. */
  @Test
  void manyRowsComeMostTrustedFirst() {
    List<String> names = List.of("teal", "ink", "wine", "amber", "olive", "chalk", "rust");
    Stints log = new Stints();
    for (int day = 0; day < 14; day++) {
      for (int turn = 0; turn < names.size(); turn++) {
        int which = (day + turn) % names.size();
        log.on(day, names.get(which), 60, 1 + 3 * which);
      }
    }
    assertEquals(
        List.of("rust", "chalk", "olive", "amber", "wine", "ink", "teal"),
        log.performance().by(Grain.COLOUR).stream()
            .map(t -> t.colour().orElseThrow().text())
            .toList());
  }
}

package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Stint;

/** The days that would change a standing do change it when they are fished, and no fewer. */
class WhatIfTest {
  private static final List<Integer> TRIED = List.of(1, 2, 3, 4, 6, 8);
  private static final Name INK = Name.of("ink");
  private static final Name OLIVE = Name.of("olive");

  /** Two days, then six of ink alone: of the others, rust is the most fished. */
  private static Stints young() {
    Stints log = new Stints();
    log.on(0, "olive", 60, 3).on(0, "ink", 60, 3).on(0, "rust", 90, 3);
    log.on(1, "ink", 60, 3).on(1, "olive", 60, 3).on(1, "rust", 90, 5);
    return log;
  }

  private static Stints settled() {
    Stints log = new Stints();
    for (int day = 0; day < 8; day++) {
      log.inTurn(day, "ink", 60, 2, "olive", 60, 6);
    }
    return log;
  }

  /** The log with the days of {@code change} fished for real, but only the first few. */
  private static Standing fished(
      Supplier<Stints> start, int last, Name colour, WhatIf change, int days) {
    Stints log = start.get();
    for (int day = 1; day <= days; day++) {
      String own = colour.text();
      String other = change.other().text();
      if (day % 2 == 1) {
        log.on(last + day, own, 60, change.takes());
        log.on(last + day, other, 60, change.othersTakes());
      } else {
        log.on(last + day, other, 60, change.othersTakes());
        log.on(last + day, own, 60, change.takes());
      }
    }
    return log.performance().colour(colour).standing();
  }

  private static void holds(
      Supplier<Stints> start, int last, Name colour, WhatIf change, boolean up) {
    assertEquals(change.then(), fished(start, last, colour, change, change.days()));
    assertEquals(up, change.then() == Standing.TRUSTED);
    for (int fewer : TRIED.subList(0, TRIED.indexOf(change.days()))) {
      assertNotEquals(up, fished(start, last, colour, change, fewer) == Standing.TRUSTED);
    }
  }

  /** Rust has 8 takes in 3 rod-hours: 2.7, so 3 an hour is its usual number. */
  @Test
  void twiceTheOthersTakesMakeAColourTrusted() {
    WhatIf change = WhatIf.of(young().performance(), OLIVE).orElseThrow();
    assertEquals(Name.of("rust"), change.other());
    assertEquals(3, change.othersTakes());
    assertEquals(6, change.takes());
    assertEquals(young().performance().colour(OLIVE).standing(), change.now());
    holds(WhatIfTest::young, 1, OLIVE, change, true);
  }

  @Test
  void daysWithoutATakeEndTrust() {
    assertEquals(Standing.TRUSTED, settled().performance().colour(OLIVE).standing());
    WhatIf change = WhatIf.of(settled().performance(), OLIVE).orElseThrow();
    assertEquals(0, change.takes());
    assertEquals(2, change.othersTakes());
    assertTrue(change.days() > 1, change.toString());
    holds(WhatIfTest::settled, 7, OLIVE, change, false);
  }

  @Test
  void otherWithHardlyAFishHasOneAnHourAllTheSame() {
    Stints log = new Stints().on(0, "ink", 60, 0).on(0, "olive", 60, 1);
    assertEquals(1, WhatIf.of(log.performance(), OLIVE).orElseThrow().othersTakes());
  }

  @Test
  void eightDaysMayNotBeEnough() {
    Stints log = new Stints();
    for (int day = 0; day < 40; day++) {
      log.inTurn(day, "ink", 60, 8, "olive", 60, 1);
    }
    assertEquals(Optional.empty(), WhatIf.of(log.performance(), OLIVE));
  }

  @Test
  void whatWasNotFishedOrHasNoOtherCannotBeSaid() {
    assertEquals(Optional.empty(), WhatIf.of(settled().performance(), Name.of("rust")));
    Stints alone = new Stints().on(0, "ink", 60, 2).on(1, "ink", 60, 1);
    assertEquals(Optional.empty(), WhatIf.of(alone.performance(), INK));
  }

  @Test
  void ofOthersFishedAlikeTheFirstByNameStandsBeside() {
    Stints log = new Stints().on(0, "olive", 60, 2).on(0, "sand", 60, 2).on(0, "ink", 60, 2);
    assertEquals(INK, WhatIf.of(log.performance(), OLIVE).orElseThrow().other());
  }

  @Test
  void turnOfNoTimeIsNeitherItsOwnNorAnothers() {
    Stints log = new Stints().on(0, "olive", 60, 2);
    Stint nothing = tiedOnAndOff(log.log().get(0), "ink");
    Performance performance =
        Performance.of(
            List.of(log.log().get(0), nothing),
            LogReading.plain(1),
            Measure.TAKES,
            new StandingRule(0.8, 0.65, 0.1));
    assertEquals(Optional.empty(), WhatIf.of(performance, OLIVE), "no other was fished");
    assertEquals(Optional.empty(), WhatIf.of(performance, INK), "it was not fished itself");
  }

  private static Stint tiedOnAndOff(Stint like, String colour) {
    return new Stint(
        like.trip(),
        Name.BLANK,
        Optional.empty(),
        Plastic.of("", "paddle", colour, 75),
        OptionalDouble.of(0),
        OptionalInt.empty(),
        Fish.NONE,
        0,
        Optional.empty(),
        0,
        1,
        "");
  }
}

package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Tone;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

class ContextTest {
  private static final Name INK = Name.of("ink");
  private static final Name OLIVE = Name.of("olive");
  private static final StandingRule RULE = new StandingRule(0.8, 0.65, 0.1);

  private final List<Stint> log = new ArrayList<>();

  private void on(int day, String species, String clarity, String colour, int takes) {
    log.add(
        new Stint(
            new Trip(LocalDate.of(2025, 1, 4).plusDays(day), Name.of("Gull Rocks")),
            Name.of(species),
            Clarity.parse(clarity),
            Plastic.of("", "paddle", colour, 75),
            OptionalDouble.of(60),
            OptionalInt.empty(),
            new Fish(0, takes, 0, 0),
            0,
            Optional.empty(),
            0,
            1,
            ""));
  }

  private Performance performance(Map<Name, Tone> tones) {
    return Performance.of(log, new LogReading(1, false, tones), Measure.TAKES, RULE);
  }

  /** Ink takes pollack, olive takes wrasse, both as often. */
  private Performance inkForPollack() {
    for (int day = 0; day < 48; day++) {
      boolean pollack = day % 2 == 0;
      String first = day % 4 < 2 ? "ink" : "olive";
      for (String colour : List.of(first, first.equals("ink") ? "olive" : "ink")) {
        int takes = colour.equals("ink") == pollack ? 6 : 2;
        on(day, pollack ? "pollack" : "wrasse", "clear", colour, takes);
      }
      on(day, pollack ? "pollack" : "wrasse", "clear", "rust", 3);
    }
    return performance(Map.of());
  }

  private static Conditions forFish(String species) {
    return new Conditions(Name.of(species), Optional.empty(), Optional.empty());
  }

  @Test
  void aColourMayBeGoodForOneFishOnly() {
    Performance all = inkForPollack();
    Performance pollack = all.under(forFish("pollack"));
    Performance wrasse = all.under(forFish("wrasse"));
    assertTrue(pollack.colour(INK).trust() > 0.95, pollack.colour(INK).toString());
    assertTrue(wrasse.colour(INK).trust() < 0.05, wrasse.colour(INK).toString());
    assertTrue(wrasse.colour(OLIVE).trust() > 0.95, wrasse.colour(OLIVE).toString());
    assertEquals(48, all.colour(INK).evidence().days());
    assertEquals(24, pollack.colour(INK).evidence().days());
    assertEquals(144, pollack.colour(INK).evidence().takes());
  }

  @Test
  void whatIsNotAskedForIsWeightedByTheLogsHours() {
    Performance all = inkForPollack();
    double mean =
        (all.under(forFish("pollack")).colour(INK).logRatioMean()
                + all.under(forFish("wrasse")).colour(INK).logRatioMean())
            / 2;
    assertEquals(mean, all.colour(INK).logRatioMean(), 1e-9);
  }

  @Test
  void aPlanWeightsItsOwnHours() {
    Performance all = inkForPollack();
    PlannedTrip three = plan("pollack", 3);
    PlannedTrip one = plan("wrasse", 1);
    double planned = all.under(List.of(three, one)).colour(INK).logRatioMean();
    double pollack = all.under(List.of(three)).colour(INK).logRatioMean();
    double wrasse = all.under(List.of(one)).colour(INK).logRatioMean();
    assertEquals(0.75 * pollack + 0.25 * wrasse, planned, 1e-9);
    assertEquals(48, all.under(List.of(three)).colour(INK).evidence().days());
  }

  /**
   * By hand: 1.5 hours with two rods are 3 rod-hours, beside 1 with one rod; so whatever the two
   * trips differ in (fish, clarity, month), three parts of four are the first's.
   */
  @Test
  void aPlansRodHoursWeightFishClarityAndMonthAlike() {
    for (int week = 0; week < 52; week++) {
      boolean summer = week % 52 >= 20 && week % 52 < 34;
      boolean clear = week % 3 > 0;
      String species = week % 2 == 0 ? "pollack" : "wrasse";
      on(7 * week, species, clear ? "clear" : "dirty", "ink", clear ? 5 : summer ? 1 : 3);
      on(7 * week, species, clear ? "clear" : "dirty", "olive", summer ? 5 : week % 2 == 0 ? 1 : 3);
    }
    Performance all = performance(Map.of());
    PlannedTrip one = trip(LocalDate.of(2026, 7, 4), "pollack", Clarity.CLEAR, 1.5, 2);
    PlannedTrip other = trip(LocalDate.of(2026, 1, 3), "wrasse", Clarity.DIRTY, 1, 1);
    double first = all.under(List.of(one)).colour(INK).logRatioMean();
    double second = all.under(List.of(other)).colour(INK).logRatioMean();
    assertTrue(Math.abs(first - second) > 0.1, first + " and " + second);
    double both = all.under(List.of(one, other)).colour(INK).logRatioMean();
    assertEquals((1.5 * 2 * first + second) / 4, both, 1e-9);
  }

  private static PlannedTrip trip(
      LocalDate date, String species, Clarity clarity, double hours, int rods) {
    return new PlannedTrip(
        date, Name.of("Gull Rocks"), Name.of(species), Optional.of(clarity), hours, rods, "");
  }

  private static PlannedTrip plan(String species, double hours) {
    return new PlannedTrip(
        LocalDate.of(2025, 2, 1),
        Name.of("Gull Rocks"),
        Name.of(species),
        Optional.empty(),
        hours,
        1,
        "");
  }

  @Test
  void aFishNeverFishedForLeavesMoreDoubt() {
    Performance all = inkForPollack();
    Performance bass = all.under(forFish("bass"));
    assertFalse(bass.hasEvidence());
    assertTrue(all.hasEvidence());
    assertTrue(bass.colour(INK).logRatioSd() > all.colour(INK).logRatioSd());
    assertEquals(0, bass.colour(INK).evidence().days());
    assertEquals(Standing.UNPROVEN, bass.colour(INK).standing());
  }

  @Test
  void clarityAndSeasonTellColoursApartToo() {
    for (int day = 0; day < 360; day += 6) {
      boolean dirty = day / 6 % 2 == 0;
      boolean summer = day > 150 && day < 240;
      on(day, "", dirty ? "dirty" : "clear", "ink", dirty ? 6 : 2);
      on(day, "", dirty ? "dirty" : "clear", "olive", summer ? 7 : 3);
    }
    Performance all = performance(Map.of());
    double dirty =
        all.under(new Conditions(Name.BLANK, Optional.of(Clarity.DIRTY), Optional.empty()))
            .colour(INK)
            .trust();
    double july =
        all.under(new Conditions(Name.BLANK, Optional.empty(), Optional.of(Month.JULY)))
            .colour(OLIVE)
            .trust();
    assertTrue(dirty > all.colour(INK).trust() + 0.1, "dirty " + dirty);
    assertTrue(july > all.colour(OLIVE).trust() + 0.1, "July " + july);
  }

  /** Two dark colours shine; a third, fished once, may borrow from them if its look is known. */
  @Test
  void aLittleFishedColourBorrowsFromItsTone() {
    List<String> colours = List.of("ink", "smoke", "chalk", "pearl", "amber", "sand");
    for (int day = 0; day < 40; day++) {
      List<String> order = new ArrayList<>(colours);
      Collections.rotate(order, day);
      for (String colour : order) {
        on(day, "", "", colour, colour.equals("ink") || colour.equals("smoke") ? 6 : 2);
      }
    }
    on(3, "", "", "coal", 4);
    Map<Name, Tone> tones =
        Map.of(
            INK,
            Tone.DARK_MUTED,
            Name.of("smoke"),
            Tone.DARK_MUTED,
            Name.of("coal"),
            Tone.DARK_MUTED,
            Name.of("chalk"),
            Tone.PALE_MUTED,
            Name.of("pearl"),
            Tone.PALE_MUTED);
    double blind = performance(Map.of()).colour(Name.of("coal")).trust();
    double seen = performance(tones).colour(Name.of("coal")).trust();
    assertTrue(seen > blind + 0.02, seen + " against " + blind);
  }

  /** A side of the conditions that makes no difference has a deviation of nothing. */
  @Test
  void conditionsThatMakeNoDifferenceConverge() {
    for (int day = 0; day < 60; day++) {
      String species = List.of("pollack", "bass", "wrasse").get(day % 3);
      String clarity = List.of("clear", "stained", "cloudy", "dirty").get(day % 4);
      on(day, species, clarity, "ink", 3);
      on(day, species, clarity, "olive", 3);
    }
    Performance all = performance(Map.of(INK, Tone.DARK_MUTED));
    for (Trust trust : all.under(forFish("bass")).by(Grain.PLASTIC)) {
      assertEquals(0.5, trust.trust(), 0.05);
      assertTrue(trust.low() > 0.6 && trust.high() < 1.7, trust.toString());
    }
  }

  /** Rust is always first: its lead may be the hour's as well as its own, so it is less sure. */
  @Test
  void theOrderOfADayIsAllowedFor() {
    for (int day = 0; day < 60; day++) {
      List<String> order = new ArrayList<>(List.of("ink", "olive"));
      Collections.rotate(order, day);
      order.add(0, "rust");
      for (String colour : order) {
        on(day, "", "", colour, colour.equals("rust") ? 6 : 4);
      }
    }
    Trust always = performance(Map.of()).colour(Name.of("rust"));
    List<Stint> turned = new ArrayList<>();
    for (int i = 0; i < log.size(); i += 3) {
      List<Stint> day = new ArrayList<>(log.subList(i, i + 3));
      Collections.rotate(day, i / 3);
      turned.addAll(day);
    }
    Trust inTurn =
        Performance.of(turned, LogReading.plain(1), Measure.TAKES, RULE).colour(Name.of("rust"));
    assertTrue(always.trust() > 0.8, always.toString());
    assertTrue(inTurn.trust() > always.trust(), inTurn + " against " + always);
    assertTrue(inTurn.logRatioSd() < always.logRatioSd(), inTurn + " against " + always);
  }
}

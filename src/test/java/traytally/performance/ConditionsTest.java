package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.PlannedTrip;
import traytally.trip.Season;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** Which conditions a log can speak of, and how they are weighted where it is asked of all. */
class ConditionsTest {
  private static final Name INK = Name.of("ink");
  private static final StandingRule RULE = new StandingRule(0.8, 0.65, 0.1);

  private final List<Stint> log = new ArrayList<>();

  private void on(Month month, String species, String clarity, String colour, double minutes) {
    log.add(
        new Stint(
            new Trip(LocalDate.of(2025, month, 4), Name.of("Gull Rocks")),
            Name.of(species),
            Clarity.parse(clarity),
            Plastic.of("", "paddle", colour, 75),
            OptionalDouble.of(minutes),
            OptionalInt.empty(),
            new Fish(0, 2, 0, 0),
            0,
            Optional.empty(),
            0,
            1,
            ""));
  }

  private Performance performance(boolean southern) {
    return Performance.of(log, new LogReading(1, southern, Map.of()), Measure.TAKES, RULE);
  }

  private static Conditions in(Month month) {
    return new Conditions(Name.BLANK, Optional.empty(), Optional.of(month));
  }

  @Test
  void eachFishClarityAndSeasonFishedUnderIsToldApart() {
    on(Month.MAY, "wrasse", "clear", "ink", 60);
    on(Month.JULY, "pollack", "dirty", "ink", 60);
    on(Month.JANUARY, "", "", "olive", 60);
    assertEquals(
        List.of("pollack", "wrasse", "clear", "dirty", "spring", "summer"),
        List.copyOf(performance(false).byCondition(INK).keySet()));
    assertEquals(
        List.of("winter"), List.copyOf(performance(false).byCondition(Name.of("olive")).keySet()));
    assertEquals(
        List.of("pollack", "wrasse", "clear", "dirty", "autumn", "winter"),
        List.copyOf(performance(true).byCondition(INK).keySet()));
    assertEquals(1, performance(false).byCondition(INK).get("spring").evidence().days());
  }

  @Test
  void whatWasAlwaysAlikeTellsNothingApart() {
    on(Month.MAY, "wrasse", "clear", "ink", 60);
    on(Month.APRIL, "wrasse", "clear", "olive", 60);
    assertEquals(Set.of(), performance(false).byCondition(INK).keySet());
  }

  @Test
  void evidenceIsOfTheConditionsAskedFor() {
    on(Month.MAY, "wrasse", "clear", "ink", 60);
    on(Month.MARCH, "wrasse", "dirty", "ink", 60);
    on(Month.JULY, "pollack", "dirty", "ink", 60);
    Performance all = performance(false);
    assertEquals(3, all.colour(INK).evidence().days());
    assertEquals(2, all.under(in(Month.APRIL)).colour(INK).evidence().days());
    Conditions dirty = new Conditions(Name.BLANK, Optional.of(Clarity.DIRTY), Optional.empty());
    assertEquals(2, all.under(dirty).colour(INK).evidence().days());
    assertTrue(all.under(in(Month.MARCH)).hasEvidence());
    assertFalse(all.under(in(Month.OCTOBER)).hasEvidence());
    assertEquals(Optional.of(Season.SPRING), all.under(in(Month.MARCH)).season());
    assertEquals(Optional.empty(), all.season());
    assertTrue(Conditions.ANY.isAny());
    assertFalse(dirty.isAny());
  }

  @Test
  void whatWasNotFishedUnderThemIsStillJudged() {
    on(Month.MAY, "wrasse", "clear", "ink", 60);
    on(Month.MAY, "wrasse", "clear", "olive", 60);
    List<Trust> rows = performance(false).under(in(Month.OCTOBER)).by(Grain.COLOUR);
    assertEquals(2, rows.size());
    assertEquals(0, rows.get(0).evidence().days());
  }

  private Mix mix() {
    return Mix.of(performance(false).turns(), false);
  }

  private static PlannedTrip plan(String species, double hours, int rods) {
    return new PlannedTrip(
        LocalDate.of(2025, 7, 1), Name.BLANK, Name.of(species), Optional.empty(), hours, rods, "");
  }

  /** 1 h of 3 for wrasse; a plan of 1 h × 2 rods for bass and 2 h left open: ½, and ½ as usual. */
  @Test
  void conditionsAreWeightedByHours() {
    on(Month.MAY, "wrasse", "clear", "ink", 60);
    on(Month.JULY, "pollack", "dirty", "ink", 120);
    Mix usual = mix();
    assertEquals(Set.of("pollack", "wrasse"), usual.of(Context.SPECIES).keySet());
    assertEquals(1.0 / 3, usual.of(Context.SPECIES).get("wrasse"), 1e-12);
    assertEquals(2.0 / 3, usual.of(Context.CLARITY).get("dirty"), 1e-12);
    Mix planned = usual.of(List.of(plan("bass", 1, 2), plan("", 2, 1)), false);
    assertEquals(0.5, planned.of(Context.SPECIES).get("bass"), 1e-12);
    assertEquals(0.5 / 3, planned.of(Context.SPECIES).get("wrasse"), 1e-12);
    assertEquals(1.0 / 3, planned.of(Context.SPECIES).get("pollack"), 1e-12);
    assertEquals(2.0 / 3, planned.of(Context.CLARITY).get("dirty"), 1e-12);
    assertEquals(Map.of("summer", 1.0), planned.of(Context.SEASON));
    assertEquals(usual, usual.of(List.<PlannedTrip>of(), false));
  }

  @Test
  void whatIsLeftOpenIsAsTheLogHadIt() {
    on(Month.MAY, "wrasse", "clear", "ink", 60);
    on(Month.JULY, "pollack", "dirty", "ink", 120);
    Mix asked = mix().with(in(Month.JANUARY), false);
    assertEquals(Map.of("winter", 1.0), asked.of(Context.SEASON));
    assertEquals(mix().of(Context.SPECIES), asked.of(Context.SPECIES));
    assertEquals(Map.of(), new Mix(Map.of()).of(Context.SPECIES));
  }
}

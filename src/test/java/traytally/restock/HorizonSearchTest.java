package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static traytally.restock.BoxBuilder.TODAY;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.PlannedTrip;
import traytally.trip.Trip;

class HorizonSearchTest {
  private static PlannedTrip trip(int daysAhead) {
    return new PlannedTrip(
        TODAY.plusDays(daysAhead), Name.BLANK, Name.BLANK, Optional.empty(), 4, 2, "");
  }

  private static Horizon find(List<PlannedTrip> plan, Optional<Pace> pace, Asked asked) {
    return new HorizonSearch(TODAY, plan, pace, 30, 4).find(asked);
  }

  private static Asked until(LocalDate date) {
    return new Asked(Optional.of(date), OptionalInt.empty(), Set.of());
  }

  private static Asked trips(int count) {
    return new Asked(Optional.empty(), OptionalInt.of(count), Set.of());
  }

  @Test
  void itLastsUntilTheNextOrderCouldBeHere() {
    Horizon horizon =
        find(List.of(trip(35), trip(34), trip(0), trip(-1)), Optional.empty(), Asked.NOTHING);
    assertEquals(TODAY.plusDays(34), horizon.to());
    assertEquals(2, horizon.planned());
    assertEquals(16, horizon.rodHours());
    assertEquals(
        "2 planned trips until 4 June, when an order made in 30 days would be here"
            + " (4 days' delivery)",
        horizon.words());
  }

  @Test
  void aDateAskedForEndsIt() {
    Horizon horizon = find(List.of(trip(3), trip(9)), Optional.empty(), until(TODAY.plusDays(5)));
    assertEquals(1, horizon.trips().size());
    assertEquals("1 planned trip until 6 May", horizon.words());
  }

  @Test
  void aNumberOfTripsIsFilledUpAtTheUsualPace() {
    Horizon horizon = find(List.of(trip(3), trip(9)), Optional.of(new Pace(7, 5)), trips(4));
    assertEquals(4, horizon.trips().size());
    assertEquals(2, horizon.planned());
    assertEquals(TODAY.plusDays(9 + 14), horizon.to());
    assertEquals(2 * 8 + 2 * 5, horizon.rodHours());
    assertEquals(
        "2 planned trips and 2 trips at your usual pace (one every 7 days, 5.0 rod-hours each)",
        horizon.words());
  }

  @Test
  void withoutAPlanTheUsualPaceIsTaken() {
    Horizon horizon = find(List.of(), Optional.of(new Pace(10, 3)), Asked.NOTHING);
    assertEquals(3, horizon.trips().size());
    assertEquals(0, horizon.planned());
    assertEquals(9, horizon.rodHours());
  }

  @Test
  void aSlowPaceStillMakesOneTripWithinTheHorizon() {
    Horizon horizon = find(List.of(), Optional.of(new Pace(200, 3)), Asked.NOTHING);
    assertEquals(1, horizon.trips().size());
    assertEquals(TODAY.plusDays(34), horizon.trips().get(0).date());
  }

  @Test
  void withNeitherPlanNorLogThereAreNoTrips() {
    assertEquals(0, find(List.of(), Optional.empty(), Asked.NOTHING).rodHours());
    Horizon asked = find(List.of(trip(3)), Optional.empty(), trips(5));
    assertEquals("1 planned trip of the 5 asked for; no log tells of a pace", asked.words());
  }

  @Test
  void oneAsksForADateOrForTripsNotBoth() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Asked(Optional.of(TODAY), OptionalInt.of(2), Set.of()));
    assertThrows(IllegalArgumentException.class, () -> trips(0));
  }

  private static List<Turn> turns(int... daysAgo) {
    List<Turn> turns = new ArrayList<>();
    for (int days : daysAgo) {
      Trip trip = new Trip(BoxBuilder.daysAgo(days), Name.BLANK);
      turns.add(
          new Turn(
              trip,
              Plastic.of("", "craw", "ink", 0),
              Name.BLANK,
              Optional.empty(),
              1,
              60 + days,
              Fish.NONE,
              0,
              0));
    }
    return turns;
  }

  @Test
  void thePaceIsTheMeanGapAndTheMedianDay() {
    Pace pace = Pace.of(turns(2, 12, 14, 22, 400), TODAY).orElseThrow();
    assertEquals(20 / 3.0, pace.gapDays(), 1e-12);
    assertEquals(73 / 60.0, pace.rodHours(), 1e-12);
  }

  @Test
  void daysAtHomeSlowThePace() {
    assertEquals(50, Pace.of(turns(100, 98), TODAY).orElseThrow().gapDays());
    assertEquals(250, Pace.of(turns(500, 498), TODAY).orElseThrow().gapDays());
  }

  @Test
  void oneTripIsTakenAsOneAMonth() {
    assertEquals(30, Pace.of(turns(1), TODAY).orElseThrow().gapDays());
    assertEquals(Optional.empty(), Pace.of(List.of(), TODAY));
  }

  @Test
  void planThatIsLongEnoughNeedsNoPace() {
    Horizon horizon = find(List.of(trip(3), trip(9)), Optional.of(new Pace(7, 5)), trips(2));
    assertEquals("2 planned trips", horizon.words());
    assertEquals(TODAY.plusDays(9), horizon.to());
    assertEquals(
        "2 planned trips", find(List.of(trip(3), trip(9)), Optional.empty(), trips(2)).words());
  }

  @Test
  void tripsAtTheUsualPaceBeginFromToday() {
    Horizon horizon = find(List.of(), Optional.of(new Pace(7, 5)), trips(2));
    assertEquals(TODAY.plusDays(14), horizon.to());
    assertEquals(
        "2 trips at your usual pace (one every 7 days, 5.0 rod-hours each)", horizon.words());
  }

  /** The plan ends on the third day: two weeks at the pace of one a week come after it. */
  @Test
  void usualPaceGoesOnWhereThePlanEndsBeforeTheDayAskedFor() {
    Horizon horizon =
        find(List.of(trip(3)), Optional.of(new Pace(7, 5)), until(TODAY.plusDays(17)));
    assertEquals(3, horizon.trips().size());
    assertEquals(1, horizon.planned());
    assertEquals(TODAY.plusDays(17), horizon.to());
    assertEquals(
        "1 planned trip and 2 trips at your usual pace (one every 7 days, 5.0 rod-hours each)"
            + " until 18 May",
        horizon.words());
    Horizon near = find(List.of(trip(3)), Optional.of(new Pace(7, 5)), until(TODAY.plusDays(5)));
    assertEquals("1 planned trip until 6 May", near.words());
  }

  @Test
  void paceRoundsToDaysOneAtLeast() {
    Pace often = new Pace(0.4, 1);
    assertEquals(
        List.of(TODAY.plusDays(1), TODAY.plusDays(1), TODAY.plusDays(1), TODAY.plusDays(2)),
        often.trips(TODAY, 4).stream().map(PlannedTrip::date).toList());
    assertEquals(10, new Pace(3, 2).tripsWithin(TODAY, TODAY.plusDays(30)).size());
    assertEquals(9, new Pace(3.01, 2).tripsWithin(TODAY, TODAY.plusDays(30)).size());
  }
}

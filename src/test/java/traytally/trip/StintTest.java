package traytally.trip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

final class StintTest {
  private static final Trip FIRST = new Trip(LocalDate.of(2026, 5, 1), Name.of("Gannet Ledge"));
  private static final Trip SECOND = new Trip(LocalDate.of(2026, 5, 2), Name.of("Gannet Ledge"));

  private static Stint stint(Trip trip, OptionalDouble minutes, OptionalInt casts) {
    return stint(trip, minutes, casts, 0, 0, 1);
  }

  private static Stint stint(
      Trip trip, OptionalDouble minutes, OptionalInt casts, int lost, int worn, int rods) {
    return new Stint(
        trip,
        Name.of("pollack"),
        Optional.of(Clarity.CLEAR),
        Plastic.of("", "paddle", "white", 75),
        minutes,
        casts,
        Fish.NONE,
        lost,
        Optional.empty(),
        worn,
        rods,
        "");
  }

  private static Stint minutes(Trip trip, double minutes) {
    return stint(trip, OptionalDouble.of(minutes), OptionalInt.empty());
  }

  private static Stint unknown(Trip trip) {
    return stint(trip, OptionalDouble.empty(), OptionalInt.empty());
  }

  @Test
  void useIsLostAndWorn() {
    assertEquals(5, stint(FIRST, OptionalDouble.empty(), OptionalInt.empty(), 3, 2, 1).use());
    assertThrows(
        ArithmeticException.class,
        () ->
            stint(FIRST, OptionalDouble.empty(), OptionalInt.empty(), Integer.MAX_VALUE, 1, 1)
                .use());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, 1e6, Double.NaN, Double.POSITIVE_INFINITY})
  void absurdMinutesAreRefused(double minutes) {
    assertThrows(IllegalArgumentException.class, () -> minutes(FIRST, minutes));
  }

  @Test
  void negativeCountsAreRefused() {
    OptionalDouble none = OptionalDouble.empty();
    OptionalInt noCasts = OptionalInt.empty();
    assertThrows(
        IllegalArgumentException.class, () -> stint(FIRST, none, OptionalInt.of(-1), 0, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> stint(FIRST, none, noCasts, -1, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> stint(FIRST, none, noCasts, 0, -1, 1));
    assertThrows(IllegalArgumentException.class, () -> stint(FIRST, none, noCasts, 0, 0, 0));
  }

  @ParameterizedTest
  @CsvSource({"-1,0,0,0", "0,1,2,0", "0,2,1,2", "0,0,0,-1", "0,-1,-1,-1"})
  void landedAreHookedAndHookedAreTakes(int follows, int takes, int hooked, int landed) {
    assertThrows(IllegalArgumentException.class, () -> new Fish(follows, takes, hooked, landed));
  }

  @Test
  void followsNeedNoTakes() {
    assertEquals(5, new Fish(5, 0, 0, 0).follows());
  }

  @Test
  void notedMinutesStandAsTheyAre() {
    assertEquals(
        List.of(new FishingTime(40, false)), FishingTime.of(List.of(minutes(FIRST, 40)), 2));
  }

  @Test
  void castsAreTurnedIntoMinutes() {
    Stint casts = stint(FIRST, OptionalDouble.empty(), OptionalInt.of(30));
    Stint both = stint(FIRST, OptionalDouble.of(50), OptionalInt.of(30));
    assertEquals(
        List.of(new FishingTime(45, true), new FishingTime(50, false)),
        FishingTime.of(List.of(casts, both), 1.5));
  }

  @Test
  void unknownStintTakesItsTripsMedian() {
    List<FishingTime> times =
        FishingTime.of(
            List.of(
                minutes(FIRST, 10),
                unknown(FIRST),
                minutes(FIRST, 20),
                minutes(FIRST, 90),
                minutes(SECOND, 500)),
            1);
    assertEquals(new FishingTime(20, true), times.get(1));
  }

  @Test
  void unknownTripTakesTheLogsMedian() {
    List<FishingTime> times =
        FishingTime.of(List.of(minutes(FIRST, 10), minutes(FIRST, 20), unknown(SECOND)), 1);
    assertEquals(new FishingTime(15, true), times.get(2));
  }

  @Test
  void logWithoutATimeIsTakenAsHalfHours() {
    assertEquals(List.of(new FishingTime(30, true)), FishingTime.of(List.of(unknown(FIRST)), 1));
    assertEquals(List.of(), FishingTime.of(List.of(), 1));
  }

  @Test
  void wordsOfTheTradeAreUnderstood() {
    assertEquals(Optional.of(LossCause.BITTEN_OFF), LossCause.parse(" Bitten Off "));
    assertEquals(Optional.empty(), LossCause.parse("eaten"));
    assertEquals(Optional.of(Clarity.DIRTY), Clarity.parse("DIRTY"));
    assertEquals(Optional.empty(), Clarity.parse("murky"));
  }

  @Test
  void tripsAreOrderedByDayThenWater() {
    assertEquals(-1, Integer.signum(FIRST.compareTo(SECOND)));
    assertEquals(-1, Integer.signum(new Trip(FIRST.date(), Name.of("Crab Bay")).compareTo(FIRST)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -2, 241, Double.NaN})
  void plannedHoursAreSensible(double hours) {
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new PlannedTrip(FIRST.date(), Name.BLANK, Name.BLANK, Optional.empty(), hours, 1, ""));
  }

  @Test
  void rodHoursAreHoursOfAllRods() {
    PlannedTrip plan =
        new PlannedTrip(FIRST.date(), Name.BLANK, Name.BLANK, Optional.empty(), 3.5, 2, "");
    assertEquals(7, plan.rodHours());
  }
}

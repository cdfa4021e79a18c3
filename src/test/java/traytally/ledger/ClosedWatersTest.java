package traytally.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;
import traytally.trip.Months;
import traytally.trip.PlannedTrip;

final class ClosedWatersTest {
  private static final Name LEDGE = Name.of("Gannet Ledge");
  private static final Name HARBOUR = Name.of("Tarn Harbour");
  private static final ClosedWaters SPRING = ClosedWaters.NONE.with(closed(LEDGE, "2-4"));

  private static Fact.Closed closed(Name water, String months) {
    return new Fact.Closed(water, Months.parse(months).orElseThrow());
  }

  private static PlannedTrip trip(Name water, int month, int day) {
    return trip(water, month, day, "");
  }

  private static PlannedTrip trip(Name water, int month, int day, String species) {
    LocalDate date = LocalDate.of(2026, month, day);
    return new PlannedTrip(date, water, Name.of(species), Optional.empty(), 3, 1, "");
  }

  @Test
  void waterIsClosedInItsMonthsOnly() {
    assertEquals(Months.parse("2-4"), SPRING.on(trip(LEDGE, 2, 1)));
    assertEquals(Months.parse("2-4"), SPRING.on(trip(LEDGE, 4, 30)));
    assertEquals(Optional.empty(), SPRING.on(trip(LEDGE, 5, 1)));
    assertEquals(Optional.empty(), SPRING.on(trip(LEDGE, 1, 31)));
    assertEquals(Optional.empty(), SPRING.on(trip(HARBOUR, 3, 1)));
  }

  @Test
  void lastWordOnAWaterCounts() {
    Shelf shelf = new Shelf();
    List<Fact> told =
        List.of(closed(LEDGE, "2-4"), closed(HARBOUR, "12"), closed(Name.of("gannet ledge"), "6"));
    shelf.record(new Entry("closed", "", OptionalLong.empty(), List.of(), told, List.of()));
    ClosedWaters waters = ClosedWaters.of(shelf.book());
    assertEquals(Optional.empty(), waters.on(trip(LEDGE, 3, 1)));
    assertEquals(Months.parse("6"), waters.on(trip(LEDGE, 6, 1)));
    assertEquals(Months.parse("12"), waters.on(trip(HARBOUR, 12, 1)));
  }

  @Test
  void noteNamesEachWaterOnceWithItsDays() {
    List<PlannedTrip> trips =
        List.of(
            trip(LEDGE, 4, 4),
            trip(LEDGE, 3, 7, "pollack"),
            trip(LEDGE, 3, 7, "bass"),
            trip(LEDGE, 5, 2),
            trip(HARBOUR, 3, 8));
    assertEquals(
        List.of(
            "Gannet Ledge is closed by your own note (February to April), and you plan to be there"
                + " on 2026-03-07, 2026-04-04. Ask before you go."),
        SPRING.notes(trips));
    assertEquals(List.of(), ClosedWaters.NONE.notes(trips));
  }

  @Test
  void closedMonthsNeedAWater() {
    assertThrows(IllegalArgumentException.class, () -> closed(Name.BLANK, "2-4"));
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import traytally.performance.Measure;
import traytally.performance.Performance;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Trip;

/** Worked by hand with Mantel and Haenszel's weights. */
class TrustCallsTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "paddle", "olive", 75);
  private static final Name ROCKS = Name.of("Gull Rocks");

  /** Ink out-fishes olive on every day. */
  private static Performance inkIsTrusted() {
    BoxBuilder box = new BoxBuilder();
    for (int days = 100; days > 0; days -= 8) {
      box.fished(daysAgo(days), INK, 60, 6, 1).fished(daysAgo(days), OLIVE, 60, 1, 1);
    }
    return Outlook.performance(box.book(), TODAY, Measure.TAKES);
  }

  private static Performance nothingIsTrusted() {
    return Outlook.performance(new BoxBuilder().book(), TODAY, Measure.TAKES);
  }

  private static Turn turn(int day, Plastic plastic, double hours, int takes) {
    LocalDate date = TODAY.plusDays(day);
    Fish fish = new Fish(0, takes, 0, 0);
    return new Turn(
        new Trip(date, ROCKS), plastic, Name.BLANK, Optional.empty(), 1, 60 * hours, fish, 0, 0);
  }

  private static TrustCalls called() {
    TrustCalls calls = new TrustCalls();
    calls.at(TODAY, inkIsTrusted(), List.of(INK.colour(), OLIVE.colour()));
    return calls;
  }

  /**
   * Day 1: 3 × 2/3 against 1 × 1/3; day 3: none against 2 × 2/4. In all 2 against 4/3. What was
   * fished on the day of the call, or alone, does not count.
   */
  @Test
  void trustedColourIsComparedWithWhatWasFishedBesideItLater() {
    List<Turn> turns =
        List.of(
            turn(0, INK, 1, 9),
            turn(0, OLIVE, 1, 0),
            turn(1, INK, 1, 3),
            turn(1, OLIVE, 2, 1),
            turn(2, INK, 1, 8),
            turn(3, INK, 2, 0),
            turn(3, OLIVE, 2, 2));
    Audit.Calls held = called().held(turns, inkIsTrusted());
    assertEquals(1, held.colours());
    assertEquals(1, held.compared());
    assertEquals(1, held.held());
    assertEquals(1, held.trustedNow());
    assertEquals(1.5, held.ratio().orElseThrow(), 1e-12);
  }

  @Test
  void colourThatFellBackDidNotHold() {
    List<Turn> turns = List.of(turn(1, INK, 1, 1), turn(1, OLIVE, 1, 1));
    Audit.Calls held = called().held(turns, nothingIsTrusted());
    assertEquals(1, held.compared());
    assertEquals(0, held.held(), "no better than the other");
    assertEquals(0, held.trustedNow());
    assertEquals(1, held.ratio().orElseThrow(), 1e-12);
  }

  @Test
  void withoutAnythingBesideItNothingCompares() {
    Audit.Calls held = called().held(List.of(turn(1, INK, 1, 4)), inkIsTrusted());
    assertEquals(1, held.colours());
    assertEquals(0, held.compared());
    assertEquals(OptionalDouble.empty(), held.ratio());
    List<Turn> blank = List.of(turn(1, INK, 1, 0), turn(1, OLIVE, 1, 0));
    assertEquals(0, called().held(blank, inkIsTrusted()).compared(), "nothing was caught");
    List<Turn> onlyInk = List.of(turn(1, INK, 1, 2), turn(1, OLIVE, 1, 0));
    assertEquals(1, called().held(onlyInk, inkIsTrusted()).held());
    assertEquals(OptionalDouble.empty(), called().held(onlyInk, inkIsTrusted()).ratio());
  }

  @Test
  void firstCallIsTheOneThatCounts() {
    TrustCalls calls = called();
    calls.at(TODAY.plusDays(5), inkIsTrusted(), List.of(INK.colour()));
    List<Turn> turns = List.of(turn(2, INK, 1, 4), turn(2, OLIVE, 1, 2));
    assertEquals(2, calls.held(turns, inkIsTrusted()).ratio().orElseThrow(), 1e-12);
  }
}

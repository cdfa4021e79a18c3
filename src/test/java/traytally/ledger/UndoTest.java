package traytally.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Stint;
import traytally.trip.Trip;

final class UndoTest {
  private static final Plastic PADDLE = Plastic.of("", "paddle", "motor oil", 75);

  private final Shelf shelf = new Shelf();

  private static LocalDate may(int day) {
    return LocalDate.of(2026, 5, day);
  }

  private Posting posting() {
    return new Posting(shelf.book().ledger(), shelf.book().recorded(Counted.class));
  }

  private long count(int day, int pieces) {
    Counted count = new Counted(PADDLE, may(day), pieces, true);
    Posting posting = posting();
    posting.count(count);
    return record(posting, List.of(count), List.of());
  }

  private long fish(int day, int lost) {
    return fish(shelf.nextStint(), day, lost, List.of());
  }

  private long fish(long number, int day, int lost, List<Recorded<Fished>> instead) {
    Stint stint =
        new Stint(
            new Trip(may(day), Name.BLANK),
            Name.BLANK,
            Optional.empty(),
            PADDLE,
            OptionalDouble.empty(),
            OptionalInt.empty(),
            Fish.NONE,
            lost,
            Optional.empty(),
            0,
            1,
            "");
    Fished fished = new Fished(stint, number, 1, "");
    Posting posting = posting();
    instead.forEach(old -> posting.takeBackStint(number, PADDLE, "edited"));
    posting.fish(fished);
    return record(posting, List.of(fished), List.copyOf(instead));
  }

  private long record(Posting posting, List<Fact> added, List<Recorded<? extends Fact>> withdrawn) {
    return shelf.record(
        new Entry("import", "list", OptionalLong.empty(), posting.movements(), added, withdrawn));
  }

  private Set<Long> blockers(long batch) {
    return shelf.undo(batch).blockers(shelf.book());
  }

  private int tray() {
    return shelf.book().ledger().stock(PADDLE, may(31)).count();
  }

  @Test
  void undoSaysWhatItUndoesAndReversesEachMovement() {
    long counted = count(5, 12);
    Entry entry = shelf.undo(counted).entry(shelf.book());
    assertEquals("undo", entry.command());
    assertEquals("undoes batch 1: list", entry.summary());
    assertEquals(OptionalLong.of(counted), entry.undoes());
    assertEquals(1, entry.movements().size());
    assertTrue(entry.movements().get(0).reverses());
    assertEquals(shelf.book().facts(), entry.withdrawn());
  }

  @Test
  void editOfAStintIsInTheWay() {
    long logged = fish(5, 2);
    long edited = fish(1, 5, 3, shelf.book().recorded(Fished.class));
    assertEquals(Set.of(edited), blockers(logged));
    assertThrows(IllegalStateException.class, () -> shelf.reverse(logged));
    shelf.reverse(edited);
    assertEquals(Set.of(), blockers(logged));
    shelf.reverse(logged);
    assertEquals(List.of(), shelf.book().facts());
  }

  @Test
  void stintsThatACountMadeHistoryAreInTheWay() {
    long counted = count(9, 10);
    long logged = fish(5, 2);
    assertEquals(Set.of(logged), blockers(counted));
    shelf.reverse(logged);
    shelf.reverse(counted);
    assertEquals(0, tray());
    assertEquals(Set.of(), shelf.book().plastics());
  }

  @Test
  void stintsThatUsedNothingAreNotInTheWay() {
    long counted = count(9, 10);
    fish(5, 0);
    assertEquals(Set.of(), blockers(counted));
  }

  @Test
  void stintsThatAnotherCountSawAreNotInTheWay() {
    long first = count(9, 10);
    fish(5, 2);
    long second = count(12, 8);
    assertEquals(Set.of(), blockers(first));
    assertEquals(Set.of(), blockers(second));
    shelf.reverse(first);
    assertEquals(8, tray());
  }

  @Test
  void redoIsInTheWayOfWhatItRestored() {
    long counted = count(9, 10);
    long undo = shelf.reverse(counted);
    long redo = shelf.reverse(undo);
    assertEquals(10, tray());
    assertEquals(Set.of(redo), blockers(counted));
    shelf.reverse(redo);
    assertEquals(0, tray());
    assertEquals(false, shelf.batches().get(0).stands());
  }

  @Test
  void batchUndoneAlreadyIsNotUndoneAgain() {
    long counted = count(9, 10);
    shelf.reverse(counted);
    assertThrows(IllegalStateException.class, () -> shelf.reverse(counted));
  }

  @Test
  void stintPutBackAfterItsCountWentMovesItsPieces() {
    long counted = count(9, 10);
    long logged = fish(5, 2);
    long gone = shelf.reverse(logged);
    shelf.reverse(counted);
    long back = shelf.reverse(gone);
    List<Movement> moved =
        shelf.book().ledger().movements().stream()
            .filter(m -> m.batch() == back)
            .map(Recorded::what)
            .toList();
    assertEquals(
        List.of(MovementKind.LOST, MovementKind.FOUND),
        moved.stream().map(Movement::kind).toList());
    assertEquals(0, tray());
  }

  @Test
  void whatAnotherUndoMovedForAStintGoesWithTheStint() {
    long counted = count(9, 10);
    long logged = fish(5, 2);
    long edited = fish(1, 10, 2, shelf.book().recorded(Fished.class));
    shelf.reverse(counted);
    // The stint is put back on its first day, and no count has seen that day any more.
    shelf.reverse(edited);
    assertEquals(-2, lost());
    shelf.reverse(logged);
    assertEquals(0, lost());
    assertEquals(0, tray());
  }

  private int lost() {
    return shelf.book().ledger().movements().stream()
        .map(Recorded::what)
        .filter(m -> m.kind() == MovementKind.LOST)
        .mapToInt(Movement::pieces)
        .sum();
  }
}

package traytally.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * Random histories of counts, stints, purchases, edits and undos against a plain retelling.
 *
 * <p>The retelling knows nothing of movements, reversals or finds: it keeps the list of what was
 * told and stands, and works out each tray from it. "Reality wins" is its one rule: the last count,
 * then what happened after it, and nothing below zero.
 */
final class LedgerPropertyTest {
  private static final LocalDate START = LocalDate.of(2026, 3, 1);
  private static final int DAYS = 12;
  private static final List<Plastic> PLASTICS =
      List.of(
          Plastic.of("", "paddle", "motor oil", 75),
          Plastic.of("", "paddle", "white", 75),
          Plastic.of("Plimwick", "worm", "black", 120));

  /**
   * One thing told.
   *
   * @param order when it was told first; an edit does not change it
   * @param count pieces seen, if it is a count; else {@code moved} says what came or went
   */
  private record Told(
      long batch, long order, Plastic plastic, LocalDate date, OptionalInt count, int moved) {}

  /** What stood before each batch was recorded, so that an undo can be told by its consequences. */
  private static final class Retelling {
    final Map<Long, List<Told>> adds = new HashMap<>();
    final Map<Long, List<Told>> drops = new HashMap<>();
    final List<Told> standing = new ArrayList<>();

    void tell(long batch, List<Told> added, List<Told> dropped) {
      adds.put(batch, added);
      drops.put(batch, dropped);
      standing.removeAll(dropped);
      standing.addAll(added);
    }

    void undo(long undo, long batch) {
      tell(undo, drops.getOrDefault(batch, List.of()), adds.getOrDefault(batch, List.of()));
    }

    int tray(Plastic plastic, LocalDate asOf) {
      List<Told> mine = standing.stream().filter(t -> t.plastic().equals(plastic)).toList();
      Optional<Told> last = lastCount(mine);
      int held = last.isPresent() ? last.get().count().getAsInt() : 0;
      TreeMap<LocalDate, Integer> days = new TreeMap<>();
      for (Told told : mine) {
        if (told.count().isEmpty() && last.filter(c -> sees(c, told)).isEmpty()) {
          days.merge(told.date(), told.moved(), Integer::sum);
        }
      }
      for (int moved : days.headMap(asOf, true).values()) {
        held = Math.max(0, held + moved);
      }
      return held;
    }

    private static boolean sees(Told count, Told other) {
      return other.date().isBefore(count.date())
          || (other.date().equals(count.date()) && other.order() <= count.order());
    }

    Optional<Told> lastCount(List<Told> told) {
      Optional<Told> last = Optional.empty();
      for (Told each : told) {
        if (each.count().isPresent()
            && (last.isEmpty()
                || each.date().isAfter(last.get().date())
                || (each.date().equals(last.get().date()) && each.order() > last.get().order()))) {
          last = Optional.of(each);
        }
      }
      return last;
    }
  }

  private static final class History {
    final Random random;
    final Shelf shelf = new Shelf();
    final Retelling retelling = new Retelling();
    final Map<Long, Told> stints = new HashMap<>();
    final StringBuilder tale = new StringBuilder();

    History(long seed) {
      random = new Random(seed);
    }

    void step() {
      switch (random.nextInt(10)) {
        case 0, 1 -> count();
        case 2, 3, 4 -> fish();
        case 5 -> buy();
        case 6 -> lose();
        case 7 -> edit();
        default -> undo();
      }
    }

    private Plastic plastic() {
      return PLASTICS.get(random.nextInt(PLASTICS.size()));
    }

    private LocalDate date() {
      return START.plusDays(random.nextInt(DAYS));
    }

    private Posting posting() {
      Book book = shelf.book();
      return new Posting(book.ledger(), book.recorded(Counted.class));
    }

    private long record(
        String what, Posting posting, List<Fact> added, List<Recorded<? extends Fact>> gone) {
      long batch =
          shelf.record(
              new Entry(what, what, OptionalLong.empty(), posting.movements(), added, gone));
      tale.append(batch).append(": ").append(what).append('\n');
      return batch;
    }

    private void count() {
      Counted count = new Counted(plastic(), date(), random.nextInt(12), true);
      Posting posting = posting();
      posting.count(count);
      long batch = record(count.toString(), posting, List.of(count), List.of());
      Told told =
          new Told(batch, batch, count.plastic(), count.date(), OptionalInt.of(count.pieces()), 0);
      // A count told after a later-dated one is history, and stays so while that one stands.
      retelling.tell(batch, List.of(told), List.of());
    }

    private void fish() {
      Fished fished = fished(shelf.nextStint());
      Posting posting = posting();
      posting.fish(fished);
      long batch = record(words(fished), posting, List.of(fished), List.of());
      Told told = told(batch, batch, fished);
      stints.put(fished.number(), told);
      retelling.tell(batch, List.of(told), List.of());
    }

    private Fished fished(long number) {
      int lost = random.nextInt(4);
      int worn = random.nextInt(2);
      Stint stint =
          new Stint(
              new Trip(date(), Name.of("Gannet Ledge")),
              Name.of("pollack"),
              Optional.empty(),
              plastic(),
              OptionalDouble.of(30),
              OptionalInt.empty(),
              Fish.NONE,
              lost,
              Optional.empty(),
              worn,
              1,
              "");
      return new Fished(stint, number, 1, "");
    }

    private static String words(Fished fished) {
      Stint stint = fished.stint();
      return "stint "
          + fished.number()
          + ", "
          + stint.trip().date()
          + ", "
          + stint.plastic()
          + ", used "
          + stint.use();
    }

    private static Told told(long batch, long order, Fished fished) {
      Stint stint = fished.stint();
      return new Told(
          batch, order, stint.plastic(), stint.trip().date(), OptionalInt.empty(), -stint.use());
    }

    private void buy() {
      move(Movement.of(date(), MovementKind.BOUGHT, plastic(), 1 + random.nextInt(8)));
    }

    private void lose() {
      move(Movement.of(date(), MovementKind.LOST, plastic(), -1 - random.nextInt(3)));
    }

    private void move(Movement movement) {
      Posting posting = posting();
      posting.post(movement);
      long batch = record(movement.toString(), posting, List.of(), List.of());
      retelling.tell(
          batch,
          List.of(
              new Told(
                  batch,
                  batch,
                  movement.plastic(),
                  movement.date(),
                  OptionalInt.empty(),
                  movement.pieces())),
          List.of());
    }

    private void edit() {
      List<Recorded<Fished>> log = shelf.book().recorded(Fished.class);
      if (log.isEmpty()) {
        return;
      }
      Recorded<Fished> before = log.get(random.nextInt(log.size()));
      Fished after = fished(before.what().number());
      if (isUntraceable(before.what().number())) {
        return;
      }
      Posting posting = posting();
      posting.takeBackStint(before.what().number(), before.what().stint().plastic(), "edited");
      posting.fish(after);
      long batch = record("edit: " + words(after), posting, List.of(after), List.of(before));
      Told old =
          retelling.standing.stream()
              .filter(t -> t.batch() == before.batch() && t.count().isEmpty())
              .findFirst()
              .orElseThrow();
      retelling.tell(batch, List.of(told(batch, old.order(), after)), List.of(old));
    }

    /**
     * Whether the ledger does not know when a stint was first told, because it never moved a piece.
     * An edit of it then counts as told at the edit, which matters on a count's own day only.
     */
    private boolean isUntraceable(long number) {
      return shelf.book().ledger().ofStint(number).isEmpty();
    }

    private void undo() {
      List<Batch> standing = shelf.batches().stream().filter(Batch::stands).toList();
      if (standing.isEmpty()) {
        return;
      }
      Batch batch = standing.get(random.nextInt(standing.size()));
      Undo undo = shelf.undo(batch.id());
      if (!undo.blockers(shelf.book()).isEmpty()) {
        return;
      }
      long reversal = shelf.reverse(batch.id());
      tale.append(reversal).append(": undo ").append(batch.id()).append('\n');
      retelling.undo(reversal, batch.id());
    }

    void compare() {
      Ledger ledger = shelf.book().ledger();
      for (Plastic plastic : PLASTICS) {
        List<Told> mine =
            retelling.standing.stream().filter(t -> t.plastic().equals(plastic)).toList();
        LocalDate from = retelling.lastCount(mine).map(Told::date).orElse(START);
        for (LocalDate day = START; day.isBefore(START.plusDays(DAYS)); day = day.plusDays(1)) {
          LocalDate asOf = day;
          int held = ledger.stock(plastic, day).count();
          if (!day.isBefore(from)) {
            assertEquals(
                retelling.tray(plastic, day), held, () -> plastic + " on " + asOf + "\n" + tale);
          }
        }
      }
    }
  }

  @Test
  void trayIsTheLastCountAndWhatHappenedSinceHoweverItWasTold() {
    for (long seed = 1; seed <= 300; seed++) {
      History history = new History(seed);
      for (int step = 0; step < 50; step++) {
        history.step();
        history.compare();
      }
    }
  }

  @Test
  void undoAndUndoOfThatLeaveTheBookAsItWas() {
    int tried = 0;
    for (long seed = 1001; seed <= 1060; seed++) {
      History history = new History(seed);
      for (int step = 0; step < 30; step++) {
        history.step();
      }
      Shelf shelf = history.shelf;
      for (Batch batch : shelf.batches()) {
        if (batch.stands() && shelf.undo(batch.id()).blockers(shelf.book()).isEmpty()) {
          Book before = shelf.book();
          shelf.reverse(shelf.reverse(batch.id()));
          assertSame(before, shelf.book(), history.tale + "redo of " + batch.id());
          tried++;
        }
      }
    }
    assertTrue(tried > 300, "too few undos: " + tried);
  }

  private static void assertSame(Book before, Book after, String tale) {
    assertEquals(before.facts(), after.facts(), tale);
    assertEquals(before.plastics(), after.plastics(), tale);
    Set<Plastic> all = new HashSet<>(PLASTICS);
    for (Plastic plastic : all) {
      for (LocalDate day = START; day.isBefore(START.plusDays(DAYS)); day = day.plusDays(1)) {
        assertEquals(before.ledger().stock(plastic, day), after.ledger().stock(plastic, day), tale);
      }
    }
  }

  @Test
  void undoingEverythingEmptiesTheBox() {
    for (long seed = 2001; seed <= 2060; seed++) {
      History history = new History(seed);
      for (int step = 0; step < 40; step++) {
        history.step();
      }
      Shelf shelf = history.shelf;
      for (int round = 0; round < 200 && !shelf.book().plastics().isEmpty(); round++) {
        shelf.reverse(newestToUndo(shelf, history.tale));
      }
      assertEquals(Set.of(), shelf.book().plastics(), history.tale::toString);
      for (Plastic plastic : PLASTICS) {
        assertEquals(
            0,
            shelf.book().ledger().stock(plastic, START.plusDays(DAYS)).count(),
            history.tale::toString);
      }
    }
  }

  private static long newestToUndo(Shelf shelf, CharSequence tale) {
    List<Batch> batches = shelf.batches();
    Book book = shelf.book();
    for (int i = batches.size() - 1; i >= 0; i--) {
      Batch batch = batches.get(i);
      if (batch.stands()
          && (batch.undoes().isEmpty() || isRedo(shelf, batch))
          && shelf.undo(batch.id()).blockers(book).isEmpty()) {
        return batch.id();
      }
    }
    throw new AssertionError("nothing can be undone:\n" + tale);
  }

  /** Whether a batch makes something told stand again. */
  private static boolean isRedo(Shelf shelf, Batch batch) {
    int depth = 0;
    Batch each = batch;
    while (each.undoes().isPresent()) {
      each = shelf.batches().get((int) each.undoes().getAsLong() - 1);
      depth++;
    }
    return depth % 2 == 0;
  }
}

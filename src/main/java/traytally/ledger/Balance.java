package traytally.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import traytally.ledger.Fact.Counted;
import traytally.plastic.Plastic;

/**
 * What the counts and movements of one plastic come to, day by day.
 *
 * <p>Recounts and what must have been found are worked out afresh from what was told, in the order
 * of the dates, so that the result never depends on the order in which things were undone or
 * edited.
 */
final class Balance {
  /** When something posted now is told: after all that stands. */
  static final long NOW = Long.MAX_VALUE;

  private enum Sort {
    /** The difference a count showed. */
    RECOUNTED,
    /** What the log used beyond what the book held. */
    SHORT,
    /** Bought, lost, worn, given, found. */
    TOLD
  }

  private record Move(Sort sort, long told, int pieces) {}

  /**
   * One day, settled.
   *
   * @param held pieces at its end
   * @param recount pieces to recount that the ledger does not have yet, signed
   * @param found pieces to find that the ledger does not have yet, signed
   */
  private record Day(int held, int recount, int found) {}

  private final Plastic plastic;
  private final NavigableMap<LocalDate, List<Move>> moves = new TreeMap<>();
  private final NavigableMap<LocalDate, Recorded<Counted>> counts = new TreeMap<>();
  private Optional<LocalDate> firstCount = Optional.empty();

  Balance(Plastic plastic, Ledger ledger, List<Recorded<Counted>> told) {
    this.plastic = plastic;
    told.stream()
        .sorted(
            Comparator.<Recorded<Counted>>comparingLong(Recorded::batch)
                .thenComparingLong(Recorded::id))
        .forEach(this::count);
    firstCount = Optional.empty();
    ledger.movements(plastic).forEach(m -> move(m.what(), ledger.told(m)));
  }

  void move(Movement movement, long told) {
    Sort sort =
        movement.isShortage() ? Sort.SHORT : movement.isWorkedOut() ? Sort.RECOUNTED : Sort.TOLD;
    List<Move> day = moves.computeIfAbsent(movement.date(), d -> new ArrayList<>(1));
    int last = day.size() - 1;
    if (last >= 0 && day.get(last).sort() == sort && day.get(last).told() == told) {
      // Only their sum counts, and a long log moves one plastic many times a day.
      day.set(last, new Move(sort, told, Math.addExact(day.get(last).pieces(), movement.pieces())));
    } else {
      day.add(new Move(sort, told, movement.pieces()));
    }
  }

  /** Takes a count in, unless one told before it is dated after it: then it is history. */
  void count(Recorded<Counted> count) {
    LocalDate date = count.what().date();
    if (counts.isEmpty()) {
      firstCount = Optional.of(date);
    }
    if (counts.isEmpty() || !counts.lastKey().isAfter(date)) {
      counts.put(date, count);
    }
  }

  Optional<LocalDate> counted() {
    return counts.isEmpty() ? Optional.empty() : Optional.of(counts.lastKey());
  }

  /** Whether a count has seen what was told by batch {@code told} to have happened on a date. */
  boolean isSeen(LocalDate date, long told) {
    if (counts.isEmpty()) {
      return false;
    }
    Recorded<Counted> last = counts.lastEntry().getValue();
    int order = last.what().date().compareTo(date);
    return order > 0 || (order == 0 && told <= last.batch());
  }

  /** Pieces at the end of {@code date}. */
  int at(LocalDate date) {
    Map.Entry<LocalDate, Day> day = settled().floorEntry(date);
    return day == null ? 0 : day.getValue().held();
  }

  /** The recounts and finds that are due beside what the ledger has and what was posted. */
  List<Movement> due() {
    List<Movement> due = new ArrayList<>();
    settled()
        .forEach(
            (date, day) -> {
              if (day.recount() != 0) {
                due.add(recount(date, day.recount()));
              }
              if (day.found() != 0) {
                due.add(Movement.shortage(date, plastic, day.found()));
              }
            });
    return due;
  }

  private Movement recount(LocalDate date, int pieces) {
    Recorded<Counted> count = counts.get(date);
    if (count == null) {
      return Movement.of(date, MovementKind.RECOUNT, plastic, pieces)
          .withNote("the count of " + date + " was taken back");
    }
    if (count.batch() != NOW) {
      return Movement.of(date, MovementKind.RECOUNT, plastic, pieces)
          .withNote("keeps the count of " + date);
    }
    boolean opens = firstCount.isPresent() && firstCount.get().equals(date) && pieces > 0;
    return Movement.of(date, opens ? MovementKind.OPENING : MovementKind.RECOUNT, plastic, pieces);
  }

  private NavigableMap<LocalDate, Day> settled() {
    NavigableMap<LocalDate, Day> days = new TreeMap<>();
    SortedSet<LocalDate> dates = new TreeSet<>(moves.keySet());
    dates.addAll(counts.keySet());
    int held = 0;
    for (LocalDate date : dates) {
      List<Move> moved = moves.getOrDefault(date, List.of());
      Recorded<Counted> count = counts.get(date);
      Day day = count == null ? uncounted(held, moved) : counted(held, moved, count);
      days.put(date, day);
      held = day.held();
    }
    return days;
  }

  /** A day without a count: what moved, and nothing below zero. */
  private static Day uncounted(int before, List<Move> moved) {
    int end = before + sum(moved, Sort.TOLD, 0, NOW);
    int found = Math.max(0, -end);
    return new Day(
        end + found, -sum(moved, Sort.RECOUNTED, 0, NOW), found - sum(moved, Sort.SHORT, 0, NOW));
  }

  /** A day with a count: what it saw, and what was told later, and nothing below zero. */
  private static Day counted(int before, List<Move> moved, Recorded<Counted> count) {
    // What had been found by then is left as it is: the count has its own word for it.
    int foundBefore = sum(moved, Sort.SHORT, 0, count.batch());
    int unseen = count.batch() == NOW ? 0 : sum(moved, Sort.TOLD, count.batch() + 1, NOW);
    int end = count.what().pieces() + unseen;
    int found = foundBefore + Math.max(0, -end);
    int recount = end - (before + sum(moved, Sort.TOLD, 0, NOW) + foundBefore);
    return new Day(
        Math.max(0, end),
        recount - sum(moved, Sort.RECOUNTED, 0, NOW),
        found - sum(moved, Sort.SHORT, 0, NOW));
  }

  /** Pieces of one sort told from one batch to another, both included. */
  private static int sum(List<Move> moved, Sort sort, long from, long to) {
    int sum = 0;
    for (Move move : moved) {
      if (move.sort() == sort && move.told() >= from && move.told() <= to) {
        sum = Math.addExact(sum, move.pieces());
      }
    }
    return sum;
  }
}

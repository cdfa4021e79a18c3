package traytally.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.SortedSet;
import java.util.TreeSet;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;

/**
 * The reversal of one batch: its movements taken back, its facts withdrawn, and what it had
 * withdrawn put back.
 *
 * @param batch the batch to reverse, still standing
 * @param withdrew the facts it withdrew
 * @param overriddenBy the batches that have since withdrawn facts of its own
 */
public record Undo(Batch batch, List<Fact> withdrew, SortedSet<Long> overriddenBy) {
  public Undo {
    withdrew = List.copyOf(withdrew);
  }

  /**
   * The standing batches that must be undone first: they changed what this batch recorded, or were
   * worked out against a count of it. Empty if it can be undone now.
   */
  public SortedSet<Long> blockers(Book book) {
    SortedSet<Long> blockers = new TreeSet<>();
    SortedSet<Long> standing = new TreeSet<>();
    book.batches().stream().filter(Batch::stands).forEach(b -> standing.add(b.id()));
    blockers.addAll(overriddenBy);
    for (Recorded<Counted> count : book.recorded(Counted.class)) {
      if (count.batch() == batch.id()) {
        blockers.addAll(readAgainst(count.what(), book));
      }
    }
    blockers.retainAll(standing);
    return blockers;
  }

  /** Later batches whose stints the count turned into history, or that kept the count's word. */
  private SortedSet<Long> readAgainst(Counted count, Book book) {
    SortedSet<Long> later = new TreeSet<>();
    for (Recorded<Fished> fished : book.recorded(Fished.class)) {
      if (fished.batch() > batch.id()
          && fished.what().stint().plastic().equals(count.plastic())
          && fished.what().stint().trip().date().isBefore(count.date())) {
        later.add(fished.batch());
      }
    }
    SortedSet<Long> counting = new TreeSet<>();
    for (Recorded<Counted> other : book.recorded(Counted.class)) {
      if (other.what().plastic().equals(count.plastic())) {
        counting.add(other.batch());
      }
    }
    for (Recorded<Movement> movement : book.ledger().movements(count.plastic())) {
      if (movement.batch() > batch.id()
          && movement.what().kind() == MovementKind.RECOUNT
          && !movement.what().reverses()
          && movement.what().date().equals(count.date())
          && !counting.contains(movement.batch())) {
        later.add(movement.batch());
      }
    }
    return later;
  }

  /**
   * What to record for the reversal.
   *
   * @throws IllegalStateException if other batches must be undone first
   */
  public Entry entry(Book book) {
    if (!blockers(book).isEmpty()) {
      throw new IllegalStateException("batches in the way: " + blockers(book));
    }
    List<Recorded<? extends Fact>> added =
        book.facts().stream()
            .<Recorded<? extends Fact>>map(fact -> fact)
            .filter(fact -> fact.batch() == batch.id())
            .toList();
    List<Recorded<Counted>> counts =
        book.recorded(Counted.class).stream().filter(c -> c.batch() != batch.id()).toList();
    Posting posting = new Posting(book.ledger(), counts);
    List<Recorded<Movement>> moved =
        new ArrayList<>(
            book.ledger().movements().stream().filter(m -> m.batch() == batch.id()).toList());
    String why = "undoes batch " + batch.id();
    moved.forEach(movement -> posting.takeBack(movement, why));
    return new Entry(
        "undo",
        why + ": " + batch.summary(),
        OptionalLong.of(batch.id()),
        posting.movements(),
        withdrew,
        added);
  }
}

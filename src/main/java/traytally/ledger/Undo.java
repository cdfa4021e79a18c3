package traytally.ledger;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.NavigableSet;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;
import traytally.plastic.Plastic;

/**
 * The reversal of one batch: its movements taken back, the facts it added or put back withdrawn,
 * and what it had withdrawn put back. The reversal of a reversal makes the first batch stand again.
 *
 * @param batch the batch to reverse, still standing
 * @param added the facts it added or put back, and that stand
 * @param withdrew the facts it withdrew, each with the batch that first added it
 * @param overriddenBy the batches that have since withdrawn facts of its own
 */
public record Undo(
    Batch batch,
    List<Recorded<? extends Fact>> added,
    List<Recorded<? extends Fact>> withdrew,
    SortedSet<Long> overriddenBy) {
  public Undo {
    added = List.copyOf(added);
    withdrew = List.copyOf(withdrew);
  }

  /**
   * The standing batches that must be undone first: they changed what this batch recorded, made it
   * stand again, or told of stints that a count of it turned into history. Empty if it can be
   * undone now.
   */
  public SortedSet<Long> blockers(Book book) {
    NavigableSet<Long> blockers = new TreeSet<>(overriddenBy);
    for (Batch other : book.batches()) {
      if (other.undoes().isPresent() && other.undoes().getAsLong() == batch.id()) {
        other.undoneBy().ifPresent(blockers::add);
      }
    }
    blockers.addAll(historians(book));
    Set<Long> standing = new HashSet<>();
    book.batches().stream().filter(Batch::stands).forEach(b -> standing.add(b.id()));
    blockers.retainAll(standing);
    return blockers;
  }

  /** Batches with stints that moved nothing, and would have to without the counts of this one. */
  private NavigableSet<Long> historians(Book book) {
    NavigableSet<Long> told = new TreeSet<>();
    Set<Recorded<? extends Fact>> own = new HashSet<>(added);
    Set<Plastic> uncounted = new HashSet<>();
    counts(added.stream()).forEach(count -> uncounted.add(count.what().plastic()));
    if (uncounted.isEmpty()) {
      return told;
    }
    Posting after = new Posting(book.ledger(), remaining(book));
    for (Recorded<Fished> fished : book.recorded(Fished.class)) {
      if (uncounted.contains(fished.what().stint().plastic())
          && !own.contains(fished)
          && after.isOwed(fished.what())) {
        told.add(fished.batch());
      }
    }
    return told;
  }

  /** The counts that stand after the reversal. */
  private List<Recorded<Counted>> remaining(Book book) {
    Set<Recorded<? extends Fact>> gone = new HashSet<>(added);
    List<Recorded<Counted>> remaining = new ArrayList<>(book.recorded(Counted.class));
    remaining.removeIf(gone::contains);
    remaining.addAll(counts(withdrew.stream()));
    return remaining;
  }

  private static List<Recorded<Counted>> counts(Stream<Recorded<? extends Fact>> facts) {
    return facts
        .filter(fact -> fact.what() instanceof Counted)
        .map(fact -> new Recorded<>(fact.id(), fact.batch(), (Counted) fact.what()))
        .toList();
  }

  /**
   * What to record for the reversal.
   *
   * @throws IllegalStateException if it was undone already, or other batches must be undone first
   */
  public Entry entry(Book book) {
    if (!batch.stands()) {
      throw new IllegalStateException("batch " + batch.id() + " was undone already");
    }
    if (!blockers(book).isEmpty()) {
      throw new IllegalStateException("batches in the way: " + blockers(book));
    }
    String why = "undoes batch " + batch.id();
    return new Entry(
        "undo",
        why + ": " + batch.summary(),
        OptionalLong.of(batch.id()),
        movements(book, why),
        withdrew.stream().<Fact>map(Recorded::what).toList(),
        added);
  }

  private List<Movement> movements(Book book, String why) {
    Posting posting = new Posting(book.ledger(), remaining(book));
    for (Recorded<Movement> movement : book.ledger().movements()) {
      if (movement.batch() == batch.id()) {
        posting.takeBack(movement, why);
      }
    }
    Set<Long> numbers = new HashSet<>();
    for (Recorded<? extends Fact> fact : withdrew) {
      if (fact.what() instanceof Fished fished) {
        numbers.add(fished.number());
      }
    }
    // What another batch moved for these stints, because counts came or went in between. An edit
    // moves only what its own stint does.
    for (Recorded<? extends Fact> fact : added) {
      if (fact.what() instanceof Fished fished && !numbers.contains(fished.number())) {
        posting.takeBackStint(fished.number(), fished.stint().plastic(), why);
      }
    }
    for (Recorded<? extends Fact> fact : withdrew) {
      if (fact.what() instanceof Fished fished && posting.isOwed(fished)) {
        posting.fish(fished);
      }
    }
    Stream.concat(counts(added.stream()).stream(), counts(withdrew.stream()).stream())
        .forEach(count -> posting.resettle(count.what().plastic()));
    return posting.movements();
  }
}

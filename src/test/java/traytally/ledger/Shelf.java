package traytally.ledger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedSet;
import java.util.TreeSet;
import traytally.ledger.Fact.Fished;

/** A box kept in memory, so that a thousand histories can be tried without a file. */
final class Shelf {
  private static final class Row {
    final Recorded<Fact> fact;
    final List<Long> putBackBy = new ArrayList<>();
    OptionalLong withdrawnBy = OptionalLong.empty();

    Row(Recorded<Fact> fact) {
      this.fact = fact;
    }
  }

  private final List<Entry> entries = new ArrayList<>();
  private final List<Recorded<Movement>> movements = new ArrayList<>();
  private final List<Row> rows = new ArrayList<>();

  long record(Entry entry) {
    entries.add(entry);
    long batch = entries.size();
    for (Movement movement : entry.movements()) {
      movements.add(new Recorded<>(movements.size() + 1, batch, movement));
    }
    for (Fact fact : entry.added()) {
      Optional<Row> gone =
          rows.stream()
              .filter(r -> entry.undoes().isPresent() && r.withdrawnBy.equals(entry.undoes()))
              .filter(r -> r.fact.what().equals(fact))
              .findFirst();
      if (gone.isPresent()) {
        gone.get().withdrawnBy = OptionalLong.empty();
        gone.get().putBackBy.add(batch);
      } else {
        rows.add(new Row(new Recorded<>(rows.size() + 1, batch, fact)));
      }
    }
    for (Recorded<? extends Fact> fact : entry.withdrawn()) {
      Row row = rows.get((int) fact.id() - 1);
      if (row.withdrawnBy.isPresent()) {
        throw new IllegalStateException("withdrawn twice: " + fact);
      }
      row.withdrawnBy = OptionalLong.of(batch);
    }
    return batch;
  }

  Book book() {
    List<Recorded<? extends Fact>> standing = new ArrayList<>();
    rows.stream().filter(r -> r.withdrawnBy.isEmpty()).forEach(r -> standing.add(r.fact));
    return new Book(
        batches(), new Ledger(movements, batches()), standing, Settings.standard(), 1_000_000);
  }

  List<Batch> batches() {
    Map<Long, Long> undoneBy = new HashMap<>();
    List<Batch> batches = new ArrayList<>();
    // A batch is undone while an undo of it stands; an undo is always the later of the two.
    for (long id = entries.size(); id >= 1; id--) {
      Entry entry = entries.get((int) id - 1);
      Long by = undoneBy.get(id);
      if (by == null && entry.undoes().isPresent()) {
        undoneBy.put(entry.undoes().getAsLong(), id);
      }
      batches.add(
          new Batch(
              id,
              Instant.EPOCH,
              entry.command(),
              entry.summary(),
              entry.undoes(),
              by == null ? OptionalLong.empty() : OptionalLong.of(by)));
    }
    batches.sort(Comparator.comparingLong(Batch::id));
    return batches;
  }

  Undo undo(long batch) {
    List<Recorded<? extends Fact>> added = new ArrayList<>();
    List<Recorded<? extends Fact>> withdrew = new ArrayList<>();
    SortedSet<Long> overriddenBy = new TreeSet<>();
    for (Row row : rows) {
      boolean own = row.fact.batch() == batch || row.putBackBy.contains(batch);
      if (own && row.withdrawnBy.isEmpty()) {
        added.add(row.fact);
      } else if (own) {
        overriddenBy.add(row.withdrawnBy.getAsLong());
      }
      if (row.withdrawnBy.isPresent() && row.withdrawnBy.getAsLong() == batch) {
        withdrew.add(row.fact);
      }
    }
    return new Undo(batches().get((int) batch - 1), added, withdrew, overriddenBy);
  }

  /** Undoes one batch. */
  long reverse(long batch) {
    return record(undo(batch).entry(book()));
  }

  long nextStint() {
    return rows.stream()
            .map(r -> r.fact.what())
            .filter(Fished.class::isInstance)
            .mapToLong(f -> ((Fished) f).number())
            .max()
            .orElse(0)
        + 1;
  }
}

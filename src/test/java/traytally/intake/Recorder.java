package traytally.intake;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.Recorded;
import traytally.ledger.Settings;

/** A book kept in memory: records one entry after another, as the store does. */
final class Recorder {
  private final List<Batch> batches = new ArrayList<>();
  private final List<Recorded<Movement>> movements = new ArrayList<>();
  private final List<Recorded<? extends Fact>> facts = new ArrayList<>();
  private long lastFact;
  private long nextStint = 1;

  Book book() {
    return new Book(batches, new Ledger(movements), facts, new Settings(Map.of()), nextStint);
  }

  void record(Entry entry) {
    long batch = batches.size() + 1L;
    batches.add(
        new Batch(
            batch,
            Instant.EPOCH,
            entry.command(),
            entry.summary(),
            OptionalLong.empty(),
            OptionalLong.empty()));
    for (Movement movement : entry.movements()) {
      movements.add(new Recorded<>(movements.size() + 1L, batch, movement));
    }
    facts.removeAll(entry.withdrawn());
    for (Fact fact : entry.added()) {
      facts.add(new Recorded<>(++lastFact, batch, fact));
      if (fact instanceof Fact.Fished fished) {
        nextStint = Math.max(nextStint, fished.number() + 1);
      }
    }
  }
}

package traytally.intake;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Recorded;
import traytally.plastic.Plastic;

/** New purchases out of a box list; each movement's note names the list it came from. */
final class Purchases {
  private final Book book;
  private final String source;

  Purchases(Book book, String source) {
    this.book = book;
    this.source = source;
  }

  /**
   * The standing batch that added exactly these {@code pieces} from this list, if one did.
   *
   * @param pieces by plastic, none of them 0
   */
  Optional<Batch> addedBefore(Map<Plastic, Integer> pieces) {
    Map<Long, Map<Plastic, Integer>> byBatch = new HashMap<>();
    for (Recorded<Movement> movement : book.ledger().movements()) {
      if (movement.what().kind() == MovementKind.BOUGHT
          && !movement.what().reverses()
          && movement.what().note().equals(source)) {
        byBatch
            .computeIfAbsent(movement.batch(), b -> new HashMap<>())
            .merge(movement.what().plastic(), movement.what().pieces(), Integer::sum);
      }
    }
    return book.batches().stream()
        .filter(Batch::stands)
        .filter(batch -> pieces.equals(byBatch.get(batch.id())))
        .findFirst();
  }

  void apply(Map<Plastic, Integer> pieces, LocalDate date, Changes changes) {
    pieces.forEach(
        (plastic, count) ->
            changes.buy(Movement.of(date, MovementKind.BOUGHT, plastic, count).withNote(source)));
    changes.summarise(source, pieces.size(), "plastic", "bought");
  }
}

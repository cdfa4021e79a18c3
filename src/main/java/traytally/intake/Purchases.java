package traytally.intake;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
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

  /** The purchases of a list that were not added before; what was is said in {@code notices}. */
  Map<Plastic, Integer> unadded(Map<Plastic, Integer> pieces, List<String> notices) {
    Optional<Batch> before = addedBefore(pieces);
    if (before.isPresent()) {
      notices.add(
          source
              + ": batch "
              + before.get().id()
              + " has added exactly these purchases. Pass --again to add them once more.");
      return Map.of();
    }
    Map<Plastic, Integer> fresh = since(pieces);
    int all = pieces.values().stream().mapToInt(n -> n).sum();
    int now = fresh.values().stream().mapToInt(n -> n).sum();
    if (now < all) {
      notices.add(
          source
              + ": "
              + (all - now)
              + " of its "
              + all
              + " pieces were added before"
              + (now == 0 ? "." : "; only the other " + now + " were added now.")
              + " Pass --again to add all of them.");
    }
    return fresh;
  }

  /**
   * The standing batch that added exactly these {@code pieces} from this list, if one did.
   *
   * @param pieces by plastic, none of them 0
   */
  private Optional<Batch> addedBefore(Map<Plastic, Integer> pieces) {
    Map<Long, Map<Plastic, Integer>> byBatch = byBatch();
    return book.batches().stream()
        .filter(batch -> pieces.equals(byBatch.get(batch.id())))
        .findFirst();
  }

  /**
   * The pieces of a list that has grown or was mended since it was last added: those not yet added.
   *
   * @throws ListRefusedException if it no longer holds what was added, but some of it
   */
  private Map<Plastic, Integer> since(Map<Plastic, Integer> pieces) {
    Map<Plastic, Integer> before = new TreeMap<>();
    byBatch().values().forEach(m -> m.forEach((p, n) -> before.merge(p, n, Integer::sum)));
    if (before.keySet().stream().noneMatch(pieces::containsKey)) {
      return pieces;
    }
    before.forEach(
        (plastic, added) -> {
          int now = pieces.getOrDefault(plastic, 0);
          if (now < added) {
            throw new ListRefusedException(
                source
                    + ": "
                    + added
                    + " pieces of "
                    + plastic
                    + " were added from this list before, and it holds "
                    + now
                    + " now. Pass --again if all of it is new; else undo the earlier import and add"
                    + " the list anew.");
          }
        });
    Map<Plastic, Integer> left = new LinkedHashMap<>();
    pieces.forEach(
        (plastic, now) -> {
          int more = now - before.getOrDefault(plastic, 0);
          if (more > 0) {
            left.put(plastic, more);
          }
        });
    return left;
  }

  /** What each standing batch added from this list. */
  private Map<Long, Map<Plastic, Integer>> byBatch() {
    Set<Long> standing =
        book.batches().stream().filter(Batch::stands).map(Batch::id).collect(Collectors.toSet());
    Map<Long, Map<Plastic, Integer>> byBatch = new HashMap<>();
    for (Recorded<Movement> movement : book.ledger().movements()) {
      if (standing.contains(movement.batch())
          && movement.what().kind() == MovementKind.BOUGHT
          && !movement.what().reverses()
          && movement.what().note().equals(source)) {
        byBatch
            .computeIfAbsent(movement.batch(), b -> new HashMap<>())
            .merge(movement.what().plastic(), movement.what().pieces(), Integer::sum);
      }
    }
    return byBatch;
  }

  void apply(Map<Plastic, Integer> pieces, LocalDate date, Changes changes) {
    pieces.forEach(
        (plastic, count) ->
            changes.buy(Movement.of(date, MovementKind.BOUGHT, plastic, count).withNote(source)));
    changes.summarise(source, pieces.size(), "plastic", "bought");
  }
}

package traytally.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;

/** Every movement of a box, in the order recorded, and what they sum to. */
public final class Ledger {
  private final List<Recorded<Movement>> movements;
  // Both made when first asked for: a listing of a long ledger never asks.
  private final Map<Plastic, List<Recorded<Movement>>> byPlastic = new HashMap<>();
  private final Map<Long, List<Recorded<Movement>>> byStint = new HashMap<>();
  private final Map<Long, Long> undoes = new HashMap<>();

  /** The ledger of a box in which nothing was ever undone. */
  public Ledger(List<Recorded<Movement>> movements) {
    this(movements, List.of());
  }

  /**
   * The ledger of a box.
   *
   * @param batches every batch, whether it stands or not
   */
  public Ledger(List<Recorded<Movement>> movements, List<Batch> batches) {
    this.movements = List.copyOf(movements);
    batches.forEach(b -> b.undoes().ifPresent(undone -> undoes.put(b.id(), undone)));
  }

  private Map<Plastic, List<Recorded<Movement>>> byPlastic() {
    if (byPlastic.isEmpty()) {
      for (Recorded<Movement> movement : movements) {
        byPlastic.computeIfAbsent(movement.what().plastic(), p -> new ArrayList<>()).add(movement);
      }
    }
    return byPlastic;
  }

  private Map<Long, List<Recorded<Movement>>> byStint() {
    if (byStint.isEmpty()) {
      for (Recorded<Movement> movement : movements) {
        movement
            .what()
            .stint()
            .ifPresent(n -> byStint.computeIfAbsent(n, s -> new ArrayList<>(2)).add(movement));
      }
    }
    return byStint;
  }

  /** In the order recorded. */
  public List<Recorded<Movement>> movements() {
    return movements;
  }

  /** Those of one plastic, in the order recorded. */
  public List<Recorded<Movement>> movements(Plastic plastic) {
    return Collections.unmodifiableList(byPlastic().getOrDefault(plastic, List.of()));
  }

  /** Those that stint {@code number} caused, in the order recorded. */
  List<Recorded<Movement>> ofStint(long number) {
    return Collections.unmodifiableList(byStint().getOrDefault(number, List.of()));
  }

  /**
   * The batch that first told what {@code batch} records. An undo tells nothing new: it speaks of
   * what the batch it reverses told, and so does the undo of that undo.
   */
  private long told(long batch) {
    long first = batch;
    for (Long next = undoes.get(first); next != null; next = undoes.get(first)) {
      first = next;
    }
    return first;
  }

  /**
   * The batch that first told of {@code movement}; of its stint, if one caused it, however often
   * that was edited since.
   */
  long told(Recorded<Movement> movement) {
    OptionalLong stint = movement.what().stint();
    long told = told(movement.batch());
    return stint.isPresent() ? stintTold(stint.getAsLong()).orElse(told) : told;
  }

  /** The batch that first told of stint {@code number}, if it ever moved pieces. */
  OptionalLong stintTold(long number) {
    return ofStint(number).stream().mapToLong(m -> told(m.batch())).min();
  }

  /** Pieces of {@code plastic} in the tray at the end of {@code asOf}. */
  public Pieces stock(Plastic plastic, LocalDate asOf) {
    return new Pieces(
        movements(plastic).stream()
            .map(Recorded::what)
            .filter(m -> !m.date().isAfter(asOf))
            .mapToInt(Movement::pieces)
            .sum());
  }

  /** Pieces by plastic at the end of {@code asOf}; a plastic that never moved is not in it. */
  public SortedMap<Plastic, Pieces> stock(LocalDate asOf) {
    SortedMap<Plastic, Pieces> stock = new TreeMap<>();
    for (Plastic plastic : byPlastic().keySet()) {
      stock.put(plastic, stock(plastic, asOf));
    }
    return Collections.unmodifiableSortedMap(stock);
  }
}

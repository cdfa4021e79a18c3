package traytally.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;

/** Every movement of a box, in the order recorded, and what they sum to. */
public final class Ledger {
  private final List<Recorded<Movement>> movements;
  private final Map<Plastic, List<Recorded<Movement>>> byPlastic = new HashMap<>();

  public Ledger(List<Recorded<Movement>> movements) {
    this.movements = List.copyOf(movements);
    for (Recorded<Movement> movement : movements) {
      byPlastic.computeIfAbsent(movement.what().plastic(), p -> new ArrayList<>()).add(movement);
    }
  }

  /** In the order recorded. */
  public List<Recorded<Movement>> movements() {
    return movements;
  }

  /** Those of one plastic, in the order recorded. */
  public List<Recorded<Movement>> movements(Plastic plastic) {
    return Collections.unmodifiableList(byPlastic.getOrDefault(plastic, List.of()));
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
    for (Plastic plastic : byPlastic.keySet()) {
      stock.put(plastic, stock(plastic, asOf));
    }
    return Collections.unmodifiableSortedMap(stock);
  }
}

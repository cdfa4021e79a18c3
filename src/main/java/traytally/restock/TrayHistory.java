package traytally.restock;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Recorded;
import traytally.performance.Turn;
import traytally.plastic.Plastic;
import traytally.trip.Trip;

/** Which plastics a past trip could choose from. */
final class TrayHistory {
  private record Use(Plastic plastic, Trip trip) {}

  /**
   * What the book knows of one tray.
   *
   * @param stock pieces at the end of each day on which they changed
   * @param knownFrom the day from whose end on they are known; empty if they never were
   * @param emptyBefore whether nothing was in it before that day
   */
  private record Tray(
      NavigableMap<LocalDate, Integer> stock, Optional<LocalDate> knownFrom, boolean emptyBefore) {

    int at(LocalDate date) {
      Map.Entry<LocalDate, Integer> then = stock.floorEntry(date);
      return then == null ? 0 : then.getValue();
    }

    /** What was bought before it was ever fished was not there before. */
    boolean knows(LocalDate tripDate) {
      return emptyBefore || knownFrom.filter(tripDate::isAfter).isPresent();
    }

    boolean emptiedOn(LocalDate tripDate) {
      return hadPieces(tripDate) && at(tripDate) == 0;
    }

    boolean hadPieces(LocalDate tripDate) {
      return at(tripDate.minusDays(1)) > 0;
    }

    boolean fullWhenFirstKnown() {
      return knownFrom.filter(day -> at(day) > 0).isPresent();
    }
  }

  private final Map<Plastic, Tray> trays = new HashMap<>();
  private final Set<Use> uses = new HashSet<>();

  /**
   * Reads the trays' past.
   *
   * @param turns every turn of the log up to {@code asOf}
   */
  TrayHistory(Book book, List<Turn> turns, Iterable<Plastic> plastics, LocalDate asOf) {
    Map<Plastic, LocalDate> firstUse = new HashMap<>();
    for (Turn turn : turns) {
      uses.add(new Use(turn.plastic(), turn.trip()));
      firstUse.merge(turn.plastic(), turn.trip().date(), TrayHistory::earlier);
    }
    Map<Plastic, LocalDate> counted = new HashMap<>();
    for (Fact.Counted count : book.facts(Fact.Counted.class)) {
      if (!count.date().isAfter(asOf)) {
        counted.merge(count.plastic(), count.date(), TrayHistory::earlier);
      }
    }
    for (Plastic plastic : plastics) {
      List<Movement> moves = moves(book, plastic, asOf);
      Optional<LocalDate> known =
          Optional.ofNullable(counted.get(plastic))
              .or(() -> moves.stream().findFirst().map(Movement::date));
      Optional<LocalDate> first = Optional.ofNullable(firstUse.get(plastic));
      trays.put(
          plastic,
          new Tray(
              stock(moves),
              moves.stream()
                  .findFirst()
                  .map(m -> earlier(m.date(), known.orElse(m.date())))
                  .or(() -> known),
              boughtFirst(moves, first)));
    }
  }

  private static List<Movement> moves(Book book, Plastic plastic, LocalDate asOf) {
    return book.ledger().movements(plastic).stream()
        .map(Recorded::what)
        .filter(move -> !move.date().isAfter(asOf))
        .sorted(Comparator.comparing(Movement::date))
        .toList();
  }

  private static NavigableMap<LocalDate, Integer> stock(List<Movement> moves) {
    NavigableMap<LocalDate, Integer> stock = new TreeMap<>();
    int pieces = 0;
    for (Movement move : moves) {
      pieces += move.pieces();
      stock.put(move.date(), pieces);
    }
    return stock;
  }

  /** Whether a plastic came into the box by purchase, never fished before. */
  private static boolean boughtFirst(List<Movement> moves, Optional<LocalDate> firstUse) {
    return !moves.isEmpty()
        && moves.get(0).kind() == MovementKind.BOUGHT
        && firstUse.filter(use -> use.isBefore(moves.get(0).date())).isEmpty();
  }

  private static LocalDate earlier(LocalDate a, LocalDate b) {
    return a.isBefore(b) ? a : b;
  }

  /**
   * Whether a trip began with pieces of a plastic; before the ledger has seen the plastic, whether
   * it was fished.
   */
  boolean had(Plastic plastic, Trip trip) {
    Tray tray = trays.get(plastic);
    return uses.contains(new Use(plastic, trip))
        || (tray != null && tray.knows(trip.date()) && tray.hadPieces(trip.date()));
  }

  /**
   * Whether a trip that fished a plastic took its last piece; no, as long as nobody had counted.
   */
  boolean emptied(Plastic plastic, Trip trip) {
    Tray tray = trays.get(plastic);
    return tray != null
        && tray.knows(trip.date())
        && uses.contains(new Use(plastic, trip))
        && tray.emptiedOn(trip.date());
  }

  /** Whether the ledger knows the tray as it was on that trip. */
  boolean knows(Plastic plastic, Trip trip) {
    Tray tray = trays.get(plastic);
    return tray != null && tray.knows(trip.date());
  }

  /** Whether a tray held pieces when it was first counted; no, if it never was. */
  boolean fullWhenFirstKnown(Plastic plastic) {
    Tray tray = trays.get(plastic);
    return tray != null && tray.fullWhenFirstKnown();
  }
}

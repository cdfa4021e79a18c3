package traytally.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.plastic.Plastic;
import traytally.trip.Stint;

/** What an import comes to, in figures a person can hold against the sheet. */
final class ImportSums {
  /** More plastics in one sentence are not read (an assumption). */
  private static final int MOST_NAMED = 10;

  private ImportSums() {}

  static List<String> of(Entry entry) {
    List<String> sums = new ArrayList<>();
    List<Fact.Counted> counts = added(entry, Fact.Counted.class);
    if (!counts.isEmpty()) {
      sums.add(
          "Counted: "
              + pieces(
                  counts.stream().mapToLong(Fact.Counted::pieces).sum(),
                  counts.stream().map(Fact.Counted::plastic)));
    }
    recounts(entry, sums);
    List<Movement> bought =
        entry.movements().stream().filter(m -> m.kind() == MovementKind.BOUGHT).toList();
    if (!bought.isEmpty()) {
      sums.add(
          "Bought: "
              + pieces(
                  bought.stream().mapToLong(Movement::pieces).sum(),
                  bought.stream().map(Movement::plastic)));
    }
    List<Stint> log = added(entry, Fact.Fished.class).stream().map(Fact.Fished::stint).toList();
    if (!log.isEmpty()) {
      sums.add(
          "Logged: "
              + Words.count(log.size(), "stint")
              + " on "
              + Words.count(log.stream().map(Stint::trip).distinct().count(), "trip")
              + ", "
              + Words.count(log.stream().mapToLong(stint -> stint.fish().takes()).sum(), "take")
              + ", "
              + Words.count(log.stream().mapToLong(Stint::use).sum(), "piece")
              + " used up.");
    }
    return sums;
  }

  private static <T extends Fact> List<T> added(Entry entry, Class<T> kind) {
    return entry.added().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static String pieces(long pieces, Stream<Plastic> plastics) {
    return Words.count(pieces, "piece")
        + " of "
        + Words.count(plastics.distinct().count(), "plastic")
        + ".";
  }

  /** Which counts are not what the book held, and by how much. */
  private static void recounts(Entry entry, List<String> sums) {
    SortedMap<Plastic, Integer> changed = new TreeMap<>();
    entry.movements().stream()
        .filter(movement -> movement.kind() == MovementKind.RECOUNT)
        .forEach(movement -> changed.merge(movement.plastic(), movement.pieces(), Integer::sum));
    changed.values().removeIf(pieces -> pieces == 0);
    if (changed.isEmpty()) {
      return;
    }
    String named =
        changed.entrySet().stream()
            .limit(MOST_NAMED)
            .map(ImportSums::change)
            .collect(Collectors.joining("; "));
    int more = changed.size() - MOST_NAMED;
    sums.add(
        "Against the book: "
            + named
            + (more > 0 ? "; and " + Words.count(more, "plastic") + " more" : "")
            + ".");
  }

  private static String change(Map.Entry<Plastic, Integer> change) {
    return change.getKey() + ": " + (change.getValue() > 0 ? "+" : "") + change.getValue();
  }
}

package traytally.ledger;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import traytally.plastic.Name;
import traytally.trip.Months;
import traytally.trip.PlannedTrip;

/**
 * The months in which the angler will not fish a water, by a note of his own. The tool knows no
 * rules; it only holds the plan against what the angler noted.
 *
 * @param months by water
 */
public record ClosedWaters(SortedMap<Name, Months> months) {
  public static final ClosedWaters NONE = new ClosedWaters(new TreeMap<>());

  public ClosedWaters {
    months = Collections.unmodifiableSortedMap(new TreeMap<>(months));
  }

  /** What stands in {@code book}; the last word on a water counts. */
  public static ClosedWaters of(Book book) {
    ClosedWaters waters = NONE;
    for (Fact.Closed closed : book.facts(Fact.Closed.class)) {
      waters = waters.with(closed);
    }
    return waters;
  }

  /** These and one more. */
  public ClosedWaters with(Fact.Closed closed) {
    SortedMap<Name, Months> more = new TreeMap<>(months);
    more.put(closed.water(), closed.months());
    return new ClosedWaters(more);
  }

  /** The closed months that {@code trip} falls into, if it does. */
  public Optional<Months> on(PlannedTrip trip) {
    return Optional.ofNullable(months.get(trip.water()))
        .filter(closed -> closed.contain(trip.date()));
  }

  /** What to say of the trips planned inside closed months: a sentence a water. */
  public List<String> notes(Collection<PlannedTrip> trips) {
    SortedMap<Name, List<PlannedTrip>> inside = new TreeMap<>();
    trips.stream()
        .sorted()
        .filter(trip -> on(trip).isPresent())
        .forEach(trip -> inside.computeIfAbsent(trip.water(), w -> new ArrayList<>()).add(trip));
    List<String> notes = new ArrayList<>();
    for (Map.Entry<Name, List<PlannedTrip>> water : inside.entrySet()) {
      List<PlannedTrip> planned = water.getValue();
      notes.add(
          "%s is closed by your own note (%s), and you plan to be there on %s. Ask before you go."
              .formatted(
                  planned.get(0).water(),
                  on(planned.get(0)).orElseThrow().words(),
                  planned.stream()
                      .map(trip -> trip.date().toString())
                      .distinct()
                      .collect(Collectors.joining(", "))));
    }
    return notes;
  }
}

package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import traytally.ledger.Book;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Recorded;
import traytally.trip.Trip;

/** Tells which stints of a log are new, edited, unchanged or deleted against the book. */
final class LogMerge {
  private final Changes changes;
  private final Map<Trip, List<Recorded<Fished>>> recorded = new HashMap<>();
  private long nextNumber;
  private int added;
  private int edited;
  private int deleted;

  LogMerge(Book book, Changes changes) {
    this.changes = changes;
    this.nextNumber = book.nextStint();
    for (Recorded<Fished> fished : book.recorded(Fished.class)) {
      recorded.computeIfAbsent(fished.what().stint().trip(), t -> new ArrayList<>()).add(fished);
    }
  }

  /**
   * Takes the stints of one list into the book.
   *
   * @param source the list
   * @param mayHold whether an unreadable row of the list may belong to a trip
   */
  void merge(List<Fished> stints, String source, Predicate<Trip> mayHold) {
    Map<Trip, List<Fished>> listed = new LinkedHashMap<>();
    stints.forEach(s -> listed.computeIfAbsent(s.stint().trip(), t -> new ArrayList<>()).add(s));
    listed.forEach(this::mergeTrip);
    Set<Trip> trips = Set.copyOf(recorded.keySet());
    for (Trip trip : trips.stream().sorted().toList()) {
      List<Recorded<Fished>> left = recorded.getOrDefault(trip, List.of());
      for (Recorded<Fished> stint : left) {
        if (stint.what().source().equals(source) && !mayHold.test(trip)) {
          changes.unfish(stint, "no longer in " + source);
          deleted++;
        }
      }
      left.removeIf(stint -> stint.what().source().equals(source));
    }
  }

  /** Removes from the recorded stints of the trip those the list accounts for. */
  private void mergeTrip(Trip trip, List<Fished> listed) {
    List<Recorded<Fished>> before = recorded.computeIfAbsent(trip, t -> new ArrayList<>());
    List<Fished> changed = new ArrayList<>();
    for (Fished stint : listed) {
      if (!removeFirst(before, r -> r.what().stint().equals(stint.stint()))) {
        changed.add(stint);
      }
    }
    for (Fished stint : changed) {
      List<Recorded<Fished>> same =
          before.stream()
              .filter(r -> r.what().stint().plastic().equals(stint.stint().plastic()))
              .collect(Collectors.toList());
      if (same.isEmpty()) {
        changes.fish(numbered(stint, nextNumber++));
        added++;
      } else {
        Recorded<Fished> old = same.get(0);
        before.remove(old);
        changes.unfish(old, "edited in " + stint.source());
        changes.fish(numbered(stint, old.what().number()));
        edited++;
      }
    }
  }

  private static Fished numbered(Fished stint, long number) {
    return new Fished(stint.stint(), number, stint.ordinal(), stint.source());
  }

  private static <T> boolean removeFirst(List<T> from, Predicate<T> wanted) {
    for (int i = 0; i < from.size(); i++) {
      if (wanted.test(from.get(i))) {
        from.remove(i);
        return true;
      }
    }
    return false;
  }

  /** What happened, in words: {@code 12 stints added, 1 edited}; empty if nothing did. */
  String summary() {
    List<String> words = new ArrayList<>();
    if (added > 0) {
      words.add(added + (added == 1 ? " stint" : " stints") + " added");
    }
    if (edited > 0) {
      words.add(edited + " edited");
    }
    if (deleted > 0) {
      words.add(deleted + " deleted");
    }
    return String.join(", ", words);
  }
}

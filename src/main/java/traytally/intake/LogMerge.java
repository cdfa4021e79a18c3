package traytally.intake;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import traytally.ledger.Book;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Recorded;
import traytally.trip.Stint;
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
   * @param stints in the list's order, of which those of a trip are its first, second and so on
   * @param source the list
   * @param mayHold whether an unreadable row of the list may belong to a trip
   */
  void merge(List<Stint> stints, String source, Predicate<Trip> mayHold) {
    Map<Trip, List<Stint>> listed = new LinkedHashMap<>();
    stints.forEach(s -> listed.computeIfAbsent(s.trip(), t -> new ArrayList<>()).add(s));
    listed.forEach((trip, ofTrip) -> mergeTrip(trip, ofTrip, source));
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
  private void mergeTrip(Trip trip, List<Stint> listed, String source) {
    List<Recorded<Fished>> before = recorded.computeIfAbsent(trip, t -> new ArrayList<>());
    BitSet unchanged = new BitSet();
    for (int i = 0; i < listed.size(); i++) {
      Stint stint = listed.get(i);
      unchanged.set(i, removeFirst(before, r -> r.what().stint().equals(stint)).isPresent());
    }
    for (int i = unchanged.nextClearBit(0); i < listed.size(); i = unchanged.nextClearBit(i + 1)) {
      Stint stint = listed.get(i);
      Optional<Recorded<Fished>> old =
          removeFirst(before, r -> r.what().stint().plastic().equals(stint.plastic()));
      old.ifPresent(o -> changes.unfish(o, "edited in " + source));
      long number = old.isPresent() ? old.get().what().number() : nextNumber++;
      changes.fish(new Fished(stint, number, i + 1, source));
      edited += old.isPresent() ? 1 : 0;
      added += old.isPresent() ? 0 : 1;
    }
  }

  private static <T> Optional<T> removeFirst(List<T> from, Predicate<T> wanted) {
    for (int i = 0; i < from.size(); i++) {
      if (wanted.test(from.get(i))) {
        return Optional.of(from.remove(i));
      }
    }
    return Optional.empty();
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

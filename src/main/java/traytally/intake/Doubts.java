package traytally.intake;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** The days of rows that could not be taken: what was recorded of them may still be meant. */
final class Doubts {
  private final Set<LocalDate> days = new HashSet<>();
  private boolean undated;

  /** Takes in a row that could not be taken; it may be of any day if its date is not known. */
  void add(Optional<LocalDate> date) {
    date.ifPresent(days::add);
    undated |= date.isEmpty();
  }

  /** Whether a row that could not be taken may be of {@code day}. */
  boolean mayTouch(LocalDate day) {
    return undated || days.contains(day);
  }
}

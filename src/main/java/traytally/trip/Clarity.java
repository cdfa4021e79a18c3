package traytally.trip;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How far one sees into the water, from clear to dirty. */
public enum Clarity {
  CLEAR,
  STAINED,
  CLOUDY,
  DIRTY;

  /** The clarity that {@code word} names, without regard to case. */
  public static Optional<Clarity> parse(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(c -> c.word().equals(wanted)).findFirst();
  }

  /** The word used in sheets and output. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

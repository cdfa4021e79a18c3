package traytally.trip;

import java.util.Optional;
import traytally.plastic.Worded;

/** How far one sees into the water, from clear to dirty. */
public enum Clarity implements Worded {
  CLEAR,
  STAINED,
  CLOUDY,
  DIRTY;

  /** The clarity that {@code word} names, without regard to case. */
  public static Optional<Clarity> parse(String word) {
    return Worded.parse(values(), word);
  }
}

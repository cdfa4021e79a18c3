package traytally.plastic;

import java.util.Optional;

/** How a plastic's colour is laid on or mixed in. */
public enum Finish implements Worded {
  SOLID,
  TRANSLUCENT,
  FLAKE,
  LAMINATE,
  LUMINOUS;

  /** The finish that {@code word} names, without regard to case. */
  public static Optional<Finish> parse(String word) {
    return Worded.parse(values(), word);
  }
}

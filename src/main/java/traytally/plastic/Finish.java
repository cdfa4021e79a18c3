package traytally.plastic;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a plastic's colour is laid on or mixed in. */
public enum Finish {
  SOLID,
  TRANSLUCENT,
  FLAKE,
  LAMINATE,
  LUMINOUS;

  /** The finish that {@code word} names, without regard to case. */
  public static Optional<Finish> parse(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(f -> f.word().equals(wanted)).findFirst();
  }

  /** The word used in sheets and output. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

package traytally.performance;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How far a colour has earned its place, best first. */
public enum Standing {
  TRUSTED,
  PROMISING,
  UNPROVEN,
  DOUBTFUL;

  /** The standing that {@code word} names, without regard to case. */
  public static Optional<Standing> parse(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> s.word().equals(wanted)).findFirst();
  }

  /** The word used in output. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

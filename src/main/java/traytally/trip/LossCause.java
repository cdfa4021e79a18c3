package traytally.trip;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a piece was lost. */
public enum LossCause {
  SNAGGED,
  BITTEN_OFF,
  TORN,
  CAST_OFF;

  /** The cause that {@code words} names, without regard to case. */
  public static Optional<LossCause> parse(String words) {
    String wanted = words.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(c -> c.word().equals(wanted)).findFirst();
  }

  /** The words used in sheets and output: {@code bitten off}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}

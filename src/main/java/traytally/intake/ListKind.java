package traytally.intake;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The four kinds of list that are read. */
public enum ListKind {
  BOX,
  TRIPS,
  PLAN,
  PRICES;

  /** The kind that {@code word} names, without regard to case. */
  public static Optional<ListKind> parse(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(k -> k.word().equals(wanted)).findFirst();
  }

  /** The word used in options and output. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

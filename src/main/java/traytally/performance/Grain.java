package traytally.performance;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What is judged together. */
public enum Grain {
  /** A colour in whatever body and length. */
  COLOUR,
  /** One plastic. */
  PLASTIC,
  /** A body style in whatever colour and length. */
  BODY;

  /** The grain that {@code word} names, without regard to case. */
  public static Optional<Grain> parse(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(g -> g.word().equals(wanted)).findFirst();
  }

  /** The word used on the command line and in output. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

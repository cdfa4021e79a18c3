package traytally.performance;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import traytally.trip.Fish;

/** Which of the fish a colour is judged by. */
public enum Measure {
  FOLLOWS,
  TAKES,
  HOOKED,
  LANDED;

  /** The measure that {@code word} names, without regard to case. */
  public static Optional<Measure> parse(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(m -> m.word().equals(wanted)).findFirst();
  }

  /** The word used on the command line and in output. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** How many of {@code fish} it counts. */
  public int of(Fish fish) {
    return switch (this) {
      case FOLLOWS -> fish.follows();
      case TAKES -> fish.takes();
      case HOOKED -> fish.hooked();
      case LANDED -> fish.landed();
    };
  }
}

package traytally.performance;

import java.util.Optional;
import traytally.plastic.Worded;
import traytally.trip.Fish;

/** Which of the fish a colour is judged by. */
public enum Measure implements Worded {
  FOLLOWS,
  TAKES,
  HOOKED,
  LANDED;

  /** The measure that {@code word} names, without regard to case. */
  public static Optional<Measure> parse(String word) {
    return Worded.parse(values(), word);
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

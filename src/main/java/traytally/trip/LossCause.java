package traytally.trip;

import java.util.Optional;
import traytally.plastic.Worded;

/** How a piece was lost. */
public enum LossCause implements Worded {
  SNAGGED,
  BITTEN_OFF,
  TORN,
  CAST_OFF;

  /** The cause that {@code words} names, without regard to case. */
  public static Optional<LossCause> parse(String words) {
    return Worded.parse(values(), words);
  }
}

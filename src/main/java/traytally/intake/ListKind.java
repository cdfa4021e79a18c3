package traytally.intake;

import java.util.Optional;
import traytally.plastic.Worded;

/** The four kinds of list that are read. */
public enum ListKind implements Worded {
  BOX,
  TRIPS,
  PLAN,
  PRICES;

  /** The kind that {@code word} names, without regard to case. */
  public static Optional<ListKind> parse(String word) {
    return Worded.parse(values(), word);
  }
}

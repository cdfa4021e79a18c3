package traytally.report;

import java.util.Optional;
import traytally.plastic.Name;
import traytally.plastic.Worded;

/** Turns of phrase that several reports share. */
public final class Words {
  /** What every printed list says of rules and care; common practice. */
  static final String RULES =
      "Seasons, licences, bag limits and bans on lures or lead are local and change: ask the"
          + " authority for the water. This tool knows none of them.";

  static final String CARE =
      "Take used plastics home. Mind hooks, wading and wet rock; tell somebody where you fish.";

  private Words() {}

  /** {@code 1 trip}, {@code 3 trips}. */
  public static String count(long number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }

  static Value orUnknown(Name name) {
    return name.isBlank() ? Value.UNKNOWN : Value.of(name.text());
  }

  static Value orUnknown(Optional<? extends Worded> choice) {
    return choice.map(Worded::word).map(Value::of).orElse(Value.UNKNOWN);
  }
}

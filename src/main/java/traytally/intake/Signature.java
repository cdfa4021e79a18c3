package traytally.intake;

import java.util.List;
import java.util.regex.Pattern;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** The line at the foot of a card where those who vouch for it sign. */
final class Signature {
  private static final Pattern SIGNED =
      Pattern.compile(
          "(?:(?:counter ?)?signed|signatures?|stewards?|marshals?|witness(?:ed)?|checked|verified"
              + "|weighed(?: in)?)(?: (?:by|of) .*)?\\s*(?:[:.…_–-].*)?",
          Pattern.CASE_INSENSITIVE);

  private Signature() {}

  /** Whether a row is one: words alone, each of somebody who signs or a name beside it. */
  static boolean is(Row row) {
    List<Cell> filled = row.filled();
    return !filled.isEmpty()
        && SIGNED.matcher(filled.get(0).shown().strip()).matches()
        && filled.stream().noneMatch(Under::isCount)
        && filled.stream().allMatch(cell -> cell instanceof Cell.Text);
  }
}

package traytally.intake;

import java.util.regex.Pattern;
import traytally.sheet.Row;

/** Rows that say that an outing did not come about, or that nothing was fished. */
final class CalledOff {
  private static final Pattern CALLED_OFF =
      Pattern.compile(
          "\\s*(?:cancelled|canceled|called off|postponed|scrapped|not going|off)[.!]*\\s*",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern NOT_FISHED =
      Pattern.compile(
          "(?:(?:blank|cancelled|none|nothing|-)\\W*)?(?:did ?n[o']?t (?:fish|go)|did not (?:fish|go)"
              + "|no fishing\\b.*|not fished|blown out\\b.*|stayed (?:home|in)\\b.*|too (?:rough|windy|wet)\\b.*|rained off|blown off|called off"
              + "|cancelled)[.!]*",
          Pattern.CASE_INSENSITIVE);

  private CalledOff() {}

  /** Whether a row of a list of this kind is one. */
  static boolean is(ListKind kind, Row row, ListRow list) {
    return switch (kind) {
      case PLAN -> row.cells().stream().anyMatch(c -> CALLED_OFF.matcher(c.shown()).matches());
      case TRIPS ->
          list.isBlank(Field.COLOUR) && NOT_FISHED.matcher(list.text(Field.BODY)).matches();
      case BOX, PRICES -> false;
    };
  }
}

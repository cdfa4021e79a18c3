package traytally.intake;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/**
 * A shop's heading with its terms behind the name: {@code Splice Shed - post £3.20, free over £30,
 * 4 days}.
 *
 * @param postage empty if it is not told, as are the others
 */
record ShopTerms(
    String name, Optional<String> postage, Optional<String> freeOver, Optional<String> days) {
  private static final String SUM = "([€£$]?\\s?\\d[\\d.,]*(?:\\s?(?:[€£$]|eur|gbp|usd))?)";
  private static final Pattern POSTAGE =
      Pattern.compile(
          "\\b(?:post(?:age)?|p ?& ?p|delivery|shipping|carriage)\\b\\s*:?\\s*(free\\b(?! (?:over"
              + "|above|from))|"
              + SUM
              + ")",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern FREE =
      Pattern.compile(
          "\\bfree\\b[a-z &]*?\\b(?:over|above|from)\\s+" + SUM, Pattern.CASE_INSENSITIVE);
  private static final Pattern DAYS =
      Pattern.compile("\\b(\\d{1,2}) ?days?\\b", Pattern.CASE_INSENSITIVE);

  /** The name and the terms of {@code heading}; all of it is the name if it tells no terms. */
  static ShopTerms of(String heading) {
    Optional<String> postage = found(POSTAGE, heading);
    Optional<String> free = found(FREE, heading);
    Optional<String> days = found(DAYS, heading);
    boolean terms = postage.isPresent() || free.isPresent() || days.isPresent();
    String name = terms ? FirstSection.beforeAside(heading) : heading;
    return new ShopTerms(name, postage, free, days);
  }

  private static Optional<String> found(Pattern pattern, String heading) {
    Matcher found = pattern.matcher(heading);
    return found.find() ? Optional.of(found.group(1).replaceFirst("[.,]+$", "")) : Optional.empty();
  }

  /** Puts the terms into a row that does not tell its own. */
  void fill(ListRow row) {
    fill(row, Field.POSTAGE, postage);
    fill(row, Field.FREE_OVER, freeOver);
    fill(row, Field.DELIVERY_DAYS, days);
  }

  private static void fill(ListRow row, Field field, Optional<String> told) {
    if (told.isPresent() && row.isBlank(field)) {
      row.fill(field, new Place(Cell.text(told.get()), -1, true));
    }
  }
}

package traytally.intake;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Cell;

/**
 * What stands over a column.
 *
 * @param text as typed
 * @param folded without capitals, punctuation and unit
 * @param unit the unit it states, in small letters: {@code mm}, {@code in}, {@code h}, {@code £}
 */
record ColumnHeader(String text, String folded, Optional<String> unit) {
  private static final String UNITS =
      "mm|cm|in|ins|inch|inches|\"|''|h|hr|hrs|hours|min|mins|minutes|€|£|\\$|[a-z]{3}";
  private static final Pattern BRACKETED =
      Pattern.compile("(.+?)\\s*[(\\[]\\s*(?:in )?(" + UNITS + ")\\.?\\s*[)\\]]\\s*\\*?");
  private static final Pattern TRAILING =
      Pattern.compile(
          "(?!rods? (?:hours|hrs)$)(.+?)(?:,| -| in|/)?\\s+(?:in"
              + " )?(mm|cm|inches|inch|ins|\"|€|£|\\$|eur|gbp|usd|hours|hrs)");
  private static final Pattern CURRENCY = Pattern.compile("[€£$]");
  private static final Pattern MONEY =
      Pattern.compile("\\b(?:price|cost|paid|value|worth|spent)\\b");
  private static final Pattern ALONE = Pattern.compile("mm|cm|in|inch|inches|ins");

  static ColumnHeader of(Cell cell) {
    return of(cell.shown());
  }

  static ColumnHeader of(String text) {
    String plain =
        Numbers.plain(text).toLowerCase(java.util.Locale.ROOT).replaceAll("[*:?]+$", "").strip();
    Matcher bracketed = BRACKETED.matcher(plain);
    if (bracketed.matches()) {
      return new ColumnHeader(
          text.strip(), WordList.fold(bracketed.group(1)), Optional.of(bracketed.group(2)));
    }
    Matcher trailing = TRAILING.matcher(plain);
    if (trailing.matches()) {
      String word = WordList.fold(trailing.group(1));
      // A pack in pounds is what it costs, and not what it holds.
      boolean cost = CURRENCY.matcher(trailing.group(2)).matches() && word.equals("pack");
      return new ColumnHeader(
          text.strip(), cost ? "pack price" : word, Optional.of(trailing.group(2)));
    }
    if (CURRENCY.matcher(plain).matches()) {
      return new ColumnHeader(text.strip(), "price", Optional.of(plain));
    }
    Optional<String> alone = ALONE.matcher(plain).matches() ? Optional.of(plain) : Optional.empty();
    return new ColumnHeader(text.strip(), WordList.fold(plain), alone);
  }

  /** Whether what stands under it is money. */
  boolean tellsMoney() {
    return unit.filter(u -> CURRENCY.matcher(u).matches()).isPresent()
        || MONEY.matcher(folded).find();
  }

  /** The unit of length it states, if it does. */
  Optional<Lengths.Unit> lengthUnit() {
    return unit.flatMap(
        u ->
            switch (u) {
              case "mm" -> Optional.of(Lengths.Unit.MM);
              case "cm" -> Optional.of(Lengths.Unit.CM);
              case "in", "ins", "inch", "inches", "\"", "''" -> Optional.of(Lengths.Unit.INCH);
              default -> Optional.<Lengths.Unit>empty();
            });
  }

  /** Whether it says that its bare numbers are hours. */
  boolean saysHours() {
    return unit.filter(u -> u.startsWith("h")).isPresent()
        || folded.matches("(?:.* )?(?:hours|hrs|h)(?: .*)?");
  }

  /** Whether it says that its bare numbers are minutes. */
  boolean saysMinutes() {
    return unit.filter(u -> u.startsWith("min")).isPresent()
        || folded.matches("(?:.* )?(?:minutes|mins|min)(?: .*)?");
  }
}

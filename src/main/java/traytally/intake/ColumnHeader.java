package traytally.intake;

import java.util.Currency;
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
      "mm|cm|in|ins|inch|inches|\"|''|h|hr|hrs|hours|min|mins|minutes|€|£|\\$|r|[a-z]{3}";
  private static final Pattern BRACKETED =
      Pattern.compile("(.+?)\\s*[(\\[]\\s*(?:in )?(" + UNITS + ")\\.?\\s*[)\\]]\\s*\\*?");
  private static final Pattern TRAILING =
      Pattern.compile(
          "(?!(?:rods?|how many) (?:hours|hrs)$)(.+?)(?:(?:,| -| in|/)?\\s+(?:in )?|/\\s*)"
              + "(mm|cm|inches|inch|ins|\"|€|£|\\$|eur|gbp|usd|hours|hrs)\\.?");

  /** In is a unit behind a length alone: what is in a pack is not. */
  private static final Pattern TRAILING_IN =
      Pattern.compile(
          "((?:lure |bait |body |overall )?(?:size|length|len|long|lgth))[\\s/,]+in\\.?");

  /** A price in the currency before it: {@code NZ$ per pkt}, {@code £ a bag}. */
  private static final Pattern LEADING =
      Pattern.compile(
          "((?:us|nz|au|a|ca|c|hk|s)?\\$|[€£]|eur|gbp|usd|nzd|aud|cad|zar|r)\\s*(?:/|per|a|each|for an?|the)"
              + "\\s*(?:pack|packet|pkt|pk|bag|pkg)");

  private static final Pattern CURRENCY = Pattern.compile("[€£$]");
  private static final Pattern MONEY =
      Pattern.compile("\\b(?:price|cost|paid|value|worth|spent)\\b");
  private static final Pattern ALONE = Pattern.compile("(mm|cm|in|inch|inches|ins)\\.?");

  /** What went of each lure, behind its name: {@code Lures (lost)}. */
  private static final Pattern WITH_LOST =
      Pattern.compile(
          "(.+?)\\s*\\(\\s*(?:and |how many |no\\.? |number )?(?:lost|losses|gone)\\s*\\)");

  static ColumnHeader of(Cell cell) {
    return of(cell.shown());
  }

  static ColumnHeader of(String text) {
    String plain =
        Numbers.plain(text)
            .toLowerCase(java.util.Locale.ROOT)
            .replace('_', ' ')
            .replaceAll("[*:?]+$", "")
            .strip();
    Matcher leading = LEADING.matcher(plain);
    if (leading.matches()) {
      return new ColumnHeader(text.strip(), "pack price", Optional.of(leading.group(1)));
    }
    Matcher inches = TRAILING_IN.matcher(plain);
    if (inches.matches()) {
      return new ColumnHeader(text.strip(), WordList.fold(inches.group(1)), Optional.of("in"));
    }
    Matcher lost = WITH_LOST.matcher(plain);
    if (lost.matches()) {
      return new ColumnHeader(text.strip(), WordList.fold(lost.group(1)), Optional.empty());
    }
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
    Matcher alone = ALONE.matcher(plain);
    return new ColumnHeader(
        text.strip(),
        WordList.fold(plain),
        alone.matches() ? Optional.of(alone.group(1)) : Optional.empty());
  }

  /** The sign or code of the currency it states, if it does. */
  Optional<String> currency() {
    return unit.filter(u -> Amounts.currency(u, Currency.getInstance("EUR")).isPresent());
  }

  /** Whether numbers in brackets behind each name under it are losses. */
  boolean saysLost() {
    return WITH_LOST.matcher(Numbers.plain(text).toLowerCase(java.util.Locale.ROOT)).matches();
  }

  /** Its text without a unit in brackets. */
  String withoutUnit() {
    return text.replaceFirst("\\s*[(\\[][^()]*[)\\]]\\s*$", "");
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

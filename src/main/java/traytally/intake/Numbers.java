package traytally.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.Normalizer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers as people type them: decimal commas, thousands marks, fractions. */
final class Numbers {
  /** The fractions that have a character of their own (Unicode, Number Forms and Latin-1). */
  private static final Map<Character, String> FRACTIONS =
      Map.ofEntries(
          Map.entry('¼', "1/4"),
          Map.entry('½', "1/2"),
          Map.entry('¾', "3/4"),
          Map.entry('⅓', "1/3"),
          Map.entry('⅔', "2/3"),
          Map.entry('⅛', "1/8"),
          Map.entry('⅜', "3/8"),
          Map.entry('⅝', "5/8"),
          Map.entry('⅞', "7/8"));

  /** Small numbers in words, each at its own place; 0 is told in other ways. */
  static final List<String> WORDS =
      List.of(
          "zero",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen",
          "twenty");

  /** A number as part of a longer pattern: 3, 3.5, 3,5, 1,200, 3 1/2, 3-1/2, 1/2. */
  static final String NUMBER = "(?:\\d+[ -]+\\d+/\\d+|\\d+/\\d+|\\d[\\d.,' ]*\\d|\\d|[.,]\\d+)";

  private static final Pattern MIXED = Pattern.compile("(?:(\\d{1,6})[ -]+)?(\\d{1,4})/(\\d{1,4})");
  private static final Pattern GROUPS = Pattern.compile("\\d{1,3}(?:[ ']\\d{3})+(?:[.,]\\d+)?");
  private static final Pattern COMMA_GROUPS = Pattern.compile("\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?");
  private static final Pattern POINT_GROUPS =
      Pattern.compile("\\d{1,3}(?:\\.\\d{3})+,\\d+|\\d{1,3}(?:\\.\\d{3}){2,}");
  private static final Pattern PLAIN = Pattern.compile("\\d{0,15}(?:[.,]\\d{1,15})?|\\d{1,15}[.,]");

  private Numbers() {}

  /** The small number that {@code word} names. */
  static Optional<BigDecimal> word(String word) {
    return WORDS.contains(word)
        ? Optional.of(BigDecimal.valueOf(WORDS.indexOf(word)))
        : Optional.empty();
  }

  /**
   * The text in plain characters: one kind of blank, hyphen, apostrophe and inch mark, fractions
   * written out, full-width digits as usual ones.
   */
  static String plain(String text) {
    if (isPlain(text)) {
      return text;
    }
    StringBuilder spelt = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      String fraction = FRACTIONS.get(c);
      if (fraction != null) {
        boolean joined = spelt.length() > 0 && Character.isDigit(spelt.charAt(spelt.length() - 1));
        spelt.append(joined ? " " : "").append(fraction);
      } else {
        spelt.append(c);
      }
    }
    return Normalizer.normalize(spelt, Normalizer.Form.NFKC)
        .replaceAll("[\\p{Z}\\s]+", " ")
        .replaceAll("[‐‑‒–—―−]", "-")
        .replaceAll("[‘’`´]", "'")
        .replaceAll("[“”″]", "\"")
        .replace("′", "'")
        .replace('⁄', '/')
        .replace('×', 'x')
        .strip();
  }

  /** Whether nothing in {@code text} needs changing; most cells of most lists are so. */
  private static boolean isPlain(String text) {
    char before = ' ';
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c > '~' || c == '`' || (c == ' ' && before == ' ')) {
        return false;
      }
      before = c;
    }
    return text.isEmpty() || before != ' ';
  }

  /** The number that {@code text}, already {@link #plain}, is; a sign may lead. */
  static Optional<BigDecimal> parse(String text) {
    String bare = text.strip();
    boolean negative = bare.startsWith("-");
    if (negative || bare.startsWith("+")) {
      bare = bare.substring(1).strip();
    }
    Optional<BigDecimal> size = unsigned(bare);
    return negative ? size.map(BigDecimal::negate) : size;
  }

  private static Optional<BigDecimal> unsigned(String bare) {
    Matcher mixed = MIXED.matcher(bare);
    if (mixed.matches()) {
      return mixed(mixed);
    }
    if (GROUPS.matcher(bare).matches()) {
      return Optional.of(new BigDecimal(bare.replaceAll("[ ']", "").replace(',', '.')));
    }
    if (COMMA_GROUPS.matcher(bare).matches() && !bare.startsWith("0")) {
      return Optional.of(new BigDecimal(bare.replace(",", "")));
    }
    if (POINT_GROUPS.matcher(bare).matches()) {
      return Optional.of(new BigDecimal(bare.replace(".", "").replace(',', '.')));
    }
    if (!bare.isEmpty() && PLAIN.matcher(bare).matches() && bare.chars().anyMatch(c -> c >= '0')) {
      String point = bare.replace(',', '.');
      return Optional.of(new BigDecimal(point.endsWith(".") ? point + "0" : point));
    }
    return Optional.empty();
  }

  private static Optional<BigDecimal> mixed(Matcher mixed) {
    BigDecimal below = new BigDecimal(mixed.group(3));
    if (below.signum() == 0) {
      return Optional.empty();
    }
    BigDecimal whole = mixed.group(1) == null ? BigDecimal.ZERO : new BigDecimal(mixed.group(1));
    // Twelve places keep a third of anything a person counts exact after rounding to the whole.
    BigDecimal part = new BigDecimal(mixed.group(2)).divide(below, 12, RoundingMode.HALF_UP);
    return Optional.of(whole.add(part));
  }

  /** Whether {@code number} has nothing after the point. */
  static boolean isWhole(BigDecimal number) {
    return number.stripTrailingZeros().scale() <= 0;
  }
}

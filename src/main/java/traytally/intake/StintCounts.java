package traytally.intake;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The numbers that a text tells of a stint with their words, read from left to right: {@code 3
 * takes, landed 2, lost 1}.
 *
 * @param told the first number of each kind, in digits
 * @param rest the text with a line in place of each number and its word
 */
record StintCounts(Map<Field, String> told, String rest) {
  /** What stands in the rest where something was taken out. */
  static final char TAKEN = '|';

  /** A number, or a word for one or for none. */
  static final String NUMBER =
      "(\\d+|no|none|nothing|nowt|nil|" + String.join("|", Numbers.WORDS) + ")";

  private static final String TAKES = "takes?|hits?|bites?|strikes?|knocks?";
  private static final String HOOKED = "hooked|hook-?ups?";
  private static final String OTHERS = "follows?|chases?|casts?";

  /** Fish that got off are neither landed nor lost pieces. */
  private static final String NO_FISH_LOST = "(?!\\s+(?:\\p{L}+\\s+){0,2}fish\\b)";

  private static final String FISH = "fish(?!\\s+(?:lost|dropped|off|missed|seen)\\b)";

  /** The words before or behind a number; "fish" names a lure, too, and goes before an end only. */
  private static final Pattern TOLD =
      Pattern.compile(
          "\\b"
              + NUMBER
              + "\\s+("
              + String.join("|", TAKES, HOOKED, OTHERS, "landed|caught|lost", FISH)
              + ")\\b|\\b("
              + String.join("|", TAKES, HOOKED, "landed|caught|lost")
              + ")\\s*:?\\s*"
              + NUMBER
              + "\\b"
              + NO_FISH_LOST
              + "|\\b(fish)\\s*:?\\s*"
              + NUMBER
              + "(?=\\s*(?:[,;.)|]|$))",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern MINUTES =
      Pattern.compile("(\\d+)\\s*(?:min(?:ute)?s?)\\b", Pattern.CASE_INSENSITIVE);

  /** Everything {@code text} tells. */
  static StintCounts of(String text) {
    Map<Field, String> told = new EnumMap<>(Field.class);
    StringBuilder rest = new StringBuilder(Numbers.plain(text));
    Matcher minutes = MINUTES.matcher(rest);
    if (minutes.find()) {
      told.put(Field.MINUTES, minutes.group(1));
      rest.replace(minutes.start(), minutes.end(), String.valueOf(TAKEN));
    }
    Matcher counts = TOLD.matcher(rest.toString());
    StringBuilder left = new StringBuilder();
    int from = 0;
    while (counts.find()) {
      String word = first(counts.group(2), counts.group(3), counts.group(5));
      String number = first(counts.group(1), counts.group(4), counts.group(6));
      if (told.putIfAbsent(field(word.toLowerCase(Locale.ROOT)), digits(number)) == null) {
        left.append(rest, from, counts.start()).append(TAKEN);
        from = counts.end();
      }
    }
    return new StintCounts(told, left.append(rest, from, rest.length()).toString());
  }

  private static String first(String... groups) {
    for (String group : groups) {
      if (group != null) {
        return group;
      }
    }
    throw new IllegalArgumentException("no group matched");
  }

  private static Field field(String word) {
    return switch (word.substring(0, 3)) {
      case "hoo" -> Field.HOOKED;
      case "lan", "cau", "fis" -> Field.LANDED;
      case "los" -> Field.LOST;
      case "fol", "cha" -> Field.FOLLOWS;
      case "cas" -> Field.CASTS;
      default -> Field.TAKES;
    };
  }

  /** A number in digits, whether words or digits tell it. */
  static String digits(String number) {
    String word = number.toLowerCase(Locale.ROOT);
    return word.startsWith("no") || word.equals("nil")
        ? "0"
        : Optional.of(word).flatMap(Numbers::word).map(BigDecimal::toPlainString).orElse(word);
  }
}

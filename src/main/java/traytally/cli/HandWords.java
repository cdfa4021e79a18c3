package traytally.cli;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.plastic.Plastic;
import traytally.report.Words;

/**
 * The words of a by-hand command: the plastic, then how many.
 *
 * @param plastic the words that name it; may be blank
 * @param unit what the number counts, if it was said
 */
record HandWords(String plastic, int number, Optional<Unit> unit) {
  /** What a number counts. */
  enum Unit {
    PIECES,
    PACKS
  }

  /** More than any tray holds of one plastic: a slip of the hand (common practice). */
  static final int MOST = 10_000;

  private static final Pattern WORDS =
      Pattern.compile(
          "(?:(?<plastic>.*\\S)\\s+|)[x+]?(?<number>-?\\d+)x?"
              + "\\s*(?:(?<packs>packs?|pks?)|(?<pieces>pieces?|pcs?))?\\.?",
          Pattern.CASE_INSENSITIVE);

  /** Splits what was typed after the command's name. */
  static HandWords parse(List<String> typed, String example) {
    String text = String.join(" ", typed).strip();
    Matcher words = WORDS.matcher(text);
    if (!words.matches()) {
      throw new Refusal(
          Exit.USAGE,
          "say the plastic, then how many: \"" + text + "\" does not end in a number. " + example);
    }
    String digits = words.group("number");
    if (digits.startsWith("-") || digits.length() > 9 || Integer.parseInt(digits) > MOST) {
      throw new Refusal(Exit.DATA, digits + " is no number of pieces. Write 0 to " + MOST + ".");
    }
    Optional<Unit> unit =
        words.group("packs") != null
            ? Optional.of(Unit.PACKS)
            : Optional.ofNullable(words.group("pieces")).map(said -> Unit.PIECES);
    return new HandWords(
        Optional.ofNullable(words.group("plastic")).orElse(""), Integer.parseInt(digits), unit);
  }

  /** Refuses a last number that may as well be the plastic's length, its count forgotten. */
  void requireCountOf(Plastic plastic) {
    if (unit.isEmpty() && number == plastic.lengthMm() && number > 0) {
      throw new Refusal(
          Exit.DATA,
          "is "
              + number
              + " the length of "
              + plastic
              + ", or how many? Write the number after it, and what it counts: "
              + number
              + " pieces.");
    }
  }

  /** {@code 1 piece}, {@code 8 pieces}. */
  static String pieces(int count) {
    return Words.count(count, "piece");
  }
}

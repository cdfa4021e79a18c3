package traytally.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The first length of time that stands within a text: {@code 1h 30}, {@code half an hour}.
 *
 * @param minutes in whole minutes, empty if the text has none
 * @param words the time as it stands there
 * @param guess whether it is the least of two: {@code 2-3 hours}
 * @param rest the text with a line in place of it
 */
record TimeWithin(Optional<String> minutes, String words, boolean guess, String rest) {
  private static final String N = "(?:\\d{1,3}(?:[.,]\\d{1,2})?(?: \\d/\\d)?|\\d/\\d)";
  private static final String WORD = "(?:an?|one|two|three|four)";
  private static final String H = "(?:hours?|hrs?|h)\\b\\.?";
  private static final String M = "(?:minutes?|mins?|m)\\b\\.?";

  /** Two digits behind the hours are minutes, unless they count what comes next. */
  private static final String BARE_MINUTES = "\\d\\d\\b(?! ?[\\p{L}\"'/]|[.,:]\\d)";

  private static final String CLOCK = "\\d{1,2}(?:[:.]\\d\\d)?";

  private static final Pattern LEAST =
      Pattern.compile(
          "(?<![\\p{L}\\d.:/-])(\\d{1,3}(?:[.,]5| 1/2)?) ?(?:-|to|or) ?\\d{1,3}(?:[.,]5| 1/2)?"
              + " ?(hours?|hrs?|h|minutes?|mins?)\\b\\.?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern TIME =
      Pattern.compile(
          "(?<![\\p{L}\\d.:/-])(?<!\\d,)(?:(?:about|around|approx\\.?|~|for) ?)?("
              + String.join(
                  "|",
                  "(?:\\d{1,2}|" + WORD + ") ?" + H + " and a half",
                  "(?:\\d{1,2}|" + WORD + ") and a half " + H,
                  "(?:half|(?:a )?quarter of|three quarters of) an " + H,
                  "\\d{1,2} ?(?:hours?|hrs?|h)\\.? ?(?:and )?\\d{1,2} ?" + M,
                  "\\d{1,2} ?" + H + " ?" + BARE_MINUTES,
                  "\\d{1,2}h" + BARE_MINUTES,
                  "(?:" + N + "|" + WORD + ") ?" + H,
                  N + " ?(?:minutes?|mins?)\\b\\.?",
                  "\\d{1,2}:\\d\\d ?(?:am|pm)? ?(?:-|to|until|till) ?\\d{1,2}:\\d\\d ?(?:am|pm)?\\b",
                  CLOCK + " ?(?:am|pm)? ?(?:-|to|until|till) ?" + CLOCK + " ?(?:am|pm)\\b")
              + ")(?: (?:long|fished|fishing))?",
          Pattern.CASE_INSENSITIVE);

  /** The time within {@code text}, already plain. */
  static TimeWithin of(String text) {
    Matcher least = LEAST.matcher(text);
    if (least.find()) {
      return found(text, least, least.group(1) + " " + least.group(2), true);
    }
    Matcher time = TIME.matcher(text);
    while (time.find()) {
      TimeWithin within = found(text, time, time.group(1), false);
      if (within.minutes().isPresent()) {
        return within;
      }
    }
    return new TimeWithin(Optional.empty(), "", false, text);
  }

  private static TimeWithin found(String text, Matcher at, String time, boolean guess) {
    return Durations.minutes(time, Durations.Bare.MINUTES)
        .value()
        .map(minutes -> BigDecimal.valueOf(minutes).setScale(0, RoundingMode.HALF_UP))
        .map(
            minutes ->
                new TimeWithin(
                    Optional.of(minutes.toPlainString()),
                    at.group(),
                    guess,
                    text.substring(0, at.start()) + StintCounts.TAKEN + text.substring(at.end())))
        .orElse(new TimeWithin(Optional.empty(), "", false, text));
  }

  /** {@code text}, already plain, with every time in it that is no guess as so many minutes. */
  static String inMinutes(String text) {
    TimeWithin within = of(text);
    if (within.minutes().isEmpty() || within.guess()) {
      return text;
    }
    int start = text.indexOf(within.words());
    String behind = text.substring(start + within.words().length());
    return text.substring(0, start) + within.minutes().get() + " min" + inMinutes(behind);
  }
}

package traytally.render;

import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.regex.Pattern;

/** Sentences of the program's own, for people of every country. */
public final class Sentence {
  /** The point of a figure that stands alone: none of a file's name, a version or a date. */
  private static final Pattern POINT =
      Pattern.compile(
          "(?<=(?<![\\p{L}\\p{N}.,/_-])\\d{1,9})\\.(?=\\d+(?![\\p{L}\\p{N}]|[.,/_-]\\w))");

  private Sentence() {}

  /** The sentence with its figures written as {@code country} does. */
  public static String of(String text, Locale country) {
    DecimalFormatSymbols signs = DecimalFormatSymbols.getInstance(country);
    return signs.getZeroDigit() == '0'
        ? POINT.matcher(text).replaceAll(signs.getDecimalSeparator() + "")
        : text;
  }
}

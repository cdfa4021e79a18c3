package traytally.plastic;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A word people write in several ways: a maker, a body style, a colour, a water, a fish, a shop.
 *
 * <p>Two names are equal when they differ only in case, spacing and punctuation: {@code Motor Oil},
 * {@code motor-oil } and {@code MOTOR OIL} are one. The text is kept as it was first written.
 */
public final class Name implements Comparable<Name> {
  /** The name of something that was not named. */
  public static final Name BLANK = new Name("", "");

  // Spreadsheets are full of no-break spaces, which are no white space to Java.
  private static final Pattern SPACES = Pattern.compile("[\\s\\p{Z}]+");

  private final String text;
  private final String key;

  private Name(String text, String key) {
    this.text = text;
    this.key = key;
  }

  /** The name that {@code text} stands for; text without a letter, digit or symbol is blank. */
  public static Name of(String text) {
    String tidy = SPACES.matcher(text).replaceAll(" ").strip();
    String key = fold(tidy);
    return key.isEmpty() ? BLANK : new Name(tidy, key);
  }

  /** The text in the form that counts for equality: letters, marks, digits and pictures only. */
  private static String fold(String text) {
    // Lower case twice around the compatibility form, which may bring capitals of its own (U+2122).
    String flat =
        Normalizer.normalize(text.toLowerCase(Locale.ROOT), Normalizer.Form.NFKC)
            .toLowerCase(Locale.ROOT);
    StringBuilder key = new StringBuilder(flat.length());
    flat.codePoints().filter(Name::counts).forEach(key::appendCodePoint);
    // Marks that something stood between may now belong to one letter.
    return Normalizer.normalize(key, Normalizer.Form.NFKC);
  }

  private static boolean counts(int codePoint) {
    if (Character.isLetterOrDigit(codePoint)) {
      return true;
    }
    return switch (Character.getType(codePoint)) {
      case Character.NON_SPACING_MARK,
          Character.COMBINING_SPACING_MARK,
          Character.LETTER_NUMBER,
          Character.OTHER_NUMBER,
          Character.OTHER_SYMBOL ->
          true;
      default -> false;
    };
  }

  /** The name as it was written, tidied of outer and doubled spaces. */
  public String text() {
    return text;
  }

  /** The folded form: equal names have equal keys. */
  public String key() {
    return key;
  }

  public boolean isBlank() {
    return key.isEmpty();
  }

  @Override
  public int compareTo(Name other) {
    return key.compareTo(other.key);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Name name && key.equals(name.key);
  }

  @Override
  public int hashCode() {
    return key.hashCode();
  }

  @Override
  public String toString() {
    return text;
  }
}

package traytally.plastic;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A flat colour on screen.
 *
 * @param rgb 24 bits of sRGB (IEC 61966-2-1), red highest
 */
public record Swatch(int rgb) {
  private static final Pattern HEX = Pattern.compile("#?([0-9a-fA-F]{6})");

  public Swatch {
    if (rgb < 0 || rgb > 0xFFFFFF) {
      throw new IllegalArgumentException("not 24 bits: " + rgb);
    }
  }

  /** The swatch written as {@code #1a2b3c}, or empty if {@code text} is not one. */
  public static Optional<Swatch> parse(String text) {
    Matcher hex = HEX.matcher(text.strip());
    return hex.matches()
        ? Optional.of(new Swatch(Integer.parseInt(hex.group(1), 16)))
        : Optional.empty();
  }

  /** {@code #1a2b3c}. */
  @Override
  public String toString() {
    return String.format(Locale.ROOT, "#%06x", rgb);
  }
}

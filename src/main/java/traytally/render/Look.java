package traytally.render;

import java.util.Locale;

/**
 * How a person wants to see a report; machine formats are the same whatever it says.
 *
 * @param width columns of the terminal
 * @param colour whether bold and dim may be used
 * @param unit of lengths
 * @param locale of numbers in text for people
 * @param paper of printed workbooks
 */
public record Look(int width, boolean colour, LengthUnit unit, Locale locale, Paper paper) {
  /** Narrower than this, not even a label and its value fit on a line: common practice. */
  private static final int NARROWEST = 20;

  /** 80 columns (common practice where no terminal tells its width), no colour, mm, A4. */
  public static final Look PLAIN = new Look(80, false, LengthUnit.MM, Locale.ROOT, Paper.A4);

  public Look {
    width = Math.max(width, NARROWEST);
  }

  public Look withWidth(int columns) {
    return new Look(columns, colour, unit, locale, paper);
  }

  public Look withColour(boolean allowed) {
    return new Look(width, allowed, unit, locale, paper);
  }

  public Look withUnit(LengthUnit wanted) {
    return new Look(width, colour, wanted, locale, paper);
  }

  public Look withLocale(Locale wanted) {
    return new Look(width, colour, unit, wanted, paper);
  }

  public Look withPaper(Paper wanted) {
    return new Look(width, colour, unit, locale, wanted);
  }
}

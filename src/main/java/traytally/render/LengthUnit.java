package traytally.render;

import java.util.Optional;
import traytally.plastic.Plastic;
import traytally.plastic.Worded;

/** The unit an angler thinks of lengths in. */
public enum LengthUnit implements Worded {
  MM,
  IN;

  /** Soft plastics are sold in steps of a quarter inch: common practice. */
  private static final int STEPS_PER_INCH = 4;

  private static final String[] FRACTIONS = {"", "¼", "½", "¾"};

  /** The unit that {@code word} names, without regard to case. */
  public static Optional<LengthUnit> parse(String word) {
    return Worded.parse(values(), word);
  }

  /** A length as one says it: {@code 75 mm}, or to the nearest quarter {@code 3"}. */
  String say(double lengthMm) {
    if (this == MM) {
      return Math.round(lengthMm) + " mm";
    }
    long quarters = Math.round(lengthMm / Plastic.MM_PER_INCH * STEPS_PER_INCH);
    long inches = quarters / STEPS_PER_INCH;
    String fraction = FRACTIONS[(int) (quarters % STEPS_PER_INCH)];
    return (inches == 0 && !fraction.isEmpty() ? "" : inches) + fraction + "\"";
  }

  /** The number of a length in this unit, inches to the nearest quarter. */
  double number(double lengthMm) {
    return this == MM
        ? Math.round(lengthMm)
        : Math.round(lengthMm / Plastic.MM_PER_INCH * STEPS_PER_INCH) / (double) STEPS_PER_INCH;
  }

  /** A workbook's format for {@code number} of this unit, with no digits it does not need. */
  String pattern(double number) {
    if (this == MM) {
      return "0\" mm\"";
    }
    double halves = number * 2;
    String digits =
        number == Math.rint(number) ? "0" : halves == Math.rint(halves) ? "0.0" : "0.00";
    return digits + "\\\"";
  }
}

package traytally.render;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as programs read them: a point, no grouping, no exponent, no digits without meaning. */
final class MachineNumber {
  /** More digits than any estimate here bears out, and the same on every machine. */
  private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

  /** Below this a number is the dust of floating-point arithmetic. */
  private static final double DUST = 1e-12;

  /** Decimals of a chance in csv: a hundredth of a per cent is finer than any forecast here. */
  private static final int CHANCE_DECIMALS = 4;

  private MachineNumber() {}

  /** {@code number} to six significant digits, or to the whole where it has more of them. */
  static BigDecimal of(double number) {
    if (Math.abs(number) < DUST) {
      return BigDecimal.ZERO;
    }
    BigDecimal exact = BigDecimal.valueOf(number);
    BigDecimal rounded = exact.round(SIX_DIGITS);
    return tidy(rounded.scale() < 0 ? exact.setScale(0, RoundingMode.HALF_EVEN) : rounded);
  }

  /** A chance to four decimals. */
  static BigDecimal ofChance(double chance) {
    return tidy(BigDecimal.valueOf(chance).setScale(CHANCE_DECIMALS, RoundingMode.HALF_EVEN));
  }

  private static BigDecimal tidy(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }
}

package traytally.plastic;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;

/**
 * An amount of money, kept to the hundredth.
 *
 * @param cents hundredths of the currency's unit
 * @param currency an ISO 4217 currency
 */
public record Money(long cents, Currency currency) implements Comparable<Money> {

  /** No money, in {@code currency}. */
  public static Money zero(Currency currency) {
    return new Money(0, currency);
  }

  /**
   * The amount {@code units} of {@code currency}, rounded half up to the hundredth.
   *
   * @throws ArithmeticException if it does not fit
   */
  public static Money of(BigDecimal units, Currency currency) {
    return new Money(
        units.setScale(2, RoundingMode.HALF_UP).unscaledValue().longValueExact(), currency);
  }

  public Money plus(Money other) {
    return new Money(Math.addExact(cents, sameCurrency(other).cents), currency);
  }

  public Money minus(Money other) {
    return new Money(Math.subtractExact(cents, sameCurrency(other).cents), currency);
  }

  public Money times(int factor) {
    return new Money(Math.multiplyExact(cents, (long) factor), currency);
  }

  @Override
  public int compareTo(Money other) {
    return Long.compare(cents, sameCurrency(other).cents);
  }

  /** The amount with two decimals and a point, without the currency: {@code 12.50}. */
  public String amount() {
    return BigDecimal.valueOf(cents, 2).toPlainString();
  }

  private Money sameCurrency(Money other) {
    if (!currency.equals(other.currency)) {
      throw new IllegalArgumentException("two currencies: " + currency + " and " + other.currency);
    }
    return other;
  }

  @Override
  public String toString() {
    return amount() + " " + currency;
  }
}

package traytally.plastic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Currency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class MoneyTest {
  private static final Currency EUR = Currency.getInstance("EUR");
  private static final Currency GBP = Currency.getInstance("GBP");

  private static Money euros(String units) {
    return Money.of(new BigDecimal(units), EUR);
  }

  @ParameterizedTest
  @CsvSource({"6.95,695", "6.954,695", "6.955,696", "0,0", "-1.005,-101", "1E+3,100000"})
  void amountIsRoundedHalfUpToTheHundredth(String units, long cents) {
    assertEquals(new Money(cents, EUR), euros(units));
  }

  @Test
  void sumsAreExact() {
    assertEquals(euros("0.30"), euros("0.10").plus(euros("0.20")));
    assertEquals(euros("-0.10"), euros("0.10").minus(euros("0.20")));
    assertEquals(euros("20.85"), euros("6.95").times(3));
    assertEquals(euros("6.95"), Money.zero(EUR).plus(euros("6.95")));
  }

  @Test
  void twoCurrenciesDoNotMix() {
    Money pounds = new Money(100, GBP);
    assertThrows(IllegalArgumentException.class, () -> euros("1").plus(pounds));
    assertThrows(IllegalArgumentException.class, () -> euros("1").minus(pounds));
    assertThrows(IllegalArgumentException.class, () -> euros("1").compareTo(pounds));
  }

  @Test
  void moreThanFitsIsRefused() {
    Money most = new Money(Long.MAX_VALUE, EUR);
    assertThrows(ArithmeticException.class, () -> most.plus(euros("0.01")));
    assertThrows(ArithmeticException.class, () -> most.times(2));
    assertThrows(ArithmeticException.class, () -> euros("1E+17"));
  }

  @Test
  void amountAlwaysHasTwoDecimals() {
    assertEquals("12.50", euros("12.5").amount());
    assertEquals("0.05", euros("0.05").amount());
    assertEquals("-0.05", euros("-0.05").amount());
    assertEquals("12.50 EUR", euros("12.5").toString());
    assertTrue(euros("2").compareTo(euros("10")) < 0);
  }
}

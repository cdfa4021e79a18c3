package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.plastic.Finish;
import traytally.trip.Clarity;
import traytally.trip.LossCause;

/** The ways people write one value; the tables lie in {@code traytally/intake/*.csv}. */
final class ValuesTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 1);
  private static final Currency EUR = Currency.getInstance("EUR");

  @ParameterizedTest(name = "{0} is {1}")
  @CsvFileSource(resources = "/traytally/intake/numbers.csv", delimiter = '|')
  void numbersReadAsTyped(String text, String number) {
    Optional<BigDecimal> read =
        Numbers.parse(Numbers.plain(text)).map(BigDecimal::stripTrailingZeros);
    assertEquals(number, read.map(BigDecimal::toPlainString).orElse("no"));
  }

  @ParameterizedTest(name = "{0} is {1} mm")
  @CsvFileSource(resources = "/traytally/intake/lengths.csv", delimiter = '|', quoteCharacter = '~')
  void lengthsReadInMillimetres(String text, String mm) {
    String read =
        Lengths.parse(text)
            .map(length -> Lengths.mm(length, Lengths.Unit.MM))
            .map(told -> told.value().map(String::valueOf).orElse("absurd"))
            .orElse("no");
    assertEquals(mm, read);
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvFileSource(resources = "/traytally/intake/quantities.csv", delimiter = '|')
  void quantitiesReadAsPieces(String text, String pieces, String approximate) {
    Told<Integer> told = Quantities.parse(text, OptionalInt.of(8));
    assertEquals(pieces, told.value().map(String::valueOf).orElse("no"), told::wrong);
    assertEquals("about".equals(approximate), told.approximate());
    assertEquals(told.value().isEmpty(), told.isWrong());
  }

  @Test
  void packsOfUnknownSizeAreNoCount() {
    Told<Integer> told = Quantities.parse("2 packs", OptionalInt.empty());
    assertTrue(told.wrong().startsWith("counts packs"), told.wrong());
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvFileSource(resources = "/traytally/intake/amounts.csv", delimiter = '|')
  void amountsReadWithTheirCurrency(String text, String amount) {
    Told<Amounts.Written> told = Amounts.parse(text, EUR);
    String read =
        told.value()
            .map(
                sum ->
                    sum.units().setScale(2).toPlainString()
                        + sum.currency().map(c -> " " + c).orElse(""))
            .orElse("no");
    assertEquals(amount, read);
  }

  @ParameterizedTest(name = "{0} shows {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "[$£-809]#,##0.00|GBP",
        "#,##0.00 \"€\"|EUR",
        "[$$-409]#,##0.00|USD",
        "[$-809]0.00|no",
        "General|no",
        "[$CHF] 0.00|CHF"
      })
  void aNumberFormatMayShowTheCurrency(String format, String code) {
    assertEquals(code, Amounts.ofFormat(format, EUR).map(Currency::getCurrencyCode).orElse("no"));
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvFileSource(resources = "/traytally/intake/dates.csv", delimiter = '|')
  void datesReadInTheirPossibleOrders(String text, String dayFirst, String monthFirst) {
    Told<Dates.Written> told = Dates.parse(text, TODAY, OptionalInt.empty());
    assertEquals(
        dayFirst,
        told.value().flatMap(Dates.Written::dayFirst).map(LocalDate::toString).orElse("no"));
    assertEquals(
        monthFirst,
        told.value().flatMap(Dates.Written::monthFirst).map(LocalDate::toString).orElse("no"));
  }

  @ParameterizedTest(name = "{0} is {1} min, or {2} under a header of hours")
  @CsvFileSource(
      resources = "/traytally/intake/durations.csv",
      delimiter = '|',
      quoteCharacter = '~')
  void durationsReadInMinutes(String text, String minutes, String underHours) {
    assertEquals(minutes, read(Durations.minutes(text, Durations.Bare.MINUTES)));
    assertEquals(underHours, read(Durations.minutes(text, Durations.Bare.HOURS)));
  }

  private static String read(Told<Double> told) {
    return told.value()
        .map(m -> new BigDecimal(m).stripTrailingZeros().toPlainString())
        .orElse("no");
  }

  @ParameterizedTest(name = "bare {0} are {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "3 4 5|INCHES",
        "75 90 100|MM",
        "3 75|EACH_BY_SIZE",
        "15 20|CANNOT_TELL",
        "15 3|CANNOT_TELL",
        "7.5 10|CANNOT_TELL",
        "5 7.5 10|INCHES",
        "20 75|MM",
        "3 15 75|CANNOT_TELL"
      })
  void bareLengthsAreDecidedByTheWholeColumn(String numbers, Lengths.Bare decided) {
    List<BigDecimal> bare =
        java.util.Arrays.stream(numbers.split(" ", -1)).map(BigDecimal::new).toList();
    assertEquals(decided, Lengths.decide(bare));
  }

  @Test
  void clarityWordsOfOthersAreAnAssumption() {
    assertEquals(Optional.of(Clarity.CLOUDY), Words.clarity("Murky").value());
    assertEquals("\"Murky\" read as cloudy", Words.clarity("Murky").assumed());
    assertEquals("", Words.clarity("Dirty").assumed());
    assertTrue(Words.clarity("lovely").isWrong());
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "snag, SNAGGED",
    "Snagged, SNAGGED",
    "bite off, BITTEN_OFF",
    "bite-off, BITTEN_OFF",
    "torn, TORN",
    "cast off, CAST_OFF",
    "snagged on the wall, SNAGGED"
  })
  void lossWordsAreKnown(String words, LossCause cause) {
    assertEquals(Optional.of(cause), Words.lossCause(words));
  }

  @Test
  void aLossNobodyKnowsHasNoCause() {
    assertEquals(Optional.empty(), Words.lossCause("no idea"));
  }

  @Test
  void yesAndNoComeInManyWords() {
    for (String yes : List.of("yes", "Y", "x", "✓", "TRUE", "In stock", "1", "12")) {
      assertEquals(Optional.of(true), Words.yesNo(yes).value(), yes);
    }
    for (String no : List.of("no", "N", "sold out", "FALSE", "0", "Out of stock")) {
      assertEquals(Optional.of(false), Words.yesNo(no).value(), no);
    }
    assertTrue(Words.yesNo("perhaps").isWrong());
  }

  @Test
  void finishesAreKnownByOtherWords() {
    assertEquals(Optional.of(Finish.LUMINOUS), Words.finish("glow").value());
    assertEquals(Optional.of(Finish.LAMINATE), Words.finish("Two-tone").value());
  }

  @ParameterizedTest(name = "{0} and {1}: {2}")
  @CsvSource({
    "mtr oil, motor oil, true",
    "motor oli, motor oil, true",
    "oil motor, motor oil, true",
    "blk, black, true",
    "red, bed, false",
    "paddle 2, paddle 3, false",
    "white, pearl white, false",
    "tea, tan, false",
    "pin, pumpkin, false"
  })
  void nearMissesAreSlipsAndShortForms(String one, String other, boolean near) {
    assertEquals(
        near, Spelling.near(traytally.plastic.Name.of(one), traytally.plastic.Name.of(other)));
  }

  @ParameterizedTest(name = "{0} of 2025 is {1}")
  @CsvSource({
    "3/4, 2025-04-03",
    "13.4., 2025-04-13",
    "3 June, 2025-06-03",
    "29 Feb, no",
    "31/31, no",
    "3 June 2024, 2024-06-03"
  })
  void datesWithoutAYearAreOfTheYearKnown(String text, String date) {
    Told<Dates.Written> told = Dates.parse(text, TODAY, OptionalInt.of(2025));
    assertEquals(
        date, told.value().flatMap(Dates.Written::dayFirst).map(LocalDate::toString).orElse("no"));
  }

  @ParameterizedTest(name = "{0} is {2} where {1} is one's own")
  @CsvSource({
    "$, AUD, AUD",
    "$, EUR, USD",
    "kr, NOK, NOK",
    "kr, EUR, SEK",
    "kr, AUD, SEK",
    "$, NOK, USD",
    "quid, EUR, GBP",
    "euros, GBP, EUR",
    "dollars, EUR, USD",
    "chf, EUR, CHF",
    "abc, EUR, no"
  })
  void signsOfSeveralCurrenciesAreOnesOwn(String mark, String own, String code) {
    assertEquals(
        code,
        Amounts.currency(mark, Currency.getInstance(own))
            .map(Currency::getCurrencyCode)
            .orElse("no"));
  }

  @Test
  void blankWordsSayNothing() {
    assertEquals(Told.nothing(), Words.clarity(" "));
    assertEquals(Told.nothing(), Words.finish(" "));
    assertEquals(Told.nothing(), Words.yesNo(" "));
    assertTrue(Words.finish("woolly").isWrong());
    assertTrue(Words.yesNo("-1").isWrong());
    assertEquals(Told.assuming(false, "a number read as in stock"), Words.yesNo("0.0"));
  }

  @Test
  void lossWordsStandAsWholeWords() {
    assertEquals(Optional.empty(), Words.lossCause("snagless"));
    assertEquals(Optional.of(LossCause.TORN), Words.lossCause("tail, torn!"));
  }
}

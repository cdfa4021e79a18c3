package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.render.Examples.column;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.plastic.Money;
import traytally.report.Column.Kind;
import traytally.report.Report;
import traytally.report.Value;

class TableTextTest {
  private static String table(Report report, Look look) throws IOException {
    return Golden.text(report, Format.TABLE, look);
  }

  /** The only cell of a table: the line below the rule. */
  private static String cell(Kind kind, Value value, Look look) throws IOException {
    return table(Examples.single(kind, value), look).lines().skip(4).findFirst().orElse("").strip();
  }

  @ParameterizedTest
  @ValueSource(ints = {60, 80, 120, 200})
  void aShoppingListFitsTheTerminal(int width) throws IOException {
    Golden.assertSame(
        "restock-" + width + ".txt", table(Examples.restock(), Look.PLAIN.withWidth(width)));
  }

  @Test
  void namesOfAllScriptsStandUnderOneAnother() throws IOException {
    Golden.assertSame("names.txt", table(Examples.names(), Look.PLAIN));
  }

  @Test
  void noLineIsWiderThanTheTerminal() throws IOException {
    for (Report report : List.of(Examples.restock(), Examples.names())) {
      for (int width = 20; width <= 200; width += width < 80 ? 1 : 8) {
        for (String line : table(report, Look.PLAIN.withWidth(width)).lines().toList()) {
          assertTrue(DisplayWidth.of(line) <= width, width + ": " + line);
        }
      }
    }
  }

  @Test
  void numbersAreNeverCut() throws IOException {
    for (int width = 40; width <= 200; width += 5) {
      String table = table(Examples.restock(), Look.PLAIN.withWidth(width));
      for (String number : List.of("12.40", "93 %", "<1 %", "75 mm", "7.4", "31.15 EUR")) {
        assertTrue(table.contains(number), width + " lost " + number + "\n" + table);
      }
    }
  }

  @Test
  void theWidestTextIsWrappedFirst() throws IOException {
    Report report =
        Examples.table(
            List.of(
                column("body", "Body", Kind.TEXT),
                column("note", "Note", Kind.TEXT),
                column("pieces", "Pieces", Kind.WHOLE)),
            List.of(
                List.of(Value.of("paddle tail"), Value.of("bought on the quay"), Value.of(12))));
    String table = table(report, Look.PLAIN.withWidth(35));
    assertTrue(table.contains("paddle tail  bought on the       12\n             quay\n"), table);
  }

  @Test
  void textOfMoreThanSixLinesIsCut() throws IOException {
    Report report =
        Examples.table(
            List.of(column("note", "Note", Kind.TEXT), column("pieces", "Pieces", Kind.WHOLE)),
            List.of(List.of(Value.of("word ".repeat(100).strip()), Value.of(12))));
    List<String> lines = table(report, Look.PLAIN.withWidth(35)).lines().toList();
    assertEquals(4 + 6, lines.size(), lines.toString());
    assertTrue(lines.get(9).endsWith("…"), lines.toString());
  }

  @Test
  void everyTableEndsItsLastLine() throws IOException {
    assertTrue(table(Examples.restock(), Look.PLAIN).endsWith("\n"));
    assertTrue(table(Examples.names(), Look.PLAIN).endsWith("\n"));
  }

  @Test
  void colourAddsOnlyBoldAndDim() throws IOException {
    Look plain = Look.PLAIN.withWidth(120);
    String shown = table(Examples.restock(), plain.withColour(true));
    assertTrue(shown.contains("\u001b[1mShopping list"), shown);
    assertTrue(shown.contains("\u001b[2m- Use is reckoned"), shown);
    assertEquals(table(Examples.restock(), plain), shown.replaceAll("\u001b\\[[012]m", ""));
  }

  @Test
  void nothingInANameReachesTheTerminalAsACommand() throws IOException {
    String hostile = "red\u001b[2J\u009b31m\u0007\r\n\tgone\u202e\u2066\u200b\u00ad\ufeff";
    Report report =
        new Report(
            "box",
            hostile,
            Examples.DAY,
            List.of(new Report.Single(column("k", hostile, Kind.TEXT), Value.of(hostile))),
            List.of(column("it", hostile, Kind.TEXT)),
            List.of(List.of(Value.of(hostile))),
            List.of(new Report.Section(hostile, 0, 1, hostile)),
            List.of(hostile));
    for (int width : new int[] {20, 80}) {
      String table = table(report, Look.PLAIN.withWidth(width));
      assertTrue(table.contains("red [2J"), table);
      assertFalse(
          table.codePoints().anyMatch(c -> c != '\n' && Character.getType(c) == Character.CONTROL));
      assertFalse(table.codePoints().anyMatch(c -> Character.getType(c) == Character.FORMAT));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 %",
    "0.0001, <1 %",
    "0.005, 1 %",
    "0.1249, 12 %",
    "0.125, 13 %",
    "0.9949, 99 %",
    "0.995, >99 %",
    "1, 100 %"
  })
  void chancesAreWholePerCents(double chance, String words) throws IOException {
    assertEquals(words, cell(Kind.CHANCE, Value.of(chance), Look.PLAIN));
  }

  @ParameterizedTest
  @CsvSource({
    "75, 75 mm, 3\"",
    "76, 76 mm, 3\"",
    "90, 90 mm, 3½\"",
    "70, 70 mm, 2¾\"",
    "6, 6 mm, ¼\"",
    "1, 1 mm, 0\"",
    "127, 127 mm, 5\""
  })
  void lengthsAreSaidInTheAnglersUnit(long mm, String metric, String inches) throws IOException {
    assertEquals(metric, cell(Kind.LENGTH, Value.of(mm), Look.PLAIN));
    assertEquals(inches, cell(Kind.LENGTH, Value.of(mm), Look.PLAIN.withUnit(LengthUnit.IN)));
  }

  @Test
  void theOtherKindsHaveTheirWords() throws IOException {
    assertEquals("–", cell(Kind.LENGTH, Value.UNKNOWN, Look.PLAIN));
    assertEquals("yes", cell(Kind.YES_NO, Value.of(true), Look.PLAIN));
    assertEquals("no", cell(Kind.YES_NO, Value.of(false), Look.PLAIN));
    assertEquals("[ ]", cell(Kind.TICK, Value.UNKNOWN, Look.PLAIN));
    assertEquals("2026-05-01", cell(Kind.DATE, Value.of(Examples.DAY), Look.PLAIN));
    assertEquals("0.0", cell(Kind.DECIMAL, Value.of(-0.04), Look.PLAIN));
    assertEquals("1,234,567", cell(Kind.WHOLE, Value.of(1_234_567), Look.PLAIN));
    assertEquals("1.234,5", cell(Kind.DECIMAL, Value.of(1234.5), german()));
    assertEquals("1.234,50", cell(Kind.MONEY, Examples.sum("1234.5"), german()));
  }

  private static Look german() {
    return Look.PLAIN.withLocale(Locale.GERMANY);
  }

  @Test
  void eachAmountNamesItsCurrencyWhereThereAreSeveral() throws IOException {
    Money pounds = Money.of(new BigDecimal("4.95"), Currency.getInstance("GBP"));
    String table =
        table(
            Examples.table(
                List.of(column("pack_price", "Price", Kind.MONEY)),
                List.of(List.of(Value.of(pounds)), List.of(Examples.sum("5")))),
            Look.PLAIN);
    assertTrue(table.contains("4.95 GBP\n5.00 EUR"), table);
    assertFalse(table.contains("Price ("), table);
  }

  @Test
  void anEmptyListSaysSo() throws IOException {
    assertEquals(
        "Box · 2026-05-01\n\n(none)\n",
        table(Examples.table(List.of(column("it", "It", Kind.TEXT)), List.of()), Look.PLAIN));
  }
}

package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CellTest {
  @ParameterizedTest
  @CsvSource({
    "12.0, 12",
    "-3, -3",
    "0, 0",
    "-0.0, 0",
    "7.5, 7.5",
    "0.30000000000000004, 0.3",
    "76.2, 76.2",
    "123456789012, 123456789012",
    "1e15, 1000000000000000",
    "1e22, 1E+22",
    "0.001, 0.001"
  })
  void numbersAreShownAsTyped(double value, String shown) {
    assertEquals(shown, new Cell.Numeric(value, "General").shown());
  }

  @Test
  void aDayIsShownWithoutMidnight() {
    assertEquals("2024-05-03", new Cell.DateTime(LocalDateTime.of(2024, 5, 3, 0, 0)).shown());
    assertEquals(
        "2024-05-03 06:40", new Cell.DateTime(LocalDateTime.of(2024, 5, 3, 6, 40)).shown());
    assertEquals(
        "2024-05-03 06:40:09", new Cell.DateTime(LocalDateTime.of(2024, 5, 3, 6, 40, 9)).shown());
  }

  @Test
  void hoursMayPassADay() {
    assertEquals("26:30", new Cell.Time(Duration.ofMinutes(26 * 60 + 30)).shown());
    assertEquals("0:01:30", new Cell.Time(Duration.ofSeconds(90)).shown());
  }

  @Test
  void textOfBlanksIsSeenAsNothing() {
    assertTrue(new Cell.Text(" \t\u00A0\u202F").isBlank());
    assertFalse(new Cell.Text(" x").isBlank());
    assertTrue(Cell.text("").isBlank());
    assertEquals(Cell.blank(), Cell.text(""));
    assertThrows(IllegalArgumentException.class, () -> new Cell.Text(""));
  }

  @ParameterizedTest
  @CsvSource({"A1, 1, 0", "D14, 14, 3", "Z2, 2, 25", "AA2, 2, 26", "XFD1048576, 1048576, 16383"})
  void addressesAreReadAndShown(String text, int row, int column) {
    assertEquals(new Address(row, column), Address.parse(text));
    assertEquals(text, new Address(row, column).toString());
  }

  @ParameterizedTest
  @CsvSource({"''", "D", "14", "14D", "D0", "D1D", "D-1", "ZZZZZZZZZ1", "A99999999999"})
  void whatIsNoAddressIsRefused(String text) {
    assertThrows(IllegalArgumentException.class, () -> Address.parse(text));
  }

  @Test
  void rangesHoldTheirCorners() {
    CellRange range = CellRange.parse("$B$2:C4");
    assertTrue(range.contains(Address.parse("B2")));
    assertTrue(range.contains(Address.parse("C4")));
    assertFalse(range.contains(Address.parse("A2")));
    assertFalse(range.contains(Address.parse("B5")));
    assertEquals(range, CellRange.parse("C4:B2"));
    assertEquals("B2:C4", range.toString());
  }
}

package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CellFormatTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "General | NUMBER",
        "0.00 | NUMBER",
        "0\" mm\" | NUMBER",
        "#,##0.00 [$EUR] | NUMBER",
        "[Red]0;[Blue]-0 | NUMBER",
        "dd/mm/yyyy | DATE",
        "d mmm yy | DATE",
        "mmm | DATE",
        "mm/dd/yyyy hh:mm | DATE",
        "[$-809]dddd, d mmmm yyyy | DATE",
        "h:mm | TIME",
        "hh:mm:ss | TIME",
        "[h]:mm | TIME",
        "mm:ss | TIME",
        "h:mm AM/PM | TIME",
      })
  void aFormatSaysWhatANumberMeans(String code, CellFormat.Meaning meaning) {
    assertEquals(meaning, CellFormat.of(170, Optional.of(code)).meaning());
  }

  /** Built-in numbers of ECMA-376 part 1, 18.8.30. */
  @ParameterizedTest
  @CsvSource({"0, NUMBER", "2, NUMBER", "14, DATE", "20, TIME", "22, DATE", "31, DATE", "46, TIME"})
  void builtInFormatsNeedNoCode(int id, CellFormat.Meaning meaning) {
    assertEquals(meaning, CellFormat.of(id, Optional.empty()).meaning());
  }

  /**
   * Serials of the two systems: ECMA-376 part 1, 18.17.4.1, whose example day is 1 January 1904.
   */
  @ParameterizedTest
  @CsvSource({
    "1, false, 1900-01-01T00:00",
    "59, false, 1900-02-28T00:00",
    "61, false, 1900-03-01T00:00",
    "1462, false, 1904-01-01T00:00",
    "0, true, 1904-01-01T00:00",
    "45415.2777777, false, 2024-05-03T06:40",
    "43953.2777777, true, 2024-05-03T06:40"
  })
  void daysCountFrom1900Or1904(double serial, boolean from1904, LocalDateTime when) {
    assertEquals(
        new Cell.DateTime(when),
        new CellFormat("dd/mm/yyyy", CellFormat.Meaning.DATE).cell(serial, from1904));
  }

  @Test
  void hoursAreALengthOfTime() {
    CellFormat hours = new CellFormat("h:mm", CellFormat.Meaning.TIME);
    assertEquals(new Cell.Time(Duration.ofMinutes(550)), hours.cell(0.381944444444, false));
    assertEquals(new Cell.Time(Duration.ofHours(26)), hours.cell(26 / 24.0, false));
    assertEquals(new Cell.Numeric(-0.5, "h:mm"), hours.cell(-0.5, false));
  }

  @Test
  void aNumberNoCalendarHoldsStaysANumber() {
    CellFormat day = new CellFormat("dd/mm/yyyy", CellFormat.Meaning.DATE);
    assertEquals(new Cell.Numeric(1e9, "dd/mm/yyyy"), day.cell(1e9, false));
    assertEquals(new Cell.Numeric(-1, "dd/mm/yyyy"), day.cell(-1, false));
  }
}

package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.sheet.Workbook;

/** The rows not taken are given back as they were written. */
class ProblemRowsTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 1);

  @TempDir private Path folder;

  private List<GivenSheet> sheet(String name, String... lines) throws IOException {
    Path file = folder.resolve(name);
    Files.write(file, List.of(lines));
    try (Workbook workbook = Workbook.open(file)) {
      return GivenSheet.of(name, workbook);
    }
  }

  private static List<ProblemRows> problems(List<GivenSheet> sheets) {
    Recorder box = new Recorder();
    return ProblemRows.of(sheets, Import.read(sheets, box.book(), ImportOptions.NONE, TODAY));
  }

  @Test
  void onlyTheRowsNotTakenComeBackUnderTheirHeaders() throws IOException {
    List<ProblemRows> all =
        problems(
            sheet(
                "box.csv",
                "Body,Colour,Length mm,Count",
                "paddle,ink,75,3",
                "paddle,olive,75,a bucket",
                "craw,olive,75,2",
                "craw,rust,900,-4"));
    assertEquals(1, all.size());
    ProblemRows rows = all.get(0);
    assertEquals("box.csv", rows.file());
    assertEquals("", rows.sheet());
    assertEquals(List.of("Body", "Colour", "Length mm", "Count"), rows.headers());
    assertEquals(List.of(3, 5), rows.rows().stream().map(ProblemRows.Line::number).toList());
    assertEquals(List.of("paddle", "olive", "75", "a bucket"), rows.rows().get(0).cells());
    assertTrue(rows.rows().get(0).problem().startsWith("\"a bucket\" "), rows.toString());
    assertTrue(rows.rows().get(1).problem().contains("\"900\" would be 900 mm"), rows.toString());
    assertTrue(rows.rows().get(1).problem().contains("\"-4\" "), "both are said: " + rows);
  }

  @Test
  void sheetWithoutProblemsHasNoRows() throws IOException {
    List<GivenSheet> both =
        new ArrayList<>(sheet("a.csv", "Body,Colour,Length mm,Count", "paddle,ink,75,3"));
    assertEquals(List.of(), problems(both));
    both.addAll(sheet("b.csv", "Body,Colour,Length mm,Count", "craw,ink,75,3", "craw,olive,75,?x"));
    assertEquals(List.of("b.csv"), problems(both).stream().map(ProblemRows::file).toList());
  }

  private static Problem problem(String sheet, String column, String value) {
    return new Problem(
        "trips.xlsx", sheet, 14, column, value, "is no count.", Problem.Severity.PROBLEM);
  }

  @Test
  void sentenceSaysWhereAndWhat() {
    assertEquals(
        "trips.xlsx, Trips!D14: \"3 pk\" is no count.", problem("Trips", "D", "3 pk").sentence());
    assertEquals("trips.xlsx, row 14: is no count.", problem("", "", "").sentence());
    assertEquals("trips.xlsx, Trips!row 14", problem("Trips", "", "").place());
    assertEquals("approximate", Problem.Severity.APPROXIMATE.word());
  }

  @Test
  void headersSayTheirUnits() {
    assertEquals(Optional.of(Lengths.Unit.MM), ColumnHeader.of("Length (mm)").lengthUnit());
    assertEquals(Optional.of(Lengths.Unit.CM), ColumnHeader.of("Size, cm").lengthUnit());
    assertEquals(Optional.of(Lengths.Unit.INCH), ColumnHeader.of("Inches").lengthUnit());
    assertEquals(Optional.empty(), ColumnHeader.of("Time (h)").lengthUnit());
    assertEquals("length", ColumnHeader.of("Length (mm):").folded());
    assertTrue(ColumnHeader.of("Time (h)").saysHours());
    assertTrue(ColumnHeader.of("hours fished").saysHours());
    assertEquals(false, ColumnHeader.of("Time (min)").saysHours());
    assertTrue(ColumnHeader.of("Time (min)").saysMinutes());
    assertTrue(ColumnHeader.of("Mins").saysMinutes());
    assertEquals(false, ColumnHeader.of("Time (h)").saysMinutes());
    assertEquals(false, ColumnHeader.of("Where").saysHours());
  }
}

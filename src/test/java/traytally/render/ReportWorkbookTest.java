package traytally.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.render.Examples.column;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.poi.ooxml.POIXMLProperties.CoreProperties;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import traytally.report.Column.Kind;
import traytally.report.Report;
import traytally.report.Value;

class ReportWorkbookTest {
  private static final int HEADING = 3;

  private static byte[] bytes(List<Report> reports, Look look) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Rendering.workbook(reports, look, bytes);
    return bytes.toByteArray();
  }

  private static XSSFWorkbook open(Report report, Look look) throws IOException {
    return new XSSFWorkbook(new ByteArrayInputStream(bytes(List.of(report), look)));
  }

  /** What a reader sees, a line a row. */
  private static String shown(XSSFSheet sheet) {
    DataFormatter formatter = new DataFormatter(Locale.ROOT);
    StringBuilder text = new StringBuilder();
    for (int r = 0; r <= sheet.getLastRowNum(); r++) {
      Row row = sheet.getRow(r);
      List<String> cells = new ArrayList<>();
      for (int c = 0; row != null && c < row.getLastCellNum(); c++) {
        cells.add(formatter.formatCellValue(row.getCell(c)));
      }
      text.append((r + 1 + " | " + String.join(" | ", cells)).stripTrailing()).append('\n');
    }
    return text.toString();
  }

  @Test
  void aShoppingListIsASheetToCarry() throws IOException {
    try (XSSFWorkbook book = open(Examples.restock(), Look.PLAIN)) {
      assertEquals("Shopping list", book.getSheetName(0));
      Golden.assertSame("restock-xlsx.txt", shown(book.getSheetAt(0)));
    }
  }

  @Test
  void lengthsAreInInchesForThoseWhoThinkInThem() throws IOException {
    try (XSSFWorkbook book = open(Examples.restock(), Look.PLAIN.withUnit(LengthUnit.IN))) {
      Row row = book.getSheetAt(0).getRow(HEADING + 3);
      assertEquals("0.0\\\"", row.getCell(3).getCellStyle().getDataFormatString());
      assertEquals(3.5, row.getCell(3).getNumericCellValue());
    }
  }

  @Test
  void cellsAreRealNumbersDaysAndTexts() throws IOException {
    Report report =
        Examples.table(
            List.of(
                column("a", "A", Kind.TEXT),
                column("b", "B", Kind.DATE),
                column("c", "C", Kind.MONEY),
                column("d", "D", Kind.CHANCE),
                column("e", "E", Kind.WHOLE),
                column("f", "F", Kind.YES_NO),
                column("g", "", Kind.TEXT)),
            List.of(
                List.of(
                    Value.of("12"),
                    Value.of(Examples.DAY),
                    Examples.sum("4.95"),
                    Value.of(0.125),
                    Value.UNKNOWN,
                    Value.of(true),
                    Value.of("for programs"))));
    try (XSSFWorkbook book = open(report, Look.PLAIN)) {
      Row row = book.getSheetAt(0).getRow(3);
      assertEquals("12", row.getCell(0).getStringCellValue());
      assertTrue(DateUtil.isCellDateFormatted(row.getCell(1)));
      assertEquals(Examples.DAY.atStartOfDay(), row.getCell(1).getLocalDateTimeCellValue());
      assertEquals(4.95, row.getCell(2).getNumericCellValue());
      assertEquals("#,##0.00", row.getCell(2).getCellStyle().getDataFormatString());
      assertEquals(0.125, row.getCell(3).getNumericCellValue());
      assertEquals(CellType.BLANK, row.getCell(4).getCellType());
      assertEquals("yes", row.getCell(5).getStringCellValue());
      assertEquals(6, row.getLastCellNum());
    }
  }

  @Test
  void noTextBecomesAFormulaAndAllSurvive() throws IOException {
    List<String> texts =
        List.of(
            "=1+1",
            "+1",
            "-1",
            "@SUM(1)",
            "\t=1",
            "\r=1",
            "＝1",
            "'=1",
            "3-1",
            "_x0041_",
            "_x005F_",
            "a\u001b\u0007b",
            "line\nbreak",
            " spaced ",
            "a\\b",
            "3\" paddle",
            "🐟 モー",
            "<&>\uFFFE");
    List<List<Value>> rows = texts.stream().map(t -> List.of(Value.of(t))).toList();
    try (XSSFWorkbook book =
        open(Examples.table(List.of(column("it", "It", Kind.TEXT)), rows), Look.PLAIN)) {
      for (int i = 0; i < texts.size(); i++) {
        Cell cell = book.getSheetAt(0).getRow(3 + i).getCell(0);
        assertEquals(CellType.STRING, cell.getCellType());
        assertEquals(texts.get(i), cell.getStringCellValue());
        assertTrue(cell.getCellStyle().getQuotePrefixed());
      }
    }
  }

  @Test
  void titlesAndNotesAreInertToo() throws IOException {
    Report report =
        new Report(
            "box",
            "=1+1 & co",
            Examples.DAY,
            List.of(),
            List.of(column("it", "=2", Kind.TEXT)),
            List.of(List.of(Value.of("x"))),
            List.of(new Report.Section("=3", 0, 1, "=4")),
            List.of("=5"));
    try (XSSFWorkbook book = open(report, Look.PLAIN)) {
      XSSFSheet sheet = book.getSheetAt(0);
      assertEquals("=1+1 && co · 2026-05-01", sheet.getFooter().getLeft());
      for (Row row : sheet) {
        row.forEach(cell -> assertFalse(cell.getCellType() == CellType.FORMULA));
      }
      assertEquals("=5", sheet.getRow(sheet.getLastRowNum()).getCell(0).getStringCellValue());
    }
  }

  @Test
  void theSheetIsReadyToPrint() throws IOException {
    try (XSSFWorkbook book = open(Examples.restock(), Look.PLAIN)) {
      XSSFSheet sheet = book.getSheetAt(0);
      assertEquals(PrintSetup.A4_PAPERSIZE, sheet.getPrintSetup().getPaperSize());
      assertTrue(sheet.getPrintSetup().getLandscape());
      assertTrue(sheet.getFitToPage());
      assertEquals(1, sheet.getPrintSetup().getFitWidth());
      assertEquals(0, sheet.getPrintSetup().getFitHeight());
      assertEquals(HEADING, sheet.getRepeatingRows().getFirstRow());
      assertEquals(HEADING, sheet.getRepeatingRows().getLastRow());
      assertEquals(HEADING + 1, sheet.getPaneInformation().getHorizontalSplitPosition());
      assertEquals("A4:L13", sheet.getCTWorksheet().getAutoFilter().getRef());
      assertEquals("Page &P of &N", sheet.getFooter().getRight());
    }
    try (XSSFWorkbook book = open(Examples.names(), Look.PLAIN.withPaper(Paper.LETTER))) {
      PrintSetup setup = book.getSheetAt(0).getPrintSetup();
      assertEquals(PrintSetup.LETTER_PAPERSIZE, setup.getPaperSize());
      assertFalse(setup.getLandscape());
    }
  }

  @Test
  void theFileSaysWhenAndByWhatItWasMade() throws IOException {
    try (XSSFWorkbook book = open(Examples.restock(), Look.PLAIN)) {
      CoreProperties core = book.getProperties().getCoreProperties();
      assertEquals("traytally", core.getCreator());
      assertEquals("2026-05-01T00:00:00Z", core.getCreated().toInstant().toString());
      assertEquals("2026-05-01T00:00:00Z", core.getModified().toInstant().toString());
      assertEquals("Shopping list · 2026-05-01", core.getTitle());
    }
  }

  @Test
  void twoRunsGiveTheSameBytesInAnyTimeZone() throws IOException {
    List<Report> reports = List.of(Examples.restock(), Examples.names());
    TimeZone before = TimeZone.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
      byte[] first = bytes(reports, Look.PLAIN);
      TimeZone.setDefault(TimeZone.getTimeZone("America/Anchorage"));
      assertArrayEquals(first, bytes(reports, Look.PLAIN));
    } finally {
      TimeZone.setDefault(before);
    }
  }

  @Test
  void eachReportHasASheetOfItsOwnName() throws IOException {
    String odd = "What: the [whole] box / of the guide at the estuary";
    List<Report> reports = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      reports.add(
          new Report(
              "box", odd, LocalDate.EPOCH, List.of(), List.of(), List.of(), List.of(), List.of()));
    }
    try (XSSFWorkbook book =
        new XSSFWorkbook(new ByteArrayInputStream(bytes(reports, Look.PLAIN)))) {
      assertEquals("What  the  whole  box   of the ", book.getSheetName(0));
      assertEquals("What  the  whole  box   of th 2", book.getSheetName(1));
      assertEquals("What  the  whole  box   of th 3", book.getSheetName(2));
    }
  }

  @Test
  void aLongLedgerLosesNoRow() throws IOException {
    List<List<Value>> rows = new ArrayList<>();
    for (int i = 0; i < 3_000; i++) {
      rows.add(Examples.named("paddle tail", "colour " + i, i));
    }
    Report report = Examples.table(Examples.names().columns(), rows);
    try (XSSFWorkbook book = open(report, Look.PLAIN)) {
      for (int i = 0; i < rows.size(); i++) {
        Row row = book.getSheetAt(0).getRow(3 + i);
        assertEquals("colour " + i, row.getCell(1).getStringCellValue());
        assertEquals(i, row.getCell(2).getNumericCellValue());
      }
    }
  }

  @Test
  void aTextThatNoCellCanHoldIsCutInSight() throws IOException {
    Report report = Examples.single(Kind.TEXT, Value.of("=".repeat(40_000)));
    try (XSSFWorkbook book = open(report, Look.PLAIN)) {
      String text = book.getSheetAt(0).getRow(3).getCell(0).getStringCellValue();
      assertEquals(32_767, text.length());
      assertTrue(text.endsWith("=…"));
      assertEquals(409, book.getSheetAt(0).getRow(3).getHeightInPoints());
    }
  }
}

package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One workbook written by POI in the old and the new form must read alike. */
class PoiWorkbookTest {
  @TempDir Path folder;

  private Path write(boolean old) throws IOException {
    Path file = folder.resolve("misnamed.csv");
    try (org.apache.poi.ss.usermodel.Workbook workbook =
            old ? new HSSFWorkbook() : new XSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      fill(workbook);
      workbook.createSheet("Spare").createRow(3).createCell(1).setCellValue("hoard");
      workbook.setSheetVisibility(1, SheetVisibility.HIDDEN);
      workbook.write(out);
    }
    return file;
  }

  private static void fill(org.apache.poi.ss.usermodel.Workbook workbook) {
    org.apache.poi.ss.usermodel.Sheet sheet = workbook.createSheet("Box");
    org.apache.poi.ss.usermodel.Row first = sheet.createRow(0);
    first.createCell(0).setCellValue("Paddle tail");
    first.createCell(1).setCellValue(12);
    first.createCell(2).setCellValue(true);
    CellStyle day = workbook.createCellStyle();
    day.setDataFormat(workbook.createDataFormat().getFormat("dd/mm/yyyy"));
    first.createCell(3).setCellValue(LocalDateTime.of(2024, 5, 3, 0, 0));
    first.getCell(3).setCellStyle(day);
    CellStyle hours = workbook.createCellStyle();
    hours.setDataFormat(workbook.createDataFormat().getFormat("h:mm"));
    first.createCell(4).setCellValue(0.0625);
    first.getCell(4).setCellStyle(hours);
    CellStyle lengths = workbook.createCellStyle();
    lengths.setDataFormat(workbook.createDataFormat().getFormat("0\" mm\""));
    first.createCell(5).setCellValue(75);
    first.getCell(5).setCellStyle(lengths);

    org.apache.poi.ss.usermodel.Row hidden = sheet.createRow(2);
    hidden.setZeroHeight(true);
    hidden.createCell(1).setCellErrorValue(FormulaError.DIV0.getCode());
    org.apache.poi.ss.usermodel.Row formulas = sheet.createRow(40);
    formulas.createCell(0).setCellFormula("B1*2");
    formulas.createCell(1).setCellFormula("A1&\" x\"");
    formulas.createCell(2).setCellFormula("B1>2");
    formulas.createCell(3).setCellFormula("1/0");
    workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
    sheet.getRow(0).getCell(1).setCellValue(13); // the stored results are now stale, and stay so
    sheet.addMergedRegion(new CellRangeAddress(4, 6, 0, 1));
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void oldAndNewFormsReadAlike(boolean old) throws IOException {
    List<Row> rows = Reader.rows(write(old));
    assertEquals(
        new Row(
            1,
            List.of(
                new Cell.Text("Paddle tail"),
                new Cell.Numeric(13, "General"),
                new Cell.Bool(true),
                new Cell.DateTime(LocalDateTime.of(2024, 5, 3, 0, 0)),
                new Cell.Time(Duration.ofMinutes(90)),
                new Cell.Numeric(75, "0\" mm\"")),
            false),
        rows.get(0));
    assertEquals(
        new Row(3, List.of(Cell.blank(), new Cell.ErrorValue("#DIV/0!")), true), rows.get(1));
    assertEquals(
        new Row(
            41,
            List.of(
                new Cell.Numeric(24, "General"),
                new Cell.Text("Paddle tail x"),
                new Cell.Bool(true),
                new Cell.ErrorValue("#DIV/0!")),
            false),
        rows.get(2));
    assertEquals(new Row(4, List.of(Cell.blank(), new Cell.Text("hoard")), false), rows.get(3));
    assertEquals(4, rows.size());
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void tabsAndMergedAreasAreListed(boolean old) throws IOException {
    try (Workbook workbook = Workbook.open(write(old))) {
      assertEquals(
          List.of(new Sheet(0, "Box", false), new Sheet(1, "Spare", true)), workbook.sheets());
      try (Rows rows = workbook.rows(workbook.sheets().get(0))) {
        rows.forEachRemaining(row -> {});
        assertEquals(List.of(CellRange.parse("A5:B7")), rows.merges());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aRowIsStruckOutIfAllThatStandsInItIs(boolean old) throws IOException {
    Path file = folder.resolve(old ? "struck.xls" : "struck.xlsx");
    try (org.apache.poi.ss.usermodel.Workbook workbook =
            old ? new HSSFWorkbook() : new XSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      // More fonts than four, as .xls leaves a number out there.
      List<CellStyle> plain = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        plain.add(style(workbook, false));
      }
      CellStyle struck = style(workbook, true);
      plain.add(style(workbook, false));
      org.apache.poi.ss.usermodel.Sheet sheet = workbook.createSheet("Box");
      for (int i = 0; i < plain.size(); i++) {
        org.apache.poi.ss.usermodel.Row row = sheet.createRow(2 * i);
        row.createCell(0).setCellValue("tea");
        row.getCell(0).setCellStyle(plain.get(i));
        row.createCell(1).setCellValue(3);
        row.getCell(1).setCellStyle(struck);
        org.apache.poi.ss.usermodel.Row gone = sheet.createRow(2 * i + 1);
        gone.createCell(0).setCellValue("rust");
        gone.getCell(0).setCellStyle(struck);
        gone.createCell(1).setCellStyle(plain.get(i));
      }
      workbook.write(out);
    }
    List<Boolean> struck = new ArrayList<>();
    Reader.rows(file).forEach(row -> struck.add(row.struck()));
    assertEquals(
        Collections.nCopies(7, List.of(false, true)).stream().flatMap(List::stream).toList(),
        struck);
  }

  private static CellStyle style(org.apache.poi.ss.usermodel.Workbook workbook, boolean struck) {
    Font font = workbook.createFont();
    font.setStrikeout(struck);
    CellStyle style = workbook.createCellStyle();
    style.setFont(font);
    return style;
  }
}

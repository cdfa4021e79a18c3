package traytally.intake;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A workbook as it stands in a text: a line a row, cells apart by {@code |}. Numbers, days ({@code
 * 2024-05-03}), times ({@code 09:10}) and errors ({@code #N/A}) are typed cells, {@code '12} is
 * text, {@code f:A1+B1:7} a formula with the result kept. Lines that begin with {@code !} are
 * {@code !sheet NAME}, {@code !hidden} (the tab), {@code !hide ROW}, {@code !strike ROW}, {@code
 * !merge A1:B2} and {@code !1904} (the file counts days from 1904).
 */
final class WrittenWorkbook {
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");
  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");
  private static final Pattern TIME = Pattern.compile("\\d\\d:\\d\\d");
  private static final Pattern FORMULA = Pattern.compile("f:(.+):(-?[\\d.]+)");
  private static final int SECONDS_A_DAY = 86_400;

  private final XSSFWorkbook book = new XSSFWorkbook();
  private final CellStyle day = style("d mmm yyyy");
  private final CellStyle time = style("h:mm");
  private final CellStyle struck = struck();

  private WrittenWorkbook() {}

  private CellStyle style(String format) {
    CellStyle style = book.createCellStyle();
    style.setDataFormat(book.createDataFormat().getFormat(format));
    return style;
  }

  private CellStyle struck() {
    Font font = book.createFont();
    font.setStrikeout(true);
    CellStyle style = book.createCellStyle();
    style.setFont(font);
    return style;
  }

  /** Writes the workbook that the text in {@code cells} describes to {@code xlsx}. */
  static void write(Path cells, Path xlsx) throws IOException {
    WrittenWorkbook written = new WrittenWorkbook();
    try (XSSFWorkbook book = written.book;
        OutputStream out = Files.newOutputStream(xlsx)) {
      Files.readAllLines(cells).forEach(written::line);
      book.write(out);
    }
  }

  private XSSFSheet sheet() {
    return book.getSheetAt(book.getNumberOfSheets() - 1);
  }

  private void line(String line) {
    String rest = line.replaceFirst("^!\\w+ ?", "");
    if (line.startsWith("!sheet")) {
      book.createSheet(rest);
    } else if (line.startsWith("!hidden")) {
      book.setSheetHidden(book.getNumberOfSheets() - 1, true);
    } else if (line.startsWith("!hide")) {
      sheet().getRow(Integer.parseInt(rest) - 1).setZeroHeight(true);
    } else if (line.startsWith("!strike")) {
      sheet().getRow(Integer.parseInt(rest) - 1).forEach(cell -> cell.setCellStyle(struck));
    } else if (line.startsWith("!merge")) {
      sheet().addMergedRegion(CellRangeAddress.valueOf(rest));
    } else if (line.startsWith("!1904")) {
      book.getCTWorkbook().getWorkbookPr().setDate1904(true);
    } else {
      int next = sheet().getPhysicalNumberOfRows();
      Row row = sheet().createRow(next);
      String[] texts = line.split("\\|", -1);
      for (int column = 0; column < texts.length; column++) {
        if (!texts[column].isEmpty()) {
          fill(row.createCell(column), texts[column].strip());
        }
      }
    }
  }

  private void fill(Cell cell, String text) {
    Matcher formula = FORMULA.matcher(text);
    if (formula.matches()) {
      cell.setCellFormula(formula.group(1));
      cell.setCellValue(Double.parseDouble(formula.group(2)));
    } else if (NUMBER.matcher(text).matches()) {
      cell.setCellValue(Double.parseDouble(text));
    } else if (DAY.matcher(text).matches()) {
      cell.setCellValue(LocalDate.parse(text));
      cell.setCellStyle(day);
    } else if (TIME.matcher(text).matches()) {
      cell.setCellValue(LocalTime.parse(text).toSecondOfDay() / (double) SECONDS_A_DAY);
      cell.setCellStyle(time);
    } else if (text.startsWith("#") && text.matches("#[A-Z/0!]+")) {
      cell.setCellErrorValue(FormulaError.forString(text).getCode());
    } else {
      cell.setCellValue(text.replaceFirst("^'", ""));
    }
  }
}

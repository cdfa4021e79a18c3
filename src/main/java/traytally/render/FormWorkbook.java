package traytally.render;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import traytally.report.Column;
import traytally.report.Value;
import traytally.sheet.InertText;

/** A sheet to fill in as a workbook, with a sheet of instructions behind it. */
final class FormWorkbook {
  static final String INSTRUCTIONS = "Instructions";

  /** Rows that offer their choices: more than an angler logs in years; chosen freely. */
  private static final int ROWS_WITH_CHOICES = 5_000;

  /** The first day of 2000: a spreadsheet counts days from 1900. */
  private static final String EARLIEST_DAY = "36526";

  private static final int NARROWEST = 10;
  private static final int WIDEST = 30;
  private static final int AIR = 3;
  private static final int WORDS_WIDTH = 18;
  private static final int NEEDED_WIDTH = 10;
  private static final int ADVICE_WIDTH = 76;
  private static final float LINE_POINTS = 15;
  private static final float HEADING_POINTS = 20;

  private final SheetForm form;
  private final SXSSFWorkbook book;
  private final CellStyles styles;

  private FormWorkbook(SheetForm form, SXSSFWorkbook book) {
    this.form = form;
    this.book = book;
    this.styles = new CellStyles(book.getXSSFWorkbook());
  }

  /** Writes {@code form} with {@code rows}; {@code out} stays open. */
  static void write(SheetForm form, List<List<Value>> rows, LocalDate day, OutputStream out)
      throws IOException {
    try (SXSSFWorkbook book = WorkbookFile.begin()) {
      FormWorkbook writing = new FormWorkbook(form, book);
      writing.sheet(rows);
      writing.instructions();
      WorkbookFile.write(book, form.name(), day, out);
    }
  }

  private void sheet(List<List<Value>> rows) throws IOException {
    SXSSFSheet sheet = book.createSheet(form.name());
    SheetPage page = new SheetPage(sheet, Paper.A4);
    int[] widths = widths(rows);
    page.columns(widths);
    page.headingAt(0, widths.length);
    page.foot(form.name());
    Row heading = sheet.createRow(0);
    heading.setHeightInPoints(HEADING_POINTS);
    for (int i = 0; i < widths.length; i++) {
      Heading column = form.headings().get(i);
      sheet.setDefaultColumnStyle(i, toFill(column.kind()));
      put(heading, i, column.words(), styles.heading(false, column.required()));
      guide(sheet, i, column, rows.size());
    }
    for (int r = 0; r < rows.size(); r++) {
      Row row = sheet.createRow(r + 1);
      for (int i = 0; i < widths.length; i++) {
        fill(row.createCell(i), form.headings().get(i).kind(), rows.get(r).get(i));
      }
    }
    page.filter(0, Math.max(1, rows.size()), widths.length);
    SheetPage.finish(sheet);
  }

  private int[] widths(List<List<Value>> rows) {
    int[] widths = new int[form.headings().size()];
    for (int i = 0; i < widths.length; i++) {
      widths[i] = Math.max(NARROWEST, DisplayWidth.of(form.headings().get(i).words()) + AIR);
      for (List<Value> row : rows) {
        String text = row.get(i) instanceof Value.Text words ? Wording.clean(words.text()) : "";
        widths[i] = Math.max(widths[i], Math.min(WIDEST, DisplayWidth.of(text) + AIR));
      }
    }
    return widths;
  }

  /**
   * The look of empty cells. Words stay as typed: {@code 3-1} is no date and {@code =} no formula.
   * Numbers are left general, so that {@code 1:30} and {@code 2 packs} show what was typed.
   */
  private CellStyle toFill(Column.Kind kind) {
    return switch (kind) {
      case TEXT, SENTENCE -> styles.toFill(CellStyles.AS_TYPED);
      case DATE -> styles.toFill(CellStyles.DAY);
      case MONEY -> styles.toFill("0.00");
      case WHOLE, DECIMAL, CHANCE, LENGTH, YES_NO, TICK, SWATCH -> styles.toFill("General");
    };
  }

  /**
   * Says what belongs into a column where one of its cells is chosen, and offers its choices in a
   * list that pops down; other words and odd dates are questioned, not refused.
   */
  private static void guide(SXSSFSheet sheet, int column, Heading heading, int rows) {
    DataValidationHelper helper = sheet.getDataValidationHelper();
    List<String> choices = heading.choices();
    DataValidationConstraint wanted =
        !choices.isEmpty()
            ? helper.createExplicitListConstraint(choices.toArray(String[]::new))
            : heading.kind() == Column.Kind.DATE
                ? helper.createDateConstraint(
                    DataValidationConstraint.OperatorType.GREATER_OR_EQUAL,
                    EARLIEST_DAY,
                    "",
                    CellStyles.DAY)
                : helper.createCustomConstraint("TRUE");
    DataValidation guide =
        helper.createValidation(
            wanted, new CellRangeAddressList(1, rows + ROWS_WITH_CHOICES, column, column));
    guide.setErrorStyle(DataValidation.ErrorStyle.WARNING);
    guide.setShowErrorBox(true);
    guide.createErrorBox(
        "Is that right?",
        choices.isEmpty() ? heading.advice() : "Expected: " + String.join(", ", choices) + ".");
    guide.setShowPromptBox(true);
    guide.createPromptBox(heading.words(), heading.advice());
    sheet.addValidationData(guide);
  }

  private void fill(Cell cell, Column.Kind kind, Value value) {
    cell.setCellStyle(toFill(kind));
    if (value instanceof Value.Text text) {
      if (!text.text().isEmpty()) {
        cell.setCellValue(WorkbookText.of(InertText.writeCell(text.text())));
      }
      cell.setCellStyle(styles.wordsAsTyped());
    } else if (value instanceof Value.Whole whole) {
      cell.setCellValue((double) whole.number());
    } else if (value instanceof Value.Decimal decimal) {
      cell.setCellValue(decimal.number());
    } else if (value instanceof Value.Sum sum) {
      cell.setCellValue(sum.money().cents() / 100.0);
    } else if (value instanceof Value.Day day) {
      cell.setCellValue(day.date());
    } else if (value instanceof Value.YesNo answer) {
      cell.setCellValue(answer.yes() ? "yes" : "no");
    }
  }

  private void instructions() throws IOException {
    SXSSFSheet sheet = book.createSheet(INSTRUCTIONS);
    SheetPage page = new SheetPage(sheet, Paper.A4);
    int[] widths = {WORDS_WIDTH, NEEDED_WIDTH, ADVICE_WIDTH};
    page.columns(widths);
    sheet.getPrintSetup().setLandscape(false);
    page.foot(form.name() + ": instructions");
    int next = 0;
    put(sheet.createRow(next++), 0, "How to fill in the sheet " + form.name(), styles.title());
    int total = WORDS_WIDTH + NEEDED_WIDTH + ADVICE_WIDTH;
    for (String sentence : form.purpose()) {
      Row row = sheet.createRow(next);
      row.setHeightInPoints(LINE_POINTS * DisplayWidth.wrap(sentence, total).size());
      put(row, 0, sentence, styles.facts());
      sheet.addMergedRegion(new CellRangeAddress(next, next, 0, widths.length - 1));
      next++;
    }
    next++;
    Row heading = sheet.createRow(next++);
    put(heading, 0, "Column", styles.heading(false));
    put(heading, 1, "Needed", styles.heading(false));
    put(heading, 2, "What to write", styles.heading(false));
    for (Heading column : form.headings()) {
      Row row = sheet.createRow(next++);
      String advice = advice(column);
      row.setHeightInPoints(LINE_POINTS * DisplayWidth.wrap(advice, ADVICE_WIDTH).size() + AIR);
      put(row, 0, column.words(), styles.words());
      put(row, 1, column.required() ? "yes" : "", styles.words());
      put(row, 2, advice, styles.words());
    }
    SheetPage.finish(sheet);
  }

  private static String advice(Heading column) {
    return column.choices().isEmpty()
        ? column.advice()
        : column.advice() + " One of: " + String.join(", ", column.choices()) + ".";
  }

  private static void put(Row row, int column, String text, CellStyle style) {
    Cell cell = row.createCell(column);
    cell.setCellValue(WorkbookText.of(text));
    cell.setCellStyle(style);
  }
}

package traytally.render;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.ConditionalFormattingRule;
import org.apache.poi.ss.usermodel.ConditionalFormattingThreshold;
import org.apache.poi.ss.usermodel.DataBarFormatting;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.SheetConditionalFormatting;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import traytally.plastic.Money;
import traytally.report.Chart;
import traytally.report.Column;
import traytally.report.Report;
import traytally.report.Value;

/** A report on one sheet of a workbook: title, facts, heading, rows, sums, notes. */
final class ReportSheet {
  private static final String BETWEEN_FACTS = "   ";

  /** Height of a line of text of 11 points: what spreadsheet programs give it. */
  private static final float LINE_POINTS = 15;

  /** Room to tick a box with a wet pencil; chosen by eye. */
  private static final float ROW_POINTS = 20;

  /** The tallest a row can be: the limit spreadsheet programs publish. */
  private static final float TALLEST = 409;

  /** Columns of text that titles and notes have, however narrow the table is; chosen by eye. */
  private static final int NARROWEST = 72;

  /** Columns of text in a column whose width nobody sets. */
  private static final int UNSET_WIDTH = 8;

  private static final float TITLE_LINE_POINTS = 22;
  private static final float NOTE_LINE_POINTS = 12.5f;

  /** Columns of text at 16 and at 9 points for one at 11. */
  private static final double TITLE_SCALE = 11.0 / 16;

  private static final double NOTE_SCALE = 11.0 / 9;

  private final Report report;
  private final Optional<Chart> chart;
  private final Wording wording;
  private final Look look;
  private final CellStyles styles;
  private final SXSSFSheet sheet;
  private final Grid grid;
  private final int[] widths;
  private final int spanned;
  private final int total;
  private boolean linked;
  private int next;

  ReportSheet(
      Report report,
      Optional<Chart> chart,
      Wording wording,
      Look look,
      CellStyles styles,
      SXSSFSheet sheet) {
    this.report = report;
    this.chart = chart;
    this.wording = wording;
    this.look = look;
    this.styles = styles;
    this.sheet = sheet;
    this.grid = Grid.of(report, wording);
    this.widths = SheetPage.columnWidths(grid);
    int table = Arrays.stream(widths).sum();
    int more = Math.max(0, -Math.floorDiv(table - NARROWEST, UNSET_WIDTH));
    this.spanned = widths.length + more;
    this.total = table + more * UNSET_WIDTH;
  }

  /** Makes its first column look like links, which lead to other sheets. */
  void showLinks() {
    linked = true;
  }

  Grid grid() {
    return grid;
  }

  /** Writes the sheet, and tells where its rows begin. */
  int write() throws IOException {
    SheetPage page = new SheetPage(sheet, look.paper());
    page.columns(widths);
    across(wording.title(), styles.title(), TITLE_SCALE, TITLE_LINE_POINTS);
    if (!wording.facts().isEmpty()) {
      across(
          String.join(BETWEEN_FACTS, wording.facts().stream().map(wording::fact).toList()),
          styles.facts(),
          1,
          LINE_POINTS);
    }
    next++;
    int heading = next;
    if (!grid.columns().isEmpty()) {
      heading();
      page.headingAt(heading, widths.length);
      rows();
      bars(heading + 1, next - 1);
      page.filter(heading, Math.max(heading, next - 1), widths.length);
      sums();
    }
    next++;
    for (String note : wording.notesOnPictures()) {
      across(note, styles.note(), NOTE_SCALE, NOTE_LINE_POINTS);
    }
    page.foot(wording.title());
    boolean drawn = chart.isPresent() && !report.rows().isEmpty();
    int lastRow = drawn ? ChartDrawing.lastRow(chart.get(), report, heading + 1) : 0;
    int lastColumn = drawn ? ChartDrawing.lastColumn(grid) : 0;
    page.printed(Math.max(next - 1, lastRow), Math.max(spanned - 1, lastColumn));
    SheetPage.finish(sheet);
    return heading + 1;
  }

  /** Chances also as bars behind their numbers. */
  private void bars(int from, int to) {
    for (int i = 0; i < widths.length; i++) {
      if (grid.columns().get(i).kind() == Column.Kind.CHANCE && to >= from) {
        SheetConditionalFormatting looks = sheet.getSheetConditionalFormatting();
        ConditionalFormattingRule rule = looks.createConditionalFormattingRule(styles.barColour());
        DataBarFormatting bar = rule.getDataBarFormatting();
        bar.getMinThreshold().setRangeType(ConditionalFormattingThreshold.RangeType.NUMBER);
        bar.getMinThreshold().setValue(0.0);
        bar.getMaxThreshold().setRangeType(ConditionalFormattingThreshold.RangeType.NUMBER);
        bar.getMaxThreshold().setValue(1.0);
        CellRangeAddress[] cells = {new CellRangeAddress(from, to, i, i)};
        looks.addConditionalFormatting(cells, rule);
      }
    }
  }

  /** A text over all columns, on as many lines as it takes. */
  private void across(String text, CellStyle style, double scale, float linePoints) {
    Row row = sheet.createRow(next);
    int columns = (int) Math.max(1, total * scale);
    row.setHeightInPoints(Math.min(TALLEST, linePoints * DisplayWidth.wrap(text, columns).size()));
    put(row, 0, text, style);
    if (spanned > 1) {
      sheet.addMergedRegion(new CellRangeAddress(next, next, 0, spanned - 1));
    }
    next++;
  }

  private void heading() {
    Row row = sheet.createRow(next++);
    int lines = 1;
    for (int i = 0; i < widths.length; i++) {
      String heading = grid.headings().get(i);
      put(row, i, heading, styles.heading(grid.atRight(i)));
      lines = Math.max(lines, DisplayWidth.wrap(heading, SheetPage.headingRoom(widths[i])).size());
    }
    row.setHeightInPoints(LINE_POINTS * lines + 3);
  }

  private void rows() {
    int done = 0;
    for (Report.Section section : report.sections()) {
      rows(done, section.from());
      Row heading = sheet.createRow(next++);
      heading.setHeightInPoints(ROW_POINTS + 4);
      for (int i = 0; i < widths.length; i++) {
        heading.createCell(i).setCellStyle(styles.section());
      }
      put(heading, 0, Wording.clean(section.heading()), styles.section());
      rows(section.from(), section.to());
      String summary = wording.sentence(section.summary());
      if (!summary.isEmpty()) {
        Row row = sheet.createRow(next++);
        row.setHeightInPoints(ROW_POINTS);
        put(row, 0, summary, styles.summary());
      }
      done = section.to();
    }
    rows(done, report.rows().size());
    if (report.rows().isEmpty() && report.sections().isEmpty()) {
      put(sheet.createRow(next++), 0, "(none)", styles.words());
    }
  }

  private void rows(int from, int to) {
    List<Column> all = report.columns();
    for (int r = from; r < to; r++) {
      Row row = sheet.createRow(next++);
      int lines = 1;
      for (int i = 0; i < widths.length; i++) {
        int place = grid.places().get(i);
        cell(row.createCell(i), all.get(place), report.rows().get(r).get(place));
        if (linked && i == 0) {
          row.getCell(i).setCellStyle(styles.link());
        }
        String shown = grid.rows().get(r).get(i);
        lines = Math.max(lines, DisplayWidth.wrap(shown, widths[i]).size());
      }
      forChart(row, report.rows().get(r));
      row.setHeightInPoints(Math.min(TALLEST, Math.max(ROW_POINTS, LINE_POINTS * lines)));
    }
  }

  private void forChart(Row row, List<Value> values) {
    int column = ChartDrawing.firstUnseen(grid);
    for (double reach : chart.map(drawn -> ChartDrawing.reach(drawn, values)).orElse(List.of())) {
      Cell cell = row.createCell(column++);
      cell.setCellValue(reach);
      cell.setCellStyle(styles.unseen());
    }
  }

  private void cell(Cell cell, Column column, Value value) {
    Column.Kind kind = column.kind();
    if (kind == Column.Kind.TICK) {
      cell.setCellValue(value.equals(Value.of(true)) ? "☑" : "☐");
      cell.setCellStyle(styles.tick());
    } else if (value instanceof Value.Tint tint) {
      cell.setCellStyle(styles.swatch(tint.swatch(), tint.assumed()));
    } else if (value instanceof Value.Text text) {
      boolean own = kind == Column.Kind.SENTENCE;
      cell.setCellValue(WorkbookText.of(own ? wording.cell(column, value) : text.text()));
      cell.setCellStyle(styles.words());
    } else if (value instanceof Value.Whole whole) {
      number(cell, kind, (double) whole.number());
    } else if (value instanceof Value.Decimal decimal) {
      number(cell, kind, decimal.number());
    } else if (value instanceof Value.Sum sum) {
      cell.setCellValue(units(sum.money()));
      cell.setCellStyle(styles.figure(moneyFormat(sum.money(), wording.mixedMoney())));
    } else if (value instanceof Value.Day day) {
      cell.setCellValue(day.date());
      cell.setCellStyle(styles.day());
    } else if (value instanceof Value.YesNo) {
      cell.setCellValue(wording.cell(column, value));
      cell.setCellStyle(styles.words());
    } else {
      cell.setCellStyle(styles.words()); // unknown: empty, so that sums and filters pass it by
    }
  }

  private void number(Cell cell, Column.Kind kind, double number) {
    double shown = kind == Column.Kind.LENGTH ? look.unit().number(number) : number;
    cell.setCellValue(shown);
    cell.setCellStyle(styles.figure(format(kind, shown)));
  }

  private String format(Column.Kind kind, double number) {
    return switch (kind) {
      case DECIMAL -> "#,##0.0";
      case CHANCE -> chanceFormat(number);
      case LENGTH -> look.unit().pattern(number);
      case TEXT, SENTENCE, WHOLE, MONEY, DATE, YES_NO, TICK, SWATCH ->
          number == Math.rint(number) ? "#,##0" : "#,##0.0";
    };
  }

  /** What is only nearly sure or impossible is not shown as if it were. */
  private static String chanceFormat(double chance) {
    if (chance > 0 && chance < 0.005) {
      return "\"<1 %\"";
    }
    return chance < 1 && chance >= 0.995 ? "\">99 %\"" : "0 %";
  }

  private static double units(Money money) {
    return money.cents() / 100.0;
  }

  private static String moneyFormat(Money money, boolean named) {
    return named ? "#,##0.00 \"" + money.currency() + "\"" : "#,##0.00";
  }

  /** Sums stand under the last column of money, where the eye looks for them. */
  private void sums() {
    int last = -1;
    for (int i = 0; i < grid.columns().size(); i++) {
      last = grid.columns().get(i).kind() == Column.Kind.MONEY ? i : last;
    }
    for (Report.Single sum : wording.sums()) {
      if (last > 0 && sum.value() instanceof Value.Sum amount) {
        Row row = sheet.createRow(next++);
        row.setHeightInPoints(ROW_POINTS);
        put(row, last - 1, Wording.clean(sum.column().label()), styles.sumLabel());
        Cell cell = row.createCell(last);
        cell.setCellValue(units(amount.money()));
        cell.setCellStyle(styles.sum(moneyFormat(amount.money(), wording.mixedMoney())));
      } else {
        across(wording.fact(sum), styles.summary(), 1, LINE_POINTS);
      }
    }
  }

  private static void put(Row row, int column, String text, CellStyle style) {
    Cell cell = row.createCell(column);
    cell.setCellValue(WorkbookText.of(text));
    cell.setCellStyle(style);
  }
}

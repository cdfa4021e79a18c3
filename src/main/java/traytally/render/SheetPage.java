package traytally.render;

import java.io.IOException;
import org.apache.poi.ss.usermodel.Footer;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import traytally.report.Column;

/** A sheet of a workbook as paper: margins, columns, what is repeated on each page. */
final class SheetPage {
  /** A column of text wider than this is wrapped; chosen by eye on printed lists. */
  private static final int WIDEST_TEXT = 44;

  private static final int HEADING_LINES = 2;

  /** Columns of text that the arrow of a filter covers, and bold letters more than plain ones. */
  private static final int ARROW = 4;

  /** Cells have a margin. */
  private static final int MARGIN = 3;

  /** Columns of 11-point text across A4 or Letter upright, within the margins set here. */
  private static final int UPRIGHT = 95;

  /** Width of a column of text in a workbook's own unit. */
  private static final int UNIT = 256;

  private static final double SIDE_INCHES = 0.5;
  private static final double END_INCHES = 0.6;
  private static final double FOOT_INCHES = 0.3;

  /** The longest foot a sheet can have is 255 characters, its codes included. */
  private static final int LONGEST_FOOT = 150;

  private final Sheet sheet;

  SheetPage(Sheet sheet, Paper paper) {
    this.sheet = sheet;
    sheet.setFitToPage(true);
    PrintSetup setup = sheet.getPrintSetup();
    setup.setPaperSize(paper.code());
    setup.setFitWidth((short) 1);
    setup.setFitHeight((short) 0);
    sheet.setMargin(PageMargin.LEFT, SIDE_INCHES);
    sheet.setMargin(PageMargin.RIGHT, SIDE_INCHES);
    sheet.setMargin(PageMargin.TOP, SIDE_INCHES);
    sheet.setMargin(PageMargin.BOTTOM, END_INCHES);
    sheet.setMargin(PageMargin.FOOTER, FOOT_INCHES);
  }

  /** Widths in which the columns' cells and headings can be read. */
  static int[] columnWidths(Grid grid) {
    int[] widths = grid.widest().stream().mapToInt(Integer::intValue).toArray();
    for (int i = 0; i < widths.length; i++) {
      boolean words = grid.holdsWords(i);
      boolean swatch = grid.columns().get(i).kind() == Column.Kind.SWATCH;
      int cells = words ? Math.min(widths[i], WIDEST_TEXT) : swatch ? 0 : widths[i];
      int heading = Grid.headingWidth(grid.headings().get(i), HEADING_LINES) + ARROW;
      widths[i] = Math.max(cells + MARGIN, heading);
    }
    return widths;
  }

  /** Columns of text that a heading has, beside its arrow. */
  static int headingRoom(int width) {
    return Math.max(1, width - ARROW);
  }

  void columns(int[] widths) {
    int total = 0;
    for (int i = 0; i < widths.length; i++) {
      sheet.setColumnWidth(i, widths[i] * UNIT);
      total += widths[i];
    }
    sheet.getPrintSetup().setLandscape(total > UPRIGHT);
  }

  /** Prints what stands in these columns and rows, counted from 0, and nothing beside it. */
  void printed(int lastRow, int lastColumn) {
    Workbook book = sheet.getWorkbook();
    book.setPrintArea(book.getSheetIndex(sheet), 0, lastColumn, 0, lastRow);
  }

  /** Keeps the heading in sight, on screen and on each page. */
  void headingAt(int row, int columns) {
    sheet.createFreezePane(0, row + 1);
    sheet.setRepeatingRows(new CellRangeAddress(row, row, 0, columns - 1));
  }

  void filter(int heading, int last, int columns) {
    sheet.setAutoFilter(new CellRangeAddress(heading, last, 0, columns - 1));
  }

  /** What the list is, and which page of how many. */
  void foot(String title) {
    Footer footer = sheet.getFooter();
    footer.setLeft(DisplayWidth.cut(title, LONGEST_FOOT).replace("&", "&&"));
    footer.setRight("Page &P of &N");
  }

  /**
   * Hands on the rows of {@code sheet}. Left to the end, POI takes sheets in an order that differs
   * from run to run, and with it the order of their shared texts.
   */
  static void finish(SXSSFSheet sheet) throws IOException {
    sheet.flushRows();
  }
}

package traytally.render;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import traytally.report.Report;

/**
 * Reports as sheets of one workbook, ready to print.
 *
 * <p>Written row by row, so that a long ledger needs no more memory than a short list.
 */
final class ReportWorkbook implements AutoCloseable {
  /** Rows kept in memory: POI's own default. */
  private static final int WINDOW = SXSSFWorkbook.DEFAULT_WINDOW_SIZE;

  /** The longest name a sheet can have: the limit spreadsheet programs publish. */
  private static final int LONGEST_NAME = 31;

  private final Look look;
  private final SXSSFWorkbook book = new SXSSFWorkbook(null, WINDOW, false, true);
  private final CellStyles styles = new CellStyles(book.getXSSFWorkbook());
  private String title = "";
  private LocalDate day = LocalDate.EPOCH;

  ReportWorkbook(Look look) {
    this.look = look;
  }

  /** Adds a sheet with {@code report}; the first gives the file its title and day. */
  void add(Report report) throws IOException {
    Wording wording = new Wording(report, look);
    if (book.getNumberOfSheets() == 0) {
      title = wording.title();
      day = report.asOf();
    }
    SXSSFSheet sheet = book.createSheet(freeName(report));
    new ReportSheet(report, wording, look, styles, sheet).write();
  }

  private String freeName(Report report) {
    String wanted = WorkbookUtil.createSafeSheetName(Wording.clean(report.title()));
    String name = wanted;
    for (int n = 2; book.getSheetIndex(name) >= 0; n++) {
      String ending = " " + n;
      name =
          wanted.substring(0, Math.min(wanted.length(), LONGEST_NAME - ending.length())) + ending;
    }
    return name;
  }

  /** Writes the file; {@code out} stays open. */
  void write(OutputStream out) throws IOException {
    WorkbookFile.write(book, title, day, out);
  }

  @Override
  public void close() throws IOException {
    book.close();
  }
}

package traytally.render;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import traytally.report.Chart;
import traytally.report.Report;
import traytally.report.Sheet;

/**
 * Reports as sheets of one workbook, ready to print.
 *
 * <p>Written row by row, so that a long ledger needs no more memory than a short list.
 */
final class ReportWorkbook implements AutoCloseable {
  /** The longest name a sheet can have: the limit spreadsheet programs publish. */
  private static final int LONGEST_NAME = 31;

  private final Look look;
  private final SXSSFWorkbook book = WorkbookFile.begin();
  private final CellStyles styles = new CellStyles(book.getXSSFWorkbook());
  private String title = "";
  private LocalDate day = LocalDate.EPOCH;
  private int firstRow;
  private int lastColumn;

  ReportWorkbook(Look look) {
    this.look = look;
  }

  /** Adds a sheet with {@code report}; the first gives the file its title and day. */
  void add(Report report) throws IOException {
    add(report, Optional.empty(), false);
  }

  /** Adds {@code contents}, whose rows name the sheets to come, and then those. */
  void add(Report contents, List<Sheet> sheets) throws IOException {
    add(contents, Optional.empty(), true);
    int row = firstRow;
    for (Sheet sheet : sheets) {
      add(sheet);
      String name = book.getSheetName(book.getNumberOfSheets() - 1);
      XSSFHyperlink link =
          book.getXSSFWorkbook().getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
      link.setLocation(new CellReference(name, 0, 0, false, false).formatAsString());
      link.setCellReference(new CellReference(row++, 0));
      book.getXSSFWorkbook().getSheetAt(0).addHyperlink(link);
    }
  }

  /** Adds a sheet with a chart beside the rows and a name for them. */
  private void add(Sheet sheet) throws IOException {
    add(sheet.report(), sheet.chart(), false);
    String name = book.getSheetName(book.getNumberOfSheets() - 1);
    int last = Math.max(1, sheet.report().rows().size());
    Name rows = book.createName();
    rows.setNameName(name.replaceAll("[^\\p{L}\\p{N}]+", "_") + "_rows");
    rows.setRefersToFormula(
        new CellRangeAddress(firstRow - 1, firstRow - 1 + last, 0, lastColumn)
            .formatAsString(name, true));
  }

  private void add(Report report, Optional<Chart> chart, boolean linked) throws IOException {
    Wording wording = new Wording(report, look);
    if (book.getNumberOfSheets() == 0) {
      title = wording.title();
      day = report.asOf();
    }
    SXSSFSheet sheet = book.createSheet(freeName(report));
    ReportSheet writing = new ReportSheet(report, chart, wording, look, styles, sheet);
    if (linked) {
      writing.showLinks();
    }
    firstRow = writing.write();
    lastColumn = Math.max(0, writing.grid().columns().size() - 1);
    if (chart.isPresent() && !report.rows().isEmpty()) {
      XSSFSheet whole = book.getXSSFWorkbook().getSheet(sheet.getSheetName());
      new ChartDrawing(report, chart.get(), writing.grid(), whole, firstRow).draw();
      sheet.getPrintSetup().setLandscape(true);
    }
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

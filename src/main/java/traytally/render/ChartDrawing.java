package traytally.render;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xddf.usermodel.PresetColor;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrossBetween;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisOrientation;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.AxisTickLabelPosition;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTErrBars;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumData;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumDataSource;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumRef;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumVal;
import org.openxmlformats.schemas.drawingml.x2006.chart.STErrBarType;
import org.openxmlformats.schemas.drawingml.x2006.chart.STErrDir;
import org.openxmlformats.schemas.drawingml.x2006.chart.STErrValType;
import org.openxmlformats.schemas.drawingml.x2006.main.CTNonVisualDrawingProps;
import traytally.report.Chart;
import traytally.report.Report;
import traytally.report.Value;

/** Draws a chart beside the rows of its sheet, as the spreadsheet program's own. */
final class ChartDrawing {
  /** Columns and rows that a chart covers; chosen by eye. */
  private static final int COLUMNS = 9;

  private static final int ROWS = 24;

  /** Rows that a chart with few bars has, and what each bar more adds. */
  private static final int FEWEST_ROWS = 9;

  private static final double ROWS_A_BAR = 1.25;
  private static final byte[][] FILLS = {
    {(byte) 0x9F, (byte) 0xB7, (byte) 0xBC}, {(byte) 0x1F, (byte) 0x64, (byte) 0x70}
  };
  private static final byte[] INK = {0x1D, 0x23, 0x27};
  private static final int GAP_PER_CENT = 60;

  private final Report report;
  private final Chart chart;
  private final Grid grid;
  private final XSSFSheet sheet;
  private final int firstRow;
  private final int rows;

  /**
   * @param firstRow of the report's rows on the sheet
   */
  ChartDrawing(Report report, Chart chart, Grid grid, XSSFSheet sheet, int firstRow) {
    this.report = report;
    this.chart = chart;
    this.grid = grid;
    this.sheet = sheet;
    this.firstRow = firstRow;
    this.rows = rows(chart, report);
  }

  void draw() {
    XSSFDrawing drawing = sheet.createDrawingPatriarch();
    // Beside the rows, not the heading: that stands on every page, and would take a strip along.
    XSSFClientAnchor anchor =
        drawing.createAnchor(
            0,
            0,
            0,
            0,
            firstColumn(grid),
            firstRow,
            lastColumn(grid),
            lastRow(chart, report, firstRow));
    XSSFChart drawn = drawing.createChart(anchor);
    drawn.setTitleText(chart.title());
    drawn.setTitleOverlay(false);
    CTNonVisualDrawingProps about =
        drawn.getGraphicFrame().getCTGraphicalObjectFrame().getNvGraphicFramePr().getCNvPr();
    about.setName(chart.title());
    about.setDescr(chart.description());
    if (chart.values().size() > 1) {
      drawn.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
    }
    bars(drawn);
  }

  private static int rows(Chart chart, Report report) {
    return Math.min(chart.most(), report.rows().size());
  }

  private static int firstColumn(Grid grid) {
    return grid.columns().size() + 1;
  }

  /** The column after the chart's last. */
  static int lastColumn(Grid grid) {
    return firstColumn(grid) + COLUMNS;
  }

  /** The row after the chart's last. */
  static int lastRow(Chart chart, Report report, int firstRow) {
    int bars = rows(chart, report) * chart.values().size();
    int height = chart.lying() ? Math.min(ROWS, FEWEST_ROWS + (int) (ROWS_A_BAR * bars)) : ROWS;
    return firstRow + height;
  }

  private void bars(XSSFChart drawn) {
    boolean lying = chart.lying();
    XDDFCategoryAxis names =
        drawn.createCategoryAxis(lying ? AxisPosition.LEFT : AxisPosition.BOTTOM);
    XDDFValueAxis scale = drawn.createValueAxis(lying ? AxisPosition.BOTTOM : AxisPosition.LEFT);
    if (lying) { // the first row on top, as on the sheet, and the scale at the foot all the same
      names.setOrientation(AxisOrientation.MAX_MIN);
      names.setTickLabelPosition(AxisTickLabelPosition.LOW);
    }
    scale.setTitle(chart.scale());
    scale.setCrosses(lying ? AxisCrosses.MAX : AxisCrosses.AUTO_ZERO);
    scale.setCrossBetween(AxisCrossBetween.BETWEEN);
    scale.getOrAddMajorGridProperties().setLineProperties(line());
    XDDFBarChartData data = (XDDFBarChartData) drawn.createData(ChartTypes.BAR, names, scale);
    data.setBarDirection(lying ? BarDirection.BAR : BarDirection.COL);
    data.setGapWidth(GAP_PER_CENT);
    data.setVaryColors(false);
    for (int i = 0; i < chart.values().size(); i++) {
      int column = chart.values().get(i);
      XDDFChartData.Series series =
          data.addSeries(
              XDDFDataSourcesFactory.fromArray(texts(), range(chart.names())), numbers(column));
      series.setTitle(report.columns().get(column).label(), null);
      // An interval must be seen on its bar.
      int fill = chart.values().size() == 1 && chart.low().isEmpty() ? 1 : i % FILLS.length;
      series.setFillProperties(new XDDFSolidFillProperties(XDDFColor.from(FILLS[fill])));
    }
    drawn.plot(data);
    if (chart.low().isPresent() && chart.high().isPresent()) {
      double highest = Collections.max(values(chart.high().getAsInt()));
      scale.setMaximum(Math.ceil(highest)); // programs leave room for bars only
      interval(drawn, chart.low().getAsInt(), chart.high().getAsInt());
    }
  }

  private static XDDFLineProperties line() {
    return new XDDFLineProperties(
        new XDDFSolidFillProperties(XDDFColor.from(PresetColor.LIGHT_GRAY)));
  }

  private String[] texts() {
    return report.rows().stream()
        .limit(rows)
        .map(row -> row.get(chart.names()))
        .map(
            value ->
                value instanceof Value.Text text ? Wording.clean(text.text()) : Wording.UNKNOWN)
        .toArray(String[]::new);
  }

  private XDDFNumericalDataSource<Double> numbers(int column) {
    return XDDFDataSourcesFactory.fromArray(values(column).toArray(Double[]::new), range(column));
  }

  private List<Double> values(int column) {
    List<Double> values = new ArrayList<>();
    for (List<Value> row : report.rows().subList(0, rows)) {
      values.add(number(row.get(column)).orElse(0));
    }
    return values;
  }

  private static OptionalDouble number(Value value) {
    if (value instanceof Value.Whole whole) {
      return OptionalDouble.of((double) whole.number());
    }
    return value instanceof Value.Decimal decimal
        ? OptionalDouble.of(decimal.number())
        : OptionalDouble.empty();
  }

  /** Where the column's values stand on the sheet. */
  private String range(int column) {
    int at = grid.places().indexOf(column);
    if (at < 0) {
      throw new IllegalArgumentException("not on the sheet: " + report.columns().get(column));
    }
    return new CellRangeAddress(firstRow, firstRow + rows - 1, at, at)
        .formatAsString(sheet.getSheetName(), true);
  }

  /** From the lower to the upper end, as bars about the value. */
  private void interval(XSSFChart drawn, int low, int high) {
    CTErrBars bars =
        drawn.getCTChart().getPlotArea().getBarChartArray(0).getSerArray(0).addNewErrBars();
    bars.addNewErrDir().setVal(STErrDir.Y);
    bars.addNewErrBarType().setVal(STErrBarType.BOTH);
    bars.addNewErrValType().setVal(STErrValType.CUST);
    bars.addNewNoEndCap().setVal(false);
    List<Double> middle = values(chart.values().get(0));
    int column = firstUnseen(grid);
    bars.addNewSpPr().addNewLn().addNewSolidFill().addNewSrgbClr().setVal(INK);
    reach(bars.addNewPlus(), column, values(high), middle);
    reach(bars.addNewMinus(), column + 1, middle, values(low));
  }

  private void reach(CTNumDataSource to, int column, List<Double> from, List<Double> less) {
    CTNumRef cells = to.addNewNumRef();
    cells.setF(
        new CellRangeAddress(firstRow, firstRow + rows - 1, column, column)
            .formatAsString(sheet.getSheetName(), true));
    CTNumData kept = cells.addNewNumCache();
    kept.setFormatCode("General");
    kept.addNewPtCount().setVal(from.size());
    for (int i = 0; i < from.size(); i++) {
      CTNumVal point = kept.addNewPt();
      point.setIdx(i);
      point.setV(MachineNumber.of(from.get(i) - less.get(i)).toPlainString());
    }
  }

  /**
   * The first of two columns, behind the chart, in which the reach of the intervals stands, up and
   * down.
   */
  static int firstUnseen(Grid grid) {
    return firstColumn(grid);
  }

  /** How far above and below its value a row's interval reaches; empty if the chart has none. */
  static List<Double> reach(Chart chart, List<Value> row) {
    if (chart.low().isEmpty() || chart.high().isEmpty()) {
      return List.of();
    }
    double value = number(row.get(chart.values().get(0))).orElse(0);
    return List.of(
        number(row.get(chart.high().getAsInt())).orElse(value) - value,
        value - number(row.get(chart.low().getAsInt())).orElse(value));
  }
}

package traytally.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import traytally.report.Column;

/** Rows as lines, their cells under one heading. */
final class SideBySide implements RowLayout {
  private static final String RULE = "─";

  /** A row of more lines is no row any more; assumption of this tool. */
  private static final int MOST_LINES = 6;

  private final Grid grid;
  private final int[] widths;
  private final Grid below;
  private final String indent;

  SideBySide(Grid grid, int[] widths) {
    this(grid, widths, grid.only(column -> false));
  }

  /** With the cells of {@code below} on lines of their own, under the row. */
  SideBySide(Grid grid, int[] widths, Grid below) {
    this.grid = grid;
    this.widths = widths;
    this.below = below;
    boolean ticked = !grid.columns().isEmpty() && grid.columns().get(0).kind() == Column.Kind.TICK;
    this.indent = " ".repeat(ticked ? widths[0] + Grid.GAP : Grid.GAP);
  }

  @Override
  public void begin(Page page) {
    List<List<String>> headings = headings();
    int height = headings.stream().mapToInt(List::size).max().orElse(0);
    for (int line = 0; line < height; line++) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        // Short headings stand on the rule, not at the top.
        int own = line - (height - headings.get(i).size());
        append(text, i, own < 0 ? "" : headings.get(i).get(own));
      }
      page.strong(text.toString().stripTrailing());
    }
    StringBuilder rule = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      append(rule, i, RULE.repeat(widths[i]));
    }
    page.line(rule.toString());
  }

  private List<List<String>> headings() {
    return IntStream.range(0, widths.length)
        .mapToObj(i -> DisplayWidth.wrap(grid.headings().get(i), widths[i]))
        .toList();
  }

  @Override
  public void rows(int from, int to, Page page) {
    for (int r = from; r < to; r++) {
      List<String> row = grid.rows().get(r);
      List<List<String>> cells = new ArrayList<>();
      int height = 0;
      for (int i = 0; i < widths.length; i++) {
        cells.add(lines(row.get(i), widths[i]));
        height = Math.max(height, cells.get(i).size());
      }
      for (int at = 0; at < height; at++) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
          append(line, i, at < cells.get(i).size() ? cells.get(i).get(at) : "");
        }
        page.line(line.toString().stripTrailing());
      }
      below(r, page);
    }
  }

  private void below(int row, Page page) {
    for (int i = 0; i < below.columns().size(); i++) {
      String text = below.rows().get(row).get(i);
      if (!text.equals(Wording.UNKNOWN)) {
        page.remark(indent, below.headings().get(i) + ": " + text);
      }
    }
  }

  /** The lines of a cell; what would take more than {@link #MOST_LINES} is cut. */
  private static List<String> lines(String text, int width) {
    List<String> lines = DisplayWidth.fits(text, width);
    if (lines.size() <= MOST_LINES) {
      return lines;
    }
    List<String> cut = new ArrayList<>(lines.subList(0, MOST_LINES - 1));
    cut.add(DisplayWidth.cut(String.join(" ", lines.subList(MOST_LINES - 1, lines.size())), width));
    return cut;
  }

  private void append(StringBuilder line, int column, String text) {
    String shown = DisplayWidth.cut(text, widths[column]);
    line.append(column == 0 ? "" : " ".repeat(Grid.GAP))
        .append(
            grid.atRight(column)
                ? DisplayWidth.right(shown, widths[column])
                : DisplayWidth.left(shown, widths[column]));
  }
}

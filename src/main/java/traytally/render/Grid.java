package traytally.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import traytally.report.Column;
import traytally.report.Report;
import traytally.report.Value;

/**
 * The columns of a report that people see, as text.
 *
 * @param columns those for people
 * @param headings one for each column
 * @param rows cells in the columns' order
 */
record Grid(List<Column> columns, List<String> headings, List<List<String>> rows) {
  /** Spaces between two columns. */
  static final int GAP = 2;

  /** A heading takes no more lines than this; common practice. */
  private static final int HEADING_LINES = 3;

  /** A text cut to fewer columns than this says too little to tell two plastics apart. */
  private static final int SHORTEST_TEXT = 10;

  static Grid of(Report report, Wording wording) {
    List<Column> all = report.columns();
    List<Column> shown = all.stream().filter(Column::forPeople).toList();
    List<List<String>> rows = new ArrayList<>();
    for (List<Value> row : report.rows()) {
      List<String> cells = new ArrayList<>();
      for (int i = 0; i < all.size(); i++) {
        if (all.get(i).forPeople()) {
          cells.add(wording.cell(all.get(i), row.get(i)));
        }
      }
      rows.add(cells);
    }
    return new Grid(shown, shown.stream().map(wording::heading).toList(), rows);
  }

  /** Whether the column's cells stand at the right: those that hold numbers. */
  boolean atRight(int column) {
    return switch (columns.get(column).kind()) {
      case WHOLE, DECIMAL, CHANCE, MONEY, LENGTH -> true;
      case TEXT, DATE, YES_NO, TICK -> false;
    };
  }

  /** Widths with which the columns stand side by side in {@code width}, if there are any. */
  Optional<int[]> fit(int width) {
    for (int lines = 1; lines <= HEADING_LINES; lines++) {
      int[] widths = natural(lines);
      if (total(widths) <= width) {
        return Optional.of(widths);
      }
    }
    int[] widths = natural(HEADING_LINES);
    while (total(widths) > width) {
      int widest = widestText(widths);
      if (widest < 0) {
        return Optional.empty();
      }
      widths[widest]--;
    }
    return Optional.of(widths);
  }

  static int total(int[] widths) {
    return Arrays.stream(widths).sum() + GAP * Math.max(0, widths.length - 1);
  }

  /** Widths that cut nothing, with headings of at most {@code lines} lines. */
  private int[] natural(int lines) {
    int[] widths = cellWidths();
    for (int i = 0; i < widths.length; i++) {
      widths[i] = Math.max(widths[i], headingWidth(headings.get(i), lines));
    }
    return widths;
  }

  /** The widest cell of each column, its heading apart. */
  int[] cellWidths() {
    int[] widths = new int[columns.size()];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], DisplayWidth.of(row.get(i)));
      }
    }
    return widths;
  }

  /** The least width with which {@code heading} stands on {@code lines} lines. */
  static int headingWidth(String heading, int lines) {
    int width = DisplayWidth.widestWord(heading);
    while (DisplayWidth.wrap(heading, width).size() > lines) {
      width++;
    }
    return width;
  }

  /** The widest column that may still be cut, the last of several; -1 if there is none. */
  private int widestText(int[] widths) {
    int widest = -1;
    for (int i = 0; i < widths.length; i++) {
      boolean mayBeCut = columns.get(i).kind() == Column.Kind.TEXT && widths[i] > SHORTEST_TEXT;
      if (mayBeCut && (widest < 0 || widths[i] >= widths[widest])) {
        widest = i;
      }
    }
    return widest;
  }
}

package traytally.render;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import traytally.report.Column;
import traytally.report.Mapped;
import traytally.report.Report;
import traytally.report.Value;

/**
 * The columns of a report that people see, as text.
 *
 * @param columns those shown
 * @param places where each stands among the report's columns
 * @param headings one for each column
 * @param rows cells in the columns' order; made again each time if the report's rows are
 * @param widest the width of each column's widest cell, its heading apart
 */
record Grid(
    List<Column> columns,
    List<Integer> places,
    List<String> headings,
    List<List<String>> rows,
    List<Integer> widest) {
  /** Spaces between two columns. */
  static final int GAP = 2;

  /** A heading takes no more lines than this; common practice. */
  private static final int HEADING_LINES = 3;

  /** A text cut to fewer columns than this says too little to tell two plastics apart. */
  private static final int SHORTEST_TEXT = 10;

  /** All that people see; of swatches only the columns in which there is one. */
  static Grid of(Report report, Wording wording) {
    List<Column> all = report.columns();
    List<Integer> places =
        IntStream.range(0, all.size())
            .filter(i -> all.get(i).forPeople() && (!isSwatch(all.get(i)) || isUsed(report, i)))
            .boxed()
            .toList();
    List<Column> shown = places.stream().map(all::get).toList();
    int[] at = places.stream().mapToInt(Integer::intValue).toArray();
    List<List<String>> rows = report.mapped(row -> cells(row, at, all, wording));
    List<String> headings = shown.stream().map(wording::heading).toList();
    return new Grid(shown, places, headings, rows, widest(rows, shown.size()));
  }

  private static List<String> cells(
      List<Value> row, int[] at, List<Column> columns, Wording wording) {
    String[] cells = new String[at.length];
    for (int i = 0; i < at.length; i++) {
      cells[i] = wording.cell(columns.get(at[i]), row.get(at[i]));
    }
    return List.of(cells);
  }

  private static List<String> picked(List<String> row, int[] kept) {
    String[] cells = new String[kept.length];
    for (int i = 0; i < kept.length; i++) {
      cells[i] = row.get(kept[i]);
    }
    return List.of(cells);
  }

  private static List<Integer> widest(List<List<String>> rows, int columns) {
    int[] widest = new int[columns];
    for (List<String> row : rows) {
      for (int i = 0; i < columns; i++) {
        widest[i] = Math.max(widest[i], DisplayWidth.of(row.get(i)));
      }
    }
    return Arrays.stream(widest).boxed().toList();
  }

  private static boolean isSwatch(Column column) {
    return column.kind() == Column.Kind.SWATCH;
  }

  private static boolean isUsed(Report report, int column) {
    return report.rows().stream().anyMatch(row -> !(row.get(column) instanceof Value.Unknown));
  }

  /** The columns that can be told in plain text. */
  Grid inText() {
    return only(column -> !isSwatch(columns.get(column)));
  }

  /** The columns whose number here {@code wanted} lets through. */
  Grid only(IntPredicate wanted) {
    int[] at = IntStream.range(0, columns.size()).filter(wanted).toArray();
    List<Integer> kept = Arrays.stream(at).boxed().toList();
    return new Grid(
        kept.stream().map(columns::get).toList(),
        kept.stream().map(places::get).toList(),
        kept.stream().map(headings::get).toList(),
        new Mapped<>(rows, row -> picked(row, at)),
        kept.stream().map(widest::get).toList());
  }

  /** The columns that have this room. */
  Grid only(Column.Room room) {
    return only(column -> columns.get(column).room() == room);
  }

  /** Whether the column's cells stand at the right: those that hold numbers. */
  boolean atRight(int column) {
    return switch (columns.get(column).kind()) {
      case WHOLE, DECIMAL, CHANCE, MONEY, LENGTH -> true;
      case TEXT, SENTENCE, DATE, YES_NO, TICK, SWATCH -> false;
    };
  }

  /** Whether the column's cells hold words, which may be wrapped. */
  boolean holdsWords(int column) {
    Column.Kind kind = columns.get(column).kind();
    return kind == Column.Kind.TEXT || kind == Column.Kind.SENTENCE;
  }

  /** Widths with which the columns stand side by side in {@code width}, if there are any. */
  Optional<int[]> fit(int width) {
    Optional<int[]> uncut = fitUncut(width);
    if (uncut.isPresent()) {
      return uncut;
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

  /** The same, if no text needs to be cut or wrapped for it. */
  Optional<int[]> fitUncut(int width) {
    for (int lines = 1; lines <= HEADING_LINES; lines++) {
      int[] widths = natural(lines);
      if (total(widths) <= width) {
        return Optional.of(widths);
      }
    }
    return Optional.empty();
  }

  static int total(int[] widths) {
    return Arrays.stream(widths).sum() + GAP * Math.max(0, widths.length - 1);
  }

  /** Widths that cut nothing, with headings of at most {@code lines} lines. */
  private int[] natural(int lines) {
    return IntStream.range(0, columns.size())
        .map(i -> Math.max(widest.get(i), headingWidth(headings.get(i), lines)))
        .toArray();
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
      boolean mayBeCut = holdsWords(i) && widths[i] > SHORTEST_TEXT;
      if (mayBeCut && (widest < 0 || widths[i] >= widths[widest])) {
        widest = i;
      }
    }
    return widest;
  }
}

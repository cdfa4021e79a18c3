package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import traytally.sheet.Cell;
import traytally.sheet.CellRange;
import traytally.sheet.Row;
import traytally.sheet.Rows;
import traytally.sheet.Sheet;
import traytally.sheet.Workbook;

/**
 * One sheet as handed over.
 *
 * @param file the file's name, without its folder
 * @param name the tab's name, empty for a text file
 * @param hidden whether the tab is hidden
 * @param merges its merged areas
 */
public record GivenSheet(
    String file, String name, boolean hidden, List<Row> rows, List<CellRange> merges) {
  /** Distinct cells remembered for sharing; lists repeat few words many times. */
  private static final int SHARED_CELLS = 200_000;

  public GivenSheet {
    rows = List.copyOf(rows);
    merges = List.copyOf(merges);
  }

  /**
   * Every sheet of {@code workbook}.
   *
   * @param fileName the file's name, without its folder
   * @throws traytally.sheet.UnreadableSheetException if it cannot be read
   */
  public static List<GivenSheet> of(String fileName, Workbook workbook) {
    List<GivenSheet> sheets = new ArrayList<>();
    Map<Cell, Cell> shared = new HashMap<>();
    for (Sheet sheet : workbook.sheets()) {
      try (Rows rows = workbook.rows(sheet)) {
        List<Row> read = new ArrayList<>();
        while (rows.hasNext()) {
          read.add(share(rows.next(), shared));
        }
        sheets.add(new GivenSheet(fileName, sheet.name(), sheet.hidden(), read, rows.merges()));
      }
    }
    return List.copyOf(sheets);
  }

  /** The same row with equal cells kept once, so that a million rows fit in memory. */
  private static Row share(Row row, Map<Cell, Cell> shared) {
    List<Cell> cells = new ArrayList<>(row.cells().size());
    for (Cell cell : row.cells()) {
      Cell known = shared.get(cell);
      if (known == null) {
        if (shared.size() < SHARED_CELLS) {
          shared.put(cell, cell);
        }
        known = cell;
      }
      cells.add(known);
    }
    return new Row(row.number(), cells, row.hidden());
  }

  /** How its stints and plans are marked: {@code trips.xlsx, Trips}. */
  public String source() {
    return name.isEmpty() ? file : file + ", " + name;
  }
}

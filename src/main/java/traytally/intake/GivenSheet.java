package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.IntConsumer;
import traytally.sheet.Address;
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
 * @param places where its cells stand in the sheet itself, for one whose cells were set in other
 *     rows to be read
 */
public record GivenSheet(
    String file,
    String name,
    boolean hidden,
    List<Row> rows,
    List<CellRange> merges,
    Map<Address, Address> places) {
  private static final int ROWS_BETWEEN_WORDS = 1000;

  public GivenSheet {
    rows = PackedRows.of(rows);
    merges = List.copyOf(merges);
    places = Map.copyOf(places);
  }

  /** A sheet whose rows stand as they were handed over. */
  public GivenSheet(
      String file, String name, boolean hidden, List<Row> rows, List<CellRange> merges) {
    this(file, name, hidden, rows, merges, Map.of());
  }

  /**
   * Every sheet of {@code workbook}.
   *
   * @param fileName the file's name, without its folder
   * @throws traytally.sheet.UnreadableSheetException if it cannot be read
   */
  public static List<GivenSheet> of(String fileName, Workbook workbook) {
    return of(fileName, workbook, rows -> {});
  }

  /**
   * Every sheet of {@code workbook}.
   *
   * @param fileName the file's name, without its folder
   * @param reading is told from time to time how many rows of a sheet are read
   * @throws traytally.sheet.UnreadableSheetException if it cannot be read
   */
  public static List<GivenSheet> of(String fileName, Workbook workbook, IntConsumer reading) {
    List<GivenSheet> sheets = new ArrayList<>();
    for (Sheet sheet : workbook.sheets()) {
      try (Rows rows = workbook.rows(sheet)) {
        PackedRows.Builder read = new PackedRows.Builder();
        while (rows.hasNext()) {
          read.add(rows.next());
          if (read.size() % ROWS_BETWEEN_WORDS == 0) {
            reading.accept(read.size());
          }
        }
        sheets.add(
            new GivenSheet(fileName, sheet.name(), sheet.hidden(), read.done(), rows.merges()));
      }
    }
    return List.copyOf(sheets);
  }

  /** The cell of a row, by the row's place in the sheet; spares making the whole row. */
  Cell cell(int index, int column) {
    return ((PackedRows) rows).cell(index, column);
  }

  /** Every cell that stands somewhere in the sheet, most of them once. */
  List<Cell> distinct() {
    return ((PackedRows) rows).cells();
  }

  /** Where the cell of a row stands in the sheet itself. */
  Address place(int number, int column) {
    Address here = new Address(number, column);
    return places.getOrDefault(here, here);
  }

  /** The number of a row as the spreadsheet program shows it, by its place in the sheet. */
  int number(int index) {
    return ((PackedRows) rows).number(index);
  }

  /** What a merged area that begins over this cell holds; one that runs across is no value. */
  Optional<Cell> mergedAbove(int number, int column) {
    Address address = new Address(number, column);
    return merges.stream()
            .anyMatch(range -> range.first().column() == column && range.contains(address))
        ? merged(number, column)
        : Optional.empty();
  }

  /** What a merged area over this cell holds. */
  Optional<Cell> merged(int number, int column) {
    Address address = new Address(number, column);
    for (CellRange range : merges) {
      if (range.contains(address)) {
        return rows.stream()
            .filter(row -> row.number() == range.first().row())
            .findFirst()
            .map(row -> row.cell(range.first().column()))
            .filter(cell -> !cell.isBlank());
      }
    }
    return Optional.empty();
  }

  /**
   * Of the little that tells sheets apart: hashing a million rows takes longer than reading them.
   */
  @Override
  public int hashCode() {
    return Objects.hash(file, name, rows.size());
  }

  /** How its stints and plans are marked: {@code trips.xlsx, Trips}. */
  public String source() {
    return name.isEmpty() ? file : file + ", " + name;
  }
}

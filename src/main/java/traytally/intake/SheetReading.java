package traytally.intake;

import java.util.List;
import java.util.Optional;

/**
 * How one sheet, or one table of it, was read.
 *
 * @param kind what it was taken for; empty if it was passed over
 * @param columns every headed column and what it was taken for
 * @param assumptions what was assumed, in sentences
 */
public record SheetReading(
    String file,
    String sheet,
    Optional<ListKind> kind,
    List<ColumnTaken> columns,
    List<String> assumptions,
    int rowsRead,
    int rowsTaken,
    int rowsSkipped) {
  public SheetReading {
    columns = List.copyOf(columns);
    assumptions = List.copyOf(assumptions);
    if (rowsRead != rowsTaken + rowsSkipped) {
      throw new IllegalArgumentException(
          "rows unaccounted for: " + rowsRead + " of " + rowsTaken + " + " + rowsSkipped);
    }
  }

  /** One of which nothing was read. */
  static SheetReading passedOver(GivenSheet sheet, String why) {
    return new SheetReading(
        sheet.file(), sheet.name(), Optional.empty(), List.of(), List.of(why), 0, 0, 0);
  }

  /** The same where the whole list was turned down: no row was taken. */
  SheetReading untaken() {
    return new SheetReading(file, sheet, kind, columns, assumptions, rowsRead, 0, rowsRead);
  }

  /**
   * What one column was taken for.
   *
   * @param letters over the column
   * @param header as typed, empty if it has none
   * @param field empty if the column was passed over
   * @param why in a few words
   */
  public record ColumnTaken(String letters, String header, Optional<Field> field, String why) {}
}

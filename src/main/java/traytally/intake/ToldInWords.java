package traytally.intake;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import traytally.sheet.Cell;

/** What came of the stints of a log in a column of words: {@code 4 hits, 3 hooked, lost 1}. */
final class ToldInWords {
  /** The share of a column's texts that must tell something (an assumption). */
  private static final double MOSTLY = 0.6;

  private final Table table;

  ToldInWords(Table table) {
    this.table = table;
  }

  /** Puts what such a column tells where it belongs, if the log tells no fish otherwise. */
  void run() {
    boolean told = List.of(Field.TAKES, Field.HOOKED, Field.LANDED).stream().anyMatch(table::tells);
    OptionalInt column = told || table.rows().isEmpty() ? OptionalInt.empty() : column();
    if (column.isEmpty()) {
      return;
    }
    for (ListRow row : table.rows()) {
      SeveralInOne.numbersIn(row.at(column.getAsInt()).shown())
          .forEach(
              (field, number) -> {
                if (row.isBlank(field)) {
                  row.put(field, Cell.text(number), column.getAsInt());
                }
              });
    }
    table.assume(
        "What came of each stint was read from the words under \""
            + table.headers().get(column.getAsInt()).text()
            + "\".");
  }

  private OptionalInt column() {
    Under under = new Under(table.sheet(), table.firstRow());
    return IntStream.range(0, table.headers().size())
        .filter(
            c ->
                table.guess().leaves(c)
                    || table.guess().columns().getOrDefault(Field.NOTE, -1) == c)
        .filter(c -> tellsMostly(under.filled(c)))
        .findFirst();
  }

  private static boolean tellsMostly(List<Cell> cells) {
    long telling = cells.stream().filter(ToldInWords::tells).count();
    boolean fish =
        cells.stream()
            .map(cell -> SeveralInOne.numbersIn(cell.shown()))
            .anyMatch(told -> told.containsKey(Field.TAKES) || told.containsKey(Field.LANDED));
    return fish && telling >= MOSTLY * cells.size();
  }

  private static boolean tells(Cell cell) {
    Map<Field, String> told = SeveralInOne.numbersIn(cell.shown());
    return !told.isEmpty() || Quantities.isNone(cell.shown());
  }
}

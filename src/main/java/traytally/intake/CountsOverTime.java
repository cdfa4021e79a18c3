package traytally.intake;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import traytally.intake.ListRow.Place;

/**
 * Counts with a column for each day or month, filled only where one had changed: the count of a row
 * is its last one.
 */
final class CountsOverTime {
  private final Table table;

  CountsOverTime(Table table) {
    this.table = table;
  }

  /** Takes a blank last count from the nearest column before it that holds one. */
  void run() {
    int last = table.guess().columns().getOrDefault(Field.PIECES, -1);
    if (last < 0 || !isDated(last)) {
      return;
    }
    List<Integer> earlier =
        IntStream.range(0, last).map(i -> last - 1 - i).filter(this::isDated).boxed().toList();
    for (ListRow row : table.rows()) {
      Optional<Integer> filled =
          row.isBlank(Field.PIECES)
              ? earlier.stream().filter(column -> !ListRow.isBlank(row.at(column))).findFirst()
              : Optional.empty();
      if (filled.isPresent()) {
        row.fill(Field.PIECES, new Place(row.at(filled.get()), filled.get(), true));
        table.assume("Where the last count is blank, the one before it was taken.");
      }
    }
  }

  private boolean isDated(int column) {
    return ColumnGuess.isDatedCount(table.headers().get(column).folded());
  }
}

package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.sheet.Row;

/** A list of the box but for its count: columns hold numbers, and none is known to count. */
final class Uncounted {
  /** Headers stand among the first rows (an assumption). */
  private static final int WITHIN = 30;

  private final GivenSheet sheet;
  private final Map<String, Optional<Field>> given;

  Uncounted(GivenSheet sheet, Map<String, Optional<Field>> given) {
    this.sheet = sheet;
    this.given = Map.copyOf(given);
  }

  /** What to ask, if the sheet holds such a list. */
  Optional<String> question() {
    for (int index = 0; index < Math.min(WITHIN, sheet.rows().size()); index++) {
      List<String> counts = counts(sheet.rows().get(index), new Under(sheet, index + 1));
      if (!counts.isEmpty()) {
        return Optional.of(
            "a list of plastics was found, but which column counts them? Numbers stand under "
                + String.join(", ", counts)
                + ". Pass --map '"
                + counts.get(0)
                + "=pieces'; several so mapped are added up.");
      }
    }
    return Optional.empty();
  }

  /** The headers over numbers that are taken for nothing, in a row that names plastics. */
  private List<String> counts(Row row, Under under) {
    if (row.cells().size() > HeaderSearch.MOST_COLUMNS) {
      return List.of();
    }
    List<ColumnHeader> headers = row.cells().stream().map(ColumnHeader::of).toList();
    ColumnGuess guess = ColumnGuess.of(headers, ListKind.BOX, given);
    List<String> counts = new ArrayList<>();
    boolean named = guess.has(Field.BODY) || guess.has(Field.COLOUR);
    if (named && !guess.isComplete() && HeaderSearch.namesColumns(row)) {
      for (int column = 0; column < headers.size(); column++) {
        if (guess.leaves(column)
            && !headers.get(column).text().isEmpty()
            && !HeaderWords.isPassedOver(headers.get(column).folded())
            && under.counts(column)
            && !under.filled(column).isEmpty()) {
          counts.add(headers.get(column).text());
        }
      }
    }
    return counts;
  }
}

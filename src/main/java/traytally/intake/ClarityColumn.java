package traytally.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import traytally.intake.HeaderSearch.Start;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** A column "Water" that tells how clear the water was, and not which water it was. */
final class ClarityColumn {
  /** As many cells tell a column's habit (an assumption). */
  private static final int LOOKED_AT = 200;

  private ClarityColumn() {}

  /** The header with such a column taken for the clarity, and another unread one for the water. */
  static Start settled(GivenSheet sheet, Start start) {
    ColumnGuess guess = start.guess();
    Integer column = guess.columns().get(Field.WATER);
    if (column == null
        || guess.has(Field.CLARITY)
        || guess.kind() == ListKind.BOX
        || guess.why().getOrDefault(column, "").equals(ColumnGuess.AS_SAID)
        || !tellsClarity(sheet.rows().subList(start.last() + 1, sheet.rows().size()), column)) {
      return start;
    }
    Map<Field, Integer> columns = new HashMap<>(guess.columns());
    Map<Integer, String> why = new HashMap<>(guess.why());
    columns.remove(Field.WATER);
    columns.put(Field.CLARITY, column);
    why.put(column, "holds words of clarity");
    for (int other = start.headers().size() - 1; other >= 0; other--) {
      String header = start.headers().get(other).folded();
      if (!columns.containsValue(other)
          && ColumnGuess.isUsual(header, Field.WATER, guess.kind())
          && !header.isEmpty()) {
        columns.put(Field.WATER, other);
        why.put(other, "a usual word for it");
      }
    }
    return new Start(
        start.first(),
        start.last(),
        start.headers(),
        new ColumnGuess(guess.kind(), columns, guess.across(), why, guess.score()));
  }

  private static boolean tellsClarity(List<Row> rows, int column) {
    List<Cell> filled =
        rows.stream()
            .map(row -> row.cell(column))
            .filter(cell -> !cell.isBlank())
            .limit(LOOKED_AT)
            .toList();
    long clear = filled.stream().filter(c -> Words.clarity(c.shown()).value().isPresent()).count();
    return clear * 2 > filled.size();
  }
}

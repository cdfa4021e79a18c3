package traytally.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import traytally.intake.HeaderSearch.Start;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * A column "Water" that tells how clear the water was, and not which water it was; or one under a
 * header that says nothing.
 */
final class ClarityColumn {
  /** As many cells tell a column's habit (an assumption). */
  private static final int LOOKED_AT = 200;

  private ClarityColumn() {}

  /** The header with such a column taken for the clarity, and another unread one for the water. */
  static Start settled(GivenSheet sheet, Start start, Set<String> given) {
    ColumnGuess guess = start.guess();
    Integer column = guess.columns().get(Field.WATER);
    boolean none = guess.kind() != ListKind.TRIPS && guess.kind() != ListKind.PLAN;
    if (none || guess.has(Field.CLARITY)) {
      return start;
    }
    if (column == null
        || guess.why().getOrDefault(column, "").equals(ColumnGuess.AS_SAID)
        || !tellsClarity(sheet.rows().subList(start.last() + 1, sheet.rows().size()), column)) {
      return guess.why().containsValue(HeaderSearch.AS_BEFORE)
          ? start
          : unread(sheet, start, given);
    }
    Map<Field, Integer> columns = new HashMap<>(guess.columns());
    Map<Integer, String> why = new HashMap<>(guess.why());
    columns.remove(Field.WATER);
    columns.put(Field.CLARITY, column);
    why.put(column, "holds words of clarity");
    for (int other = start.headers().size() - 1; other >= 0; other--) {
      String header = start.headers().get(other).folded();
      if (!columns.containsValue(other)
          && HeaderWords.isUsual(header, Field.WATER, guess.kind())
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

  /** A column of such words alone that was taken for nothing; of the sky none may be. */
  private static Start unread(GivenSheet sheet, Start start, Set<String> given) {
    Under under = new Under(sheet, start.last() + 1);
    int columns = Math.min(start.headers().size(), HeaderSearch.MOST_COLUMNS);
    for (int column = 0; column < columns; column++) {
      String header = start.headers().get(column).folded();
      List<Cell> cells =
          header.isEmpty()
                  || given.contains(header)
                  || HeaderWords.isPassedOver(header)
                  || !start.guess().leaves(column)
              ? List.of()
              : under.filled(column);
      if (cells.stream().anyMatch(cell -> DayRemarks.isOfWater(cell.shown()))
          && cells.stream().allMatch(c -> Words.clarity(c.shown()).value().isPresent())) {
        ColumnGuess told = start.guess().taking(Field.CLARITY, column, "holds words of clarity");
        return new Start(start.first(), start.last(), start.headers(), told);
      }
    }
    return start;
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

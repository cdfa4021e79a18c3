package traytally.intake;

import java.util.List;
import java.util.OptionalInt;
import traytally.sheet.Row;

/**
 * Lines between the rows of a log that tell the day of the rows below, and what else is of all of
 * them: {@code Date:|26/05/2025||Venue:|Harrow Point}. Another list begins with them.
 */
final class DayLines {
  private DayLines() {}

  /** The place of the first row below such lines, if they begin at {@code index}. */
  static OptionalInt below(GivenSheet sheet, int index) {
    List<Row> rows = sheet.rows();
    boolean day = false;
    int below = index;
    while (below < rows.size() && isLine(rows.get(below))) {
      day |= ToldInTitle.in(rows.get(below)).stream().anyMatch(ToldInTitle::isDay);
      below++;
    }
    return day && below < rows.size() ? OptionalInt.of(below) : OptionalInt.empty();
  }

  private static boolean isLine(Row row) {
    boolean title = Pairs.filled(row).size() == 1;
    return !Signature.is(row) && (title || !ToldInTitle.in(row).isEmpty() || Pairs.areMarked(row));
  }
}

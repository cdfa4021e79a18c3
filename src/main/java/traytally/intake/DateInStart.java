package traytally.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.intake.HeaderSearch.Start;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Starts that tell the day with the time, where no other column tells the day. */
final class DateInStart {
  /** As many rows tell a column's habit (an assumption). */
  private static final int LOOKED_AT = 60;

  private DateInStart() {}

  /** The header with the day taken from such a column; numbers of trips are no days. */
  static Start settled(GivenSheet sheet, Start start) {
    ColumnGuess guess = start.guess();
    Optional<Integer> begin = Optional.ofNullable(guess.columns().get(Field.START));
    int date = guess.columns().getOrDefault(Field.DATE, -1);
    List<Row> rows =
        sheet.rows().subList(start.last() + 1, sheet.rows().size()).stream()
            .limit(LOOKED_AT)
            .toList();
    if (guess.kind() != ListKind.TRIPS
        || begin.isEmpty()
        || ColumnGuess.AS_SAID.equals(guess.why().get(date))
        || (date >= 0 && rows.stream().anyMatch(row -> tellsDay(row.cell(date))))
        || rows.stream().noneMatch(row -> tellsDay(row.cell(begin.get())))) {
      return start;
    }
    Map<Field, Integer> columns = new HashMap<>(guess.columns());
    Map<Integer, String> why = new HashMap<>(guess.why());
    columns.put(Field.DATE, begin.get());
    why.put(date, "passed over: tells no day");
    why.put(begin.get(), "tells the day and the time");
    ColumnGuess told = new ColumnGuess(guess.kind(), columns, guess.across(), why, guess.score());
    return new Start(start.first(), start.last(), start.headers(), told);
  }

  private static boolean tellsDay(Cell cell) {
    return cell instanceof Cell.DateTime
        || (cell instanceof Cell.Text text && Dates.isDate(text.text()));
  }
}

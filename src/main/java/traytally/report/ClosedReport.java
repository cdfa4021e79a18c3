package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.report.Column.Kind;

/** The months in which the angler will not fish a water. */
public final class ClosedReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("water", "Water", Kind.TEXT),
          new Column("months", "", Kind.TEXT),
          new Column("", "Closed", Kind.TEXT));

  private ClosedReport() {}

  public static Report of(Book book, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    ClosedWaters.of(book)
        .months()
        .forEach(
            (water, months) ->
                rows.add(
                    List.of(
                        Value.of(water.text()),
                        Value.of(months.text()),
                        Value.of(months.words()))));
    String note =
        rows.isEmpty()
            ? "No closed months are noted: traytally plan closed \"Gannet Stack\" 2-4"
            : Words.RULES;
    return new Report(
        "plan-closed",
        "Closed months, by your own note",
        asOf,
        List.of(),
        COLUMNS,
        rows,
        List.of(),
        List.of(note));
  }
}

package traytally.report;

import java.time.LocalDate;
import java.util.List;
import traytally.ledger.Book;
import traytally.ledger.Fact.Agreed;
import traytally.report.Column.Kind;

/** The spellings the angler agreed to. */
public final class AgreedReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("spelling", "Spelling", Kind.TEXT),
          new Column("name", "Stands for", Kind.TEXT));

  private AgreedReport() {}

  public static Report of(Book book, LocalDate asOf) {
    List<List<Value>> rows =
        book.facts(Agreed.class).stream()
            .map(
                agreed ->
                    List.of(Value.of(agreed.spelling().text()), Value.of(agreed.name().text())))
            .toList();
    List<String> notes = rows.isEmpty() ? List.of("No spellings are agreed.") : List.of();
    return new Report(
        "agree", "Agreed spellings", asOf, List.of(), COLUMNS, rows, List.of(), notes);
  }
}

package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.Recorded;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.trip.LossCause;

/** Every movement of pieces, in the order recorded. */
public final class LedgerReport {
  private static final List<Column> COLUMNS = columns();

  private LedgerReport() {}

  /** The movements of {@code ledger} up to the end of {@code asOf} that {@code wanted} lets by. */
  public static Report of(Ledger ledger, Predicate<Recorded<Movement>> wanted, LocalDate asOf) {
    List<Recorded<Movement>> listed =
        ledger.movements().stream()
            .filter(recorded -> !recorded.what().date().isAfter(asOf) && wanted.test(recorded))
            .toList();
    List<String> notes =
        ledger.movements().isEmpty()
            ? List.of("No pieces have moved yet: import a list of your tray first.")
            : listed.isEmpty() ? List.of("No movement is like that.") : List.of();
    return of(listed, asOf, notes);
  }

  /**
   * The movements recorded last, for a person to read.
   *
   * @param earlier how many there are before them
   */
  public static Report ofNewest(List<Recorded<Movement>> newest, long earlier, LocalDate asOf) {
    String count = String.format(Locale.ROOT, "%,d", earlier);
    return of(
        newest,
        asOf,
        List.of(
            "The newest "
                + newest.size()
                + " movements. "
                + count
                + " earlier ones are shown by --all, or by --since, --plastic, --kind and --batch."));
  }

  private static Report of(List<Recorded<Movement>> listed, LocalDate asOf, List<String> notes) {
    List<List<Value>> rows = new Mapped<>(listed, LedgerReport::row);
    return new Report("ledger", "Ledger", asOf, List.of(), COLUMNS, rows, List.of(), notes);
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(new Column("batch", "Batch", Kind.WHOLE));
    columns.add(new Column("date", "Date", Kind.DATE));
    columns.add(new Column("kind", "What", Kind.TEXT));
    columns.add(new Column("how", "How", Kind.TEXT, Room.SPARE));
    columns.addAll(PlasticColumns.COLUMNS);
    columns.add(new Column("pieces", "Pieces", Kind.WHOLE));
    columns.add(new Column("note", "Note", Kind.TEXT, Room.SPARE));
    return List.copyOf(columns);
  }

  private static List<Value> row(Recorded<Movement> recorded) {
    Movement movement = recorded.what();
    List<Value> row = new ArrayList<>();
    row.add(Value.of(recorded.batch()));
    row.add(Value.of(movement.date()));
    row.add(Value.of(movement.kind().word()));
    row.add(movement.how().map(LossCause::word).map(Value::of).orElse(Value.UNKNOWN));
    row.addAll(PlasticColumns.cells(movement.plastic()));
    row.add(Value.of(movement.pieces()));
    row.add(Value.of(movement.note()));
    return row;
  }
}

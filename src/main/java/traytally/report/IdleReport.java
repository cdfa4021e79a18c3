package traytally.report;

import java.util.ArrayList;
import java.util.List;
import traytally.report.Column.Kind;
import traytally.report.Report.Single;
import traytally.restock.Idle;
import traytally.restock.IdleLine;
import traytally.restock.Prospect;

/** The pieces that will most likely not be used, and the money in them. */
public final class IdleReport {
  private static final List<Column> COLUMNS = columns();

  private IdleReport() {}

  /** What lies idle, most money first. */
  public static Report of(Idle idle, Swatches swatches) {
    List<Single> facts =
        List.of(
            new Single(
                new Column("until", "Not used until", Kind.DATE), Value.of(idle.horizon().to())),
            new Single(
                new Column("trips_counted", "Trips counted", Kind.WHOLE),
                Value.of(idle.horizon().trips().size())),
            new Single(
                new Column("idle_pieces", "Idle pieces", Kind.WHOLE),
                Value.of(idle.pieces().count())),
            new Single(new Column("money", "Money in them", Kind.MONEY), Value.of(idle.money())),
            new Single(
                new Column("currency", "Currency", Kind.TEXT),
                Value.of(idle.currency().getCurrencyCode())));
    return new Report(
        "idle",
        "Idle pieces",
        idle.asOf(),
        facts,
        COLUMNS,
        idle.lines().stream().map(line -> row(line, swatches)).toList(),
        List.of(),
        notes(idle));
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>(PlasticColumns.WITH_SWATCHES);
    columns.add(new Column("pieces", "Pieces", Kind.WHOLE));
    columns.add(new Column("idle_pieces", "Idle", Kind.WHOLE));
    columns.add(new Column("money", "Money", Kind.MONEY));
    columns.add(new Column("expected_use", "Use", Kind.DECIMAL));
    columns.add(new Column("use_p90", "Use at most", Kind.WHOLE));
    columns.add(new Column("standing", "Standing", Kind.TEXT));
    columns.add(new Column("kept", "", Kind.YES_NO));
    columns.add(new Column("trust", "", Kind.CHANCE));
    columns.add(new Column("wanted_by", "Might suit", Kind.TEXT));
    return List.copyOf(columns);
  }

  private static List<Value> row(IdleLine line, Swatches swatches) {
    Prospect prospect = line.prospect();
    List<Value> row = new ArrayList<>(PlasticColumns.cells(prospect.plastic(), swatches));
    row.add(Value.of(prospect.pieces().count()));
    row.add(Value.of(line.idle().count()));
    row.add(Value.ofMoney(line.money()));
    row.add(Value.of(prospect.expectedUse()));
    row.add(Value.of(prospect.useP90()));
    row.add(Value.of(prospect.standing().word()));
    row.add(Value.of(prospect.kept()));
    row.add(Value.of(prospect.trust().trust()));
    row.add(line.wantedBy().isEmpty() ? Value.UNKNOWN : Value.of(line.wantedBy()));
    return row;
  }

  private static List<String> notes(Idle idle) {
    List<String> notes = new ArrayList<>();
    if (idle.horizon().trips().isEmpty()) {
      notes.add("No trip is planned and none logged: what will not be used cannot be told yet.");
      return notes;
    }
    notes.add("Counted for " + idle.horizon().words() + ".");
    if (idle.useAssumed()) {
      notes.add("No trip is logged yet: use is assumed, and so is this list.");
    }
    if (idle.lines().isEmpty()) {
      notes.add("Everything in the box may be used up by then.");
      return notes;
    }
    notes.add(
        "Idle is what lies beyond the use that is not exceeded nine times in ten, the rest of the"
            + " box being kept filled.");
    notes.add(
        "They might suit somebody who fishes as said beside them: where your log has the colour's"
            + " most takes an hour, else where common practice tries such a tone.");
    long unpriced = idle.lines().stream().filter(line -> line.money().isEmpty()).count();
    if (unpriced > 0) {
      notes.add(
          Words.count(unpriced, "plastic")
              + " without a price on any list: the money in them is not counted.");
    }
    return notes;
  }
}

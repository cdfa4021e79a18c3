package traytally.report;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import traytally.ledger.Batch;
import traytally.report.Column.Kind;

/** Every batch: what each command recorded, and whether it stands. */
public final class BatchesReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("batch", "Batch", Kind.WHOLE),
          new Column("recorded_on", "Recorded", Kind.DATE),
          new Column("command", "Command", Kind.TEXT),
          new Column("summary", "What", Kind.TEXT),
          new Column("undone_by", "Undone by", Kind.WHOLE));

  private BatchesReport() {}

  /** The batches in the order recorded; {@code zone} says on which day that was. */
  public static Report of(List<Batch> batches, ZoneId zone, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    for (Batch batch : batches) {
      rows.add(
          List.of(
              Value.of(batch.id()),
              Value.of(LocalDate.ofInstant(batch.recordedAt(), zone)),
              Value.of(batch.command()),
              Value.of(batch.summary()),
              orUnknown(batch.undoneBy())));
    }
    List<String> notes =
        List.of(
            rows.isEmpty()
                ? "Nothing was recorded yet."
                : "traytally undo N takes a batch back; --dry-run shows what that would do.");
    return new Report("batches", "Batches", asOf, List.of(), COLUMNS, rows, List.of(), notes);
  }

  private static Value orUnknown(OptionalLong number) {
    return number.isPresent() ? Value.of(number.getAsLong()) : Value.UNKNOWN;
  }
}

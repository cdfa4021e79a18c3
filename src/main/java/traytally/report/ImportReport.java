package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import traytally.intake.Imported;
import traytally.intake.ListKind;
import traytally.intake.Problem;
import traytally.intake.SheetReading;
import traytally.report.Column.Kind;
import traytally.report.Report.Single;

/** What an import took, assumed and skipped. */
public final class ImportReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("sheet", "Sheet", Kind.TEXT),
          new Column("row", "Row", Kind.WHOLE),
          new Column("column", "Column", Kind.TEXT),
          new Column("value", "Value", Kind.TEXT),
          new Column("problem", "What to know", Kind.TEXT),
          new Column("severity", "", Kind.TEXT));

  private ImportReport() {}

  /**
   * The report of a run.
   *
   * @param batch what was recorded; empty if nothing was
   */
  public static Report of(Imported imported, OptionalLong batch, boolean dryRun, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    imported.problems().forEach(problem -> rows.add(row(problem)));
    return new Report(
        "import",
        dryRun ? "Import, tried only" : "Import",
        asOf,
        facts(imported, batch, dryRun),
        COLUMNS,
        rows,
        List.of(),
        notes(imported, batch, dryRun));
  }

  private static List<Single> facts(Imported imported, OptionalLong batch, boolean dryRun) {
    String kinds =
        imported.readings().stream()
            .flatMap(reading -> reading.kind().stream())
            .map(ListKind::word)
            .distinct()
            .collect(Collectors.joining(" "));
    return List.of(
        new Single(new Column("kind", "Taken for", Kind.TEXT), Value.of(kinds)),
        new Single(new Column("rows_read", "Rows read", Kind.WHOLE), Value.of(imported.rowsRead())),
        new Single(
            new Column("rows_taken", "Rows taken", Kind.WHOLE), Value.of(imported.rowsTaken())),
        new Single(
            new Column("rows_skipped", "Rows skipped", Kind.WHOLE),
            Value.of(imported.rowsSkipped())),
        new Single(
            new Column("batch", "Batch", Kind.WHOLE),
            batch.isPresent() ? Value.of(batch.getAsLong()) : Value.UNKNOWN),
        new Single(new Column("dry_run", "", Kind.YES_NO), Value.of(dryRun)));
  }

  private static List<Value> row(Problem problem) {
    return List.of(
        problem.sheet().isEmpty() ? Value.UNKNOWN : Value.of(problem.sheet()),
        Value.of(problem.row()),
        problem.column().isEmpty() ? Value.UNKNOWN : Value.of(problem.column()),
        Value.of(problem.value()),
        Value.of(problem.problem()),
        Value.of(problem.severity().word()));
  }

  private static List<String> notes(Imported imported, OptionalLong batch, boolean dryRun) {
    List<String> notes = new ArrayList<>();
    for (SheetReading reading : imported.readings()) {
      String place =
          reading.sheet().isEmpty() ? reading.file() : reading.file() + ", " + reading.sheet();
      if (reading.kind().isPresent()) {
        notes.add(place + ": taken as " + reading.kind().get().word() + ". " + columns(reading));
      }
      reading.assumptions().forEach(assumption -> notes.add(place + ": " + assumption));
    }
    notes.addAll(imported.notices());
    if (imported.entry().isEmpty()) {
      notes.add("Nothing changed.");
    } else if (dryRun) {
      notes.add("Tried only: nothing was recorded.");
    } else if (batch.isPresent()) {
      notes.add("Recorded as batch " + batch.getAsLong() + "; traytally undo takes it back.");
    }
    return notes;
  }

  private static String columns(SheetReading reading) {
    return reading.columns().stream()
            .map(
                column ->
                    column.letters()
                        + " "
                        + (column.header().isEmpty()
                            ? "(no header)"
                            : "\"" + column.header() + "\"")
                        + column
                            .field()
                            .map(field -> " is " + field.word())
                            .orElse(" is passed over"))
            .collect(Collectors.joining(", "))
        + ".";
  }
}

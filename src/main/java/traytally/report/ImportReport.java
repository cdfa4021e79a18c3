package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import traytally.intake.Imported;
import traytally.intake.ListKind;
import traytally.intake.Problem;
import traytally.intake.Problem.Severity;
import traytally.intake.SheetReading;
import traytally.report.Column.Kind;
import traytally.report.Report.Single;

/** What an import took, assumed and skipped. */
public final class ImportReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("sheet", "", Kind.TEXT),
          new Column("row", "", Kind.WHOLE),
          new Column("column", "", Kind.TEXT),
          new Column("value", "", Kind.TEXT),
          new Column("problem", "", Kind.TEXT),
          new Column("severity", "", Kind.TEXT));

  private static final List<Column> READ_AS =
      List.of(
          new Column("file", "", Kind.TEXT),
          new Column("sheet", "", Kind.TEXT),
          new Column("column", "", Kind.TEXT),
          new Column("header", "", Kind.TEXT),
          new Column("read_as", "", Kind.TEXT),
          new Column("why", "", Kind.TEXT));

  private static final List<Column> ASSUMED =
      List.of(
          new Column("file", "", Kind.TEXT),
          new Column("sheet", "", Kind.TEXT),
          new Column("assumption", "", Kind.TEXT));

  /** The reason that needs no saying. */
  private static final String USUAL = "a usual word for it";

  /** A reason said once for the whole list. */
  private static final String REMEMBERED = "as the last time";

  /** More sentences of one kind than this are not read on a screen (an assumption). */
  private static final int MOST_SAID = 100;

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
        new Single(new Column("dry_run", "", Kind.YES_NO), Value.of(dryRun)),
        new Single(new Column("columns", "", Kind.TEXT), readAs(imported)),
        new Single(new Column("assumptions", "", Kind.TEXT), assumed(imported)));
  }

  private static Value readAs(Imported imported) {
    List<List<Value>> rows = new ArrayList<>();
    for (SheetReading reading : imported.readings()) {
      for (SheetReading.ColumnTaken column : reading.columns()) {
        rows.add(
            List.of(
                Value.of(reading.file()),
                textOrUnknown(reading.sheet()),
                Value.of(column.letters()),
                textOrUnknown(column.header()),
                column.field().map(field -> Value.of(field.word())).orElse(Value.UNKNOWN),
                Value.of(column.why())));
      }
    }
    return new Value.Rows(READ_AS, rows);
  }

  private static Value assumed(Imported imported) {
    List<List<Value>> rows = new ArrayList<>();
    for (SheetReading reading : imported.readings()) {
      for (String assumption : reading.assumptions()) {
        rows.add(
            List.of(
                Value.of(reading.file()), textOrUnknown(reading.sheet()), Value.of(assumption)));
      }
    }
    return new Value.Rows(ASSUMED, rows);
  }

  private static Value textOrUnknown(String text) {
    return text.isEmpty() ? Value.UNKNOWN : Value.of(text);
  }

  private static List<Value> row(Problem problem) {
    return List.of(
        textOrUnknown(problem.sheet()),
        Value.of(problem.row()),
        textOrUnknown(problem.column()),
        Value.of(problem.value()),
        Value.of(problem.problem()),
        Value.of(problem.severity().word()));
  }

  private static List<String> notes(Imported imported, OptionalLong batch, boolean dryRun) {
    List<String> notes = new ArrayList<>();
    for (SheetReading reading : imported.readings()) {
      String place =
          reading.sheet().isEmpty() ? reading.file() : reading.file() + ", " + reading.sheet();
      reading.kind().ifPresent(kind -> notes.add(place + ": " + columns(kind, reading)));
      reading.assumptions().forEach(assumption -> notes.add(place + ": " + assumption));
    }
    say(imported, Severity.PROBLEM, "Not taken: ", notes);
    say(imported, Severity.APPROXIMATE, "", notes);
    say(imported, Severity.NOTE, "", notes);
    notes.addAll(imported.notices());
    notes.addAll(ImportSums.of(imported.entry()));
    if (imported.entry().isEmpty()) {
      notes.add("Nothing changed.");
    } else if (dryRun) {
      notes.add("Tried only: nothing was recorded.");
    } else if (batch.isPresent()) {
      notes.add("Recorded as batch " + batch.getAsLong() + "; traytally undo takes it back.");
    }
    return notes;
  }

  private static void say(Imported imported, Severity severity, String start, List<String> notes) {
    List<Problem> all = imported.problems().stream().filter(p -> p.severity() == severity).toList();
    all.stream().limit(MOST_SAID).forEach(problem -> notes.add(start + problem.sentence()));
    if (all.size() > MOST_SAID) {
      notes.add(
          start
              + (all.size() - MOST_SAID)
              + " more such rows. --format json lists all; --problems FILE.xlsx writes out those"
              + " not taken.");
    }
  }

  /** What the columns were taken for; the reason only where it is not the header's plain word. */
  private static String columns(ListKind kind, SheetReading reading) {
    List<String> read = new ArrayList<>();
    List<String> passed = new ArrayList<>();
    for (SheetReading.ColumnTaken column : reading.columns()) {
      String name =
          column.letters() + (column.header().isEmpty() ? "" : " \"" + column.header() + "\"");
      if (column.field().isEmpty()) {
        passed.add(name);
      } else {
        boolean plain = column.why().equals(USUAL) || column.why().equals(REMEMBERED);
        String why = plain ? "" : " (" + column.why() + ")";
        read.add(name + " as " + column.field().get().word() + why);
      }
    }
    return "read as "
        + what(kind)
        + (reading.columns().stream().anyMatch(c -> c.why().equals(REMEMBERED))
            ? ", " + REMEMBERED
            : "")
        + ": "
        + String.join(", ", read)
        + (passed.isEmpty() ? "" : "; passed over: " + String.join(", ", passed))
        + ".";
  }

  private static String what(ListKind kind) {
    return switch (kind) {
      case BOX -> "a list of the box";
      case TRIPS -> "a trip log";
      case PLAN -> "a plan of trips";
      case PRICES -> "a list of prices";
    };
  }
}

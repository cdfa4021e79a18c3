package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.intake.ProblemRows;
import traytally.report.Column.Kind;

/** The rows of a person's own list that were not taken, each with what is wrong beside it. */
public final class ProblemsReport {
  private ProblemsReport() {}

  /** The rows of one sheet, under the person's own headers. */
  public static Report of(ProblemRows problems, LocalDate asOf) {
    List<Column> columns = new ArrayList<>();
    // "Row" and "Problem" are headers that an import passes over, so the sheet can be put right
    // and handed in again.
    columns.add(new Column("", "Row", Kind.WHOLE));
    for (String header : problems.headers()) {
      columns.add(new Column("", header.isEmpty() ? " " : header, Kind.TEXT));
    }
    columns.add(new Column("", "Problem", Kind.TEXT));
    List<List<Value>> rows = new ArrayList<>();
    for (ProblemRows.Line line : problems.rows()) {
      List<Value> row = new ArrayList<>();
      row.add(Value.of(line.number()));
      line.cells().forEach(cell -> row.add(Value.of(cell)));
      row.add(Value.of(line.problem()));
      rows.add(row);
    }
    String title = problems.sheet().isEmpty() ? problems.file() : problems.sheet();
    return new Report("problems", title, asOf, List.of(), columns, rows, List.of(), List.of());
  }
}

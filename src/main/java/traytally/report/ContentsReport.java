package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.report.Column.Kind;

/** The first sheet of the workbook with everything: what is where, and the cautions. */
public final class ContentsReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("sheet", "Sheet", Kind.TEXT),
          new Column("rows", "Rows", Kind.WHOLE),
          new Column("what", "What it shows", Kind.TEXT));

  private ContentsReport() {}

  /** What {@code sheets} show. */
  public static Report of(List<Sheet> sheets, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    for (Sheet sheet : sheets) {
      rows.add(
          List.of(
              Value.of(sheet.report().title()),
              Value.of(sheet.report().rows().size()),
              Value.of(sheet.about())));
    }
    return new Report(
        "report",
        "Contents",
        asOf,
        List.of(),
        COLUMNS,
        rows,
        List.of(),
        List.of(
            "Trust is what your own log says of your own days. It is no promise of fish.",
            Words.RULES,
            Words.CARE));
  }
}

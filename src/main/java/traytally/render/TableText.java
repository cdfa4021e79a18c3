package traytally.render;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import traytally.report.Report;

/** A report as a table for a terminal or plain paper, no wider than asked. */
final class TableText implements TextRenderer {
  @Override
  public void render(Report report, Look look, Writer out) throws IOException {
    try {
      write(report, new Wording(report, look), new Page(look, out));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static void write(Report report, Wording wording, Page page) {
    page.strong(wording.title());
    page.flow(wording.facts().stream().map(wording::fact).toList());
    page.gap();
    List<String> leftOut = body(report, wording, page);
    page.gap();
    sums(wording, page);
    page.gap();
    if (!leftOut.isEmpty()) {
      page.note("No room in " + page.width() + " columns for: " + String.join(", ", leftOut) + ".");
    }
    wording.notes().forEach(page::note);
  }

  /** Sets the rows, and tells the headings of the columns that found no room. */
  private static List<String> body(Report report, Wording wording, Page page) {
    Grid grid = Grid.of(report, wording).inText();
    if (grid.columns().isEmpty()) {
      return List.of();
    }
    if (grid.rows().isEmpty() && report.sections().isEmpty()) {
      page.line("(none)");
      return List.of();
    }
    Arrangement arrangement = Arrangement.of(grid, page.width());
    RowLayout layout = arrangement.layout();
    layout.begin(page);
    int next = 0;
    for (Report.Section section : report.sections()) {
      layout.rows(next, section.from(), page);
      if (section.from() > 0) {
        page.gap();
      }
      page.strong(Wording.clean(section.heading()));
      layout.rows(section.from(), section.to(), page);
      page.summary(wording.sentence(section.summary()));
      page.gap();
      next = section.to();
    }
    layout.rows(next, grid.rows().size(), page);
    return arrangement.leftOut();
  }

  /** Labels at the left, amounts under one another. */
  private static void sums(Wording wording, Page page) {
    int labels = 0;
    int amounts = 0;
    for (Report.Single sum : wording.sums()) {
      labels = Math.max(labels, DisplayWidth.of(Wording.clean(sum.column().label())));
      amounts = Math.max(amounts, DisplayWidth.of(wording.factValue(sum)));
    }
    for (Report.Single sum : wording.sums()) {
      page.line(
          DisplayWidth.left(Wording.clean(sum.column().label()), labels + Grid.GAP)
              + DisplayWidth.right(wording.factValue(sum), amounts));
    }
  }
}

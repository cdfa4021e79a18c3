package traytally.render;

import java.io.IOException;
import java.io.Writer;
import java.util.Optional;
import traytally.report.Report;

/** A report as a table for a terminal or plain paper, no wider than asked. */
final class TableText implements TextRenderer {
  @Override
  public void render(Report report, Look look, Writer out) throws IOException {
    Wording wording = new Wording(report, look);
    Page page = new Page(look);
    page.strong(wording.title());
    page.flow(wording.facts().stream().map(wording::fact).toList());
    page.gap();
    body(report, Grid.of(report, wording), page);
    page.gap();
    sums(wording, page);
    page.gap();
    wording.notes().forEach(page::note);
    out.write(page.text());
  }

  private static void body(Report report, Grid grid, Page page) {
    if (grid.columns().isEmpty()) {
      return;
    }
    if (grid.rows().isEmpty() && report.sections().isEmpty()) {
      page.line("(none)");
      return;
    }
    Optional<int[]> widths = grid.fit(page.width());
    RowLayout layout = widths.isPresent() ? new SideBySide(grid, widths.get()) : new Stacked(grid);
    layout.begin(page);
    int next = 0;
    for (Report.Section section : report.sections()) {
      layout.rows(next, section.from(), page);
      if (section.from() > 0) {
        page.gap();
      }
      page.strong(Wording.clean(section.heading()));
      layout.rows(section.from(), section.to(), page);
      page.summary(Wording.clean(section.summary()));
      page.gap();
      next = section.to();
    }
    layout.rows(next, grid.rows().size(), page);
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

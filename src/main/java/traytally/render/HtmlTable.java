package traytally.render;

import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import traytally.report.Column;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.report.Report;
import traytally.report.Value;

/** The rows of a report as a table of a page. On a phone each row becomes a block of its own. */
final class HtmlTable {
  /** Columns of 11-point text beside one another beyond which paper lies on its side. */
  private static final int UPRIGHT = 95;

  private final Report report;
  private final UnaryOperator<String> letters;
  private final Grid all;
  private final Grid beside;
  private final Grid below;
  private final int across;

  HtmlTable(Report report, Wording wording, UnaryOperator<String> letters) {
    this.report = report;
    this.letters = letters;
    this.all = Grid.of(report, wording);
    this.beside = all.inText().only(i -> all.inText().columns().get(i).room() != Room.BELOW);
    this.below = all.only(Room.BELOW);
    this.across = Math.max(1, beside.columns().size());
  }

  /** Whether the columns want the long side of the paper. */
  boolean wide() {
    int total = 0;
    int[] widths = beside.cellWidths();
    for (int i = 0; i < widths.length; i++) {
      total += Math.max(widths[i], Grid.headingWidth(beside.headings().get(i), 2)) + Grid.GAP;
    }
    return total > UPRIGHT;
  }

  void write(Markup page) {
    if (beside.columns().isEmpty()) {
      return;
    }
    page.open("table", "class", "rows").line().open("thead").open("tr");
    for (int i = 0; i < across; i++) {
      String heading = letters.apply(beside.headings().get(i));
      page.element("th", heading, "scope", "col", "class", look(i));
    }
    page.close().close().line();
    int done = 0;
    for (Report.Section section : report.sections()) {
      rows(done, section.from(), page);
      section(section, page);
      done = section.to();
    }
    rows(done, report.rows().size(), page);
    if (report.rows().isEmpty() && report.sections().isEmpty()) {
      page.open("tbody").open("tr").element("td", "(none)", "colspan", across + "");
      page.close().close().line();
    }
    page.close().line();
  }

  private void section(Report.Section section, Markup page) {
    String heading = letters.apply(Wording.clean(section.heading()));
    page.open("tbody", "class", "section").open("tr");
    page.element(
        "th", heading, "colspan", across + "", "scope", "rowgroup", "dir", Direction.of(heading));
    page.close().close().line();
    rows(section.from(), section.to(), page);
    String summary = letters.apply(Wording.clean(section.summary()));
    if (!summary.isEmpty()) {
      page.open("tbody", "class", "summary").open("tr");
      page.element("td", summary, "colspan", across + "");
      page.close().close().line();
    }
  }

  private void rows(int from, int to, Markup page) {
    for (int r = from; r < to; r++) {
      page.open("tbody", "class", "item").open("tr", "class", "row");
      for (int i = 0; i < across; i++) {
        cell(r, i, page);
      }
      page.close();
      below(r, page);
      page.close().line();
    }
  }

  private void cell(int row, int column, Markup page) {
    Column shown = beside.columns().get(column);
    String text = letters.apply(beside.rows().get(row).get(column));
    boolean unknown = text.equals(Wording.UNKNOWN);
    page.open(
        "td",
        "class",
        look(column) + (unknown ? " unknown" : ""),
        "dir",
        Direction.of(text),
        "data-label",
        letters.apply(beside.headings().get(column)));
    if (shown.key().equals("colour")) {
      swatches(row, page);
    }
    Value value = report.rows().get(row).get(beside.places().get(column));
    if (shown.kind() == Kind.TICK) {
      tick(shown, page);
    } else if (shown.kind() == Kind.CHANCE && value instanceof Value.Decimal chance) {
      bar(chance.number(), page);
      page.element("span", text, "class", "figure");
    } else {
      page.element("span", text);
    }
    page.close();
  }

  private String look(int column) {
    String kind = beside.columns().get(column).kind().name().toLowerCase(Locale.ROOT);
    return kind.replace('_', '-') + (beside.atRight(column) ? " number" : "");
  }

  /** A box to tick with a finger, or with a pencil where it is printed. */
  private void tick(Column column, Markup page) {
    page.open("span", "class", "box");
    page.empty("input", "type", "checkbox", "aria-label", column.label());
    page.close();
  }

  /** The chance as a bar beside its number, which says the same. */
  private static void bar(double chance, Markup page) {
    String width = String.format(Locale.ROOT, "width:%d%%", Math.round(100 * chance));
    page.open("span", "class", "bar", "aria-hidden", "true");
    page.element("span", "", "class", "fill", "style", width).close();
  }

  private void swatches(int row, Markup page) {
    List<Value> cells = report.rows().get(row);
    for (int i = 0; i < cells.size(); i++) {
      if (cells.get(i) instanceof Value.Tint tint) {
        String label = report.columns().get(i).label();
        page.element(
            "span",
            "",
            "class",
            "swatch " + label.toLowerCase(Locale.ROOT),
            "style",
            "background-color:" + tint.swatch(),
            "title",
            label + " " + tint.swatch());
      }
    }
  }

  private void below(int row, Markup page) {
    boolean some = below.rows().get(row).stream().anyMatch(text -> !text.equals(Wording.UNKNOWN));
    if (!some) {
      return;
    }
    boolean ticked = beside.columns().get(0).kind() == Kind.TICK && across > 1;
    page.open("tr", "class", "below");
    if (ticked) {
      page.element("td", "");
    }
    page.open("td", "colspan", (ticked ? across - 1 : across) + "");
    for (int i = 0; i < below.columns().size(); i++) {
      String text = letters.apply(below.rows().get(row).get(i));
      if (!text.equals(Wording.UNKNOWN)) {
        page.open("div", "class", "remark");
        page.element("span", letters.apply(below.headings().get(i)), "class", "label").text(" ");
        page.element("span", text);
        page.close();
      }
    }
    page.close().close();
  }
}

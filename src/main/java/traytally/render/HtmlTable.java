package traytally.render;

import java.util.Locale;
import java.util.Set;
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

  /** Columns of text; longer than most colours' names (an assumption). */
  private static final int SHORT = 16;

  /** What swatches and the bar of a chance take of the width. */
  private static final int SWATCH_COLUMNS = 4;

  private static final int BAR_COLUMNS = 7;

  /** The columns that name a plastic: on a phone they need no label, and stand first. */
  private static final Set<String> NAMES = Set.of("body", "colour", "length_mm");

  private final Report report;
  private final Wording wording;
  private final UnaryOperator<String> letters;
  private final Grid all;
  private final Grid beside;
  private final Grid below;
  private final int across;

  HtmlTable(Report report, Wording wording, UnaryOperator<String> letters) {
    this.report = report;
    this.wording = wording;
    this.letters = letters;
    this.all = Grid.of(report, wording);
    this.beside = all.inText().only(i -> all.inText().columns().get(i).room() != Room.BELOW);
    this.below = all.only(Room.BELOW);
    this.across = Math.max(1, beside.columns().size());
  }

  /** Whether the columns want the long side of the paper. */
  boolean wide() {
    int total = 0;
    for (int i = 0; i < beside.columns().size(); i++) {
      total +=
          Math.max(beside.widest().get(i), Grid.headingWidth(beside.headings().get(i), 2))
              + Grid.GAP;
    }
    total += (all.columns().size() > all.inText().columns().size()) ? SWATCH_COLUMNS : 0;
    total +=
        BAR_COLUMNS * (int) beside.columns().stream().filter(c -> c.kind() == Kind.CHANCE).count();
    return total > UPRIGHT;
  }

  void write(Markup page) {
    if (beside.columns().isEmpty()) {
      return;
    }
    page.open("table", "class", ticked() ? "rows ticked" : "rows").line().open("thead").open("tr");
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
    String summary = letters.apply(wording.sentence(section.summary()));
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
        look(column) + (unknown ? " unknown" : "") + (isShort(shown, text) ? " short" : ""),
        "dir",
        Direction.of(text),
        "data-label",
        letters.apply(beside.headings().get(column)));
    swatches(row, beside.places().get(column), page);
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

  /** A text that is not to be broken over lines, since the room it saves would not be worth it. */
  private static boolean isShort(Column column, String text) {
    return column.kind() == Kind.TEXT && DisplayWidth.of(text) <= SHORT;
  }

  private String look(int column) {
    Column shown = beside.columns().get(column);
    Kind like = beside.holdsWords(column) ? Kind.TEXT : shown.kind();
    String kind = like.name().toLowerCase(Locale.ROOT).replace('_', '-');
    String named = NAMES.contains(shown.key()) ? " name" : "";
    return kind + (beside.atRight(column) ? " number" : "") + named;
  }

  private boolean ticked() {
    return across > 1 && beside.columns().get(0).kind() == Kind.TICK;
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

  /** The swatches whose columns stand before the one at {@code place}. */
  private void swatches(int row, int place, Markup page) {
    int first = place;
    while (first > 0 && report.columns().get(first - 1).kind() == Kind.SWATCH) {
      first--;
    }
    for (int i = first; i < place; i++) {
      if (report.rows().get(row).get(i) instanceof Value.Tint tint) {
        String label = report.columns().get(i).label();
        page.element(
            "span",
            "\u00a0",
            "class",
            "swatch " + label.toLowerCase(Locale.ROOT) + (tint.assumed() ? " guessed" : ""),
            "style",
            "background-color:" + tint.swatch(),
            "title",
            label + " " + tint.swatch() + (tint.assumed() ? ", guessed from the name" : ""));
      }
    }
  }

  private void below(int row, Markup page) {
    boolean some = below.rows().get(row).stream().anyMatch(text -> !text.equals(Wording.UNKNOWN));
    if (!some) {
      return;
    }
    page.open("tr", "class", "below");
    if (ticked()) {
      page.element("td", "");
    }
    page.open("td", "colspan", (ticked() ? across - 1 : across) + "");
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

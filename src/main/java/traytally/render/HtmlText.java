package traytally.render;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.function.UnaryOperator;
import traytally.report.Report;

/**
 * A report as one page of HTML that needs nothing beside itself: no script, no picture, no font.
 */
final class HtmlText implements TextRenderer {
  @Override
  public void render(Report report, Look look, Writer out) throws IOException {
    out.write(page(report, look, UnaryOperator.identity()));
  }

  /**
   * The page.
   *
   * @param letters what stands for a text where its letters are wanted otherwise
   */
  static String page(Report report, Look look, UnaryOperator<String> letters) throws IOException {
    Wording wording = new Wording(report, look);
    HtmlTable table = new HtmlTable(report, wording, letters);
    String title = letters.apply(wording.title());
    Markup page = new Markup();
    page.raw("<!DOCTYPE html>\n");
    page.open("html", "lang", "en").open("head");
    page.empty("meta", "charset", "utf-8");
    page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    page.empty(
        "meta",
        "http-equiv",
        "Content-Security-Policy",
        "content",
        "default-src 'none'; style-src 'unsafe-inline'");
    page.element("title", title);
    page.open("style").raw(PageStyle.of(look.paper(), table.wide(), title)).close();
    page.close().line();
    page.open("body").open("div", "class", "page").line();
    head(report, wording, letters, page);
    table.write(page);
    foot(wording, letters, page);
    page.close().close().close().line();
    return page.toString();
  }

  private static void head(
      Report report, Wording wording, UnaryOperator<String> letters, Markup page) {
    page.element("h1", letters.apply(Wording.clean(report.title())));
    page.open("div", "class", "facts");
    fact("As of", report.asOf().toString(), page);
    for (Report.Single single : wording.facts()) {
      fact(
          letters.apply(Wording.clean(single.column().label())),
          letters.apply(wording.factValue(single)),
          page);
    }
    page.close().line();
  }

  private static void fact(String label, String value, Markup page) {
    page.open("div", "class", "fact");
    page.element("span", label, "class", "label").text(" ");
    page.element("span", value, "class", "value", "dir", Direction.of(value));
    page.close();
  }

  private static void foot(Wording wording, UnaryOperator<String> letters, Markup page) {
    if (!wording.sums().isEmpty()) {
      page.open("table", "class", "sums").open("tbody");
      for (Report.Single sum : wording.sums()) {
        page.open("tr");
        page.element("th", letters.apply(Wording.clean(sum.column().label())), "scope", "row");
        page.element("td", wording.factValue(sum));
        page.close();
      }
      page.close().close().line();
    }
    List<String> notes = wording.notesOnPictures();
    if (!notes.isEmpty()) {
      page.open("ul", "class", "notes");
      for (String note : notes) {
        page.element("li", letters.apply(note));
      }
      page.close().line();
    }
  }
}

package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.render.Examples.column;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import traytally.plastic.Swatch;
import traytally.report.Column;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.report.Report;
import traytally.report.Value;

class HtmlTextTest {
  private static String html(Report report) throws IOException {
    return Golden.text(report, Format.HTML, Look.PLAIN);
  }

  private static Document parsed(String html) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(html)));
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new AssertionError(html, e);
    }
  }

  private static String text(Document page) {
    return ((Element) page.getElementsByTagName("body").item(0)).getTextContent();
  }

  @Test
  void everyWordOfTheListStandsOnThePage() throws IOException {
    String text = text(parsed(html(Examples.restock())));
    for (String word :
        List.of(
            "Shopping list",
            "Harbour Tackle Loft",
            "motor oil",
            "75 mm",
            "93 %",
            "<1 %",
            "12.40",
            "2 packs, 9.40 EUR; postage 3.90",
            "no shop lists it",
            "31.15 EUR",
            "ask the authority")) {
      assertTrue(text.contains(word), word);
    }
  }

  @Test
  void thePageNeedsNothingBesideItselfAndRunsNothing() throws IOException {
    String html = html(Examples.restock());
    assertTrue(html.startsWith("<!DOCTYPE html>"));
    assertTrue(html.contains("default-src 'none'") || html.contains("default-src &#39;none&#39;"));
    for (String word : List.of("<script", "http:", "https:", "url(", "@import", "<img", "<link")) {
      assertFalse(html.contains(word), word);
    }
  }

  @Test
  void namesAreTextWhateverTheyHold() throws IOException {
    String hostile = "</style><script>alert(1)</script>\" onload='x' &amp; \u202e\u0007";
    Report report =
        new Report(
            "box",
            hostile,
            Examples.DAY,
            List.of(new Report.Single(column("k", hostile, Kind.TEXT), Value.of(hostile))),
            List.of(
                column("it", hostile, Kind.TEXT),
                new Column("why", hostile, Kind.TEXT, Room.BELOW)),
            List.of(List.of(Value.of(hostile), Value.of(hostile))),
            List.of(new Report.Section(hostile, 0, 1, hostile)),
            List.of(hostile));
    Document page = parsed(html(report));
    assertEquals(0, page.getElementsByTagName("script").getLength());
    assertEquals(1, page.getElementsByTagName("style").getLength());
    String shown = "</style><script>alert(1)</script>\" onload='x' &amp;";
    assertEquals(10, text(page).split(java.util.regex.Pattern.quote(shown), -1).length - 1);
  }

  @Test
  void theChanceIsABarBesideItsNumber() throws IOException {
    Document page = parsed(html(Examples.single(Kind.CHANCE, Value.of(0.934))));
    assertEquals(List.of("width:93%"), attributes(page, "fill", "style"));
    assertTrue(text(page).contains("93 %"));
  }

  @Test
  void aColourShowsItsSwatches() throws IOException {
    Report report =
        Examples.table(
            List.of(
                column("", "Base", Kind.SWATCH),
                column("", "Flake", Kind.SWATCH),
                column("colour", "Colour", Kind.TEXT)),
            List.of(
                List.of(
                    new Value.Tint(new Swatch(0x5b4a1e), false),
                    new Value.Tint(new Swatch(0xb08d2f), false),
                    Value.of("motor oil")),
                List.of(Value.UNKNOWN, Value.UNKNOWN, Value.of("dusk"))));
    Document page = parsed(html(report));
    assertEquals(List.of("background-color:#5b4a1e"), attributes(page, "swatch base", "style"));
    assertEquals(List.of("background-color:#b08d2f"), attributes(page, "swatch flake", "style"));
    assertFalse(text(page).contains("dashed"));
  }

  @Test
  void aGuessedSwatchIsDashedAndTheNotesSayWhatThatMeans() throws IOException {
    Report report =
        Examples.table(
            List.of(column("", "Base", Kind.SWATCH), column("colour", "Colour", Kind.TEXT)),
            List.of(List.of(new Value.Tint(new Swatch(0x9c4a1a), true), Value.of("rust"))));
    Document page = parsed(html(report));
    assertEquals(
        List.of("Base #9c4a1a, guessed from the name"),
        attributes(page, "swatch base guessed", "title"));
    assertTrue(text(page).contains("dashed outline is guessed"));
  }

  @Test
  void sentencesStandBelowTheirRow() throws IOException {
    Report report =
        Examples.table(
            List.of(
                column("", "Got", Kind.TICK),
                column("colour", "Colour", Kind.TEXT),
                new Column("reason", "Why", Kind.TEXT, Room.BELOW)),
            List.of(List.of(Value.UNKNOWN, Value.of("rust"), Value.of("1 left; about 2 go"))));
    Document page = parsed(html(report));
    assertEquals(3, page.getElementsByTagName("tr").getLength());
    assertTrue(text(page).contains("Why 1 left; about 2 go"));
    assertEquals(1, page.getElementsByTagName("input").getLength());
  }

  @Test
  void namesThatRunToTheLeftSaySo() throws IOException {
    Document page = parsed(html(Examples.names()));
    NodeList cells = page.getElementsByTagName("td");
    int toTheLeft = 0;
    for (int i = 0; i < cells.getLength(); i++) {
      toTheLeft += ((Element) cells.item(i)).getAttribute("dir").equals("rtl") ? 1 : 0;
    }
    assertEquals(4, toTheLeft);
  }

  private static List<String> attributes(Document page, String look, String attribute) {
    NodeList spans = page.getElementsByTagName("span");
    return java.util.stream.IntStream.range(0, spans.getLength())
        .mapToObj(i -> (Element) spans.item(i))
        .filter(span -> span.getAttribute("class").equals(look))
        .map(span -> span.getAttribute(attribute))
        .toList();
  }
}

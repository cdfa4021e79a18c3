package traytally.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;

/** The texts that the cells of an .xlsx share (ECMA-376 part 1, 18.4). */
final class XlsxTexts {
  /** A character that XML cannot hold, written as its number (part 1, 22.9.2.19). */
  private static final Pattern ESCAPED = Pattern.compile("_x([0-9A-Fa-f]{4})_");

  private XlsxTexts() {}

  static List<Cell> read(XlsxPackage parts, String part, Limits limits)
      throws IOException, XMLStreamException {
    Ration.Meter characters = new Ration(limits.sharedCharacters(), Refusal.TOO_LARGE).meter(part);
    List<Cell> texts = new ArrayList<>();
    try (XmlPull xml = parts.xml(part)) {
      while (xml.next()) {
        if (xml.isStart("si")) {
          Cell cell = Cell.text(InertText.read(item(xml, "si", limits)));
          // A text costs some 60 bytes beside its characters (measured), so an empty one counts
          // too.
          characters.add(cell.shown().length() + 32L);
          texts.add(cell);
        }
      }
    }
    return texts;
  }

  /** The text of an si or is element just opened: plain or in runs, its reading aids left out. */
  static String item(XmlPull xml, String name, Limits limits) throws XMLStreamException {
    String whole = "";
    while (xml.next() && !xml.isEnd(name)) {
      if (xml.isStart("rPh")) {
        xml.skip();
      } else if (xml.isStart("t")) {
        String run = xml.text(limits);
        RowBuilder.checkLength(whole.length() + run.length(), limits);
        whole = whole.isEmpty() ? run : whole + run;
      }
    }
    return unescaped(whole);
  }

  static String unescaped(String text) {
    if (!text.contains("_x")) {
      return text;
    }
    return ESCAPED
        .matcher(text)
        .replaceAll(
            found ->
                Matcher.quoteReplacement(
                    String.valueOf((char) Integer.parseInt(found.group(1), 16))));
  }
}

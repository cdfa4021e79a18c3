package traytally.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;

/** How the cells of an .xlsx are shown: what their styles point at (ECMA-376 part 1, 18.8). */
final class XlsxFormats {
  private final Map<Integer, String> own = new HashMap<>();
  private final Map<Integer, CellFormat> known = new HashMap<>();
  private final List<CellFormat> byStyle = new ArrayList<>();
  private final BitSet struckFonts = new BitSet();
  private final BitSet struck = new BitSet();
  private final Limits limits;

  private XlsxFormats(Limits limits) {
    this.limits = limits;
  }

  /**
   * What each style says.
   *
   * @param struck the styles whose text is struck out
   */
  record Styles(List<CellFormat> formats, BitSet struck) {
    static final Styles NONE = new Styles(List.of(), new BitSet());
  }

  static Styles read(XlsxPackage parts, String part, Limits limits)
      throws IOException, XMLStreamException {
    XlsxFormats formats = new XlsxFormats(limits);
    try (XmlPull xml = parts.xml(part)) {
      while (xml.next()) {
        if (xml.isStart("numFmts")) {
          formats.readOwn(xml);
        } else if (xml.isStart("fonts")) {
          formats.readFonts(xml);
        } else if (xml.isStart("cellXfs")) {
          formats.readStyles(xml);
        }
      }
    }
    return new Styles(formats.byStyle, formats.struck);
  }

  private void readOwn(XmlPull xml) throws XMLStreamException {
    while (xml.next() && !xml.isEnd("numFmts")) {
      if (xml.isStart("numFmt")) {
        checkNumber(own.size());
        own.put(
            Integer.parseInt(xml.attribute("numFmtId", "0")),
            xml.attribute("formatCode", "General"));
      }
    }
  }

  private void readFonts(XmlPull xml) throws XMLStreamException {
    int font = -1;
    while (xml.next() && !xml.isEnd("fonts")) {
      if (xml.isStart("font")) {
        checkNumber(++font);
      } else if (xml.isStart("strike") && !xml.attribute("val", "1").matches("0|false|off")) {
        struckFonts.set(font);
      }
    }
  }

  private void readStyles(XmlPull xml) throws XMLStreamException {
    while (xml.next() && !xml.isEnd("cellXfs")) {
      if (xml.isStart("xf")) {
        checkNumber(byStyle.size());
        struck.set(
            byStyle.size(),
            struckFonts.get(Math.max(0, Integer.parseInt(xml.attribute("fontId", "0")))));
        int id = Integer.parseInt(xml.attribute("numFmtId", "0"));
        byStyle.add(
            known.computeIfAbsent(id, i -> CellFormat.of(i, Optional.ofNullable(own.get(i)))));
      }
    }
  }

  private void checkNumber(int count) {
    if (count >= limits.styles()) {
      throw new UnreadableSheetException(
          "This file has more cell styles than a spreadsheet allows. Copy the cells into a new file"
              + " and import that.");
    }
  }
}

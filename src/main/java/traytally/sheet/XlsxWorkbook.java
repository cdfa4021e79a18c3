package traytally.sheet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;

/** An .xlsx or .xlsm: a zip of XML parts (ECMA-376), transitional or strict. */
final class XlsxWorkbook extends Workbook {
  private final XlsxPackage parts;
  private final Limits limits;
  private final Index index;
  private final RowBuilder.Rations rations;

  private XlsxWorkbook(XlsxPackage parts, Limits limits, Index index) {
    super(index.sheets);
    this.parts = parts;
    this.limits = limits;
    this.index = index;
    this.rations = RowBuilder.Rations.of(limits);
  }

  static Workbook of(Path file, Limits limits) throws IOException, XMLStreamException {
    XlsxPackage parts = new XlsxPackage(file, limits);
    boolean opened = false;
    try {
      String workbook = workbookPart(parts);
      Index index = new Index(parts.links(workbook));
      index.read(parts, workbook, limits);
      opened = true;
      return new XlsxWorkbook(parts, limits, index);
    } finally {
      if (!opened) {
        parts.close();
      }
    }
  }

  private static String workbookPart(XlsxPackage parts) throws IOException, XMLStreamException {
    String part = XlsxPackage.target(parts.links(""), "officeDocument").orElse("xl/workbook.xml");
    if (part.endsWith(".bin")) {
      throw new UnreadableSheetException(
          "This is a binary workbook (.xlsb). Save it as .xlsx or .csv and import that.");
    }
    if (parts.has(part) && !part.startsWith("word/") && !part.startsWith("ppt/")) {
      return part;
    }
    if (parts.has("content.xml") || parts.has("mimetype")) {
      throw new UnreadableSheetException(
          "This is an OpenDocument sheet. Save it as .xlsx or .csv and import that.");
    }
    if (parts.hasFolder("Index/") || parts.has("Index.zip")) {
      throw new UnreadableSheetException(
          "This is a Numbers sheet. Export it as .xlsx or .csv and import that.");
    }
    throw new UnreadableSheetException(
        parts.has("[Content_Types].xml")
            ? "This is a document without cells. Save your list as .xlsx or .csv and import that."
            : "This is a packed archive. Unpack it and import the sheet inside.");
  }

  @Override
  Rows begin(Sheet sheet) throws IOException, XMLStreamException {
    String part = index.sheetParts.get(sheet.index());
    Tables tables = index.tables(parts, limits);
    RowBuilder builder = new RowBuilder(limits, rations, part);
    return new Rows(new XlsxRows(parts.xml(part), tables, builder, limits));
  }

  @Override
  public void close() {
    Refusal.unlessRead(
        () -> {
          parts.close();
          return true;
        });
  }

  /** What cells point at. */
  record Tables(List<Cell> texts, XlsxFormats.Styles styles, boolean from1904) {}

  /** What the workbook part says of the others. */
  private static final class Index {
    final List<Sheet> sheets = new ArrayList<>();
    final List<String> sheetParts = new ArrayList<>();
    private final Map<String, XlsxPackage.Link> links;
    private boolean from1904;
    private Optional<Tables> tables = Optional.empty();

    Index(Map<String, XlsxPackage.Link> links) {
      this.links = links;
    }

    void read(XlsxPackage parts, String workbook, Limits limits)
        throws IOException, XMLStreamException {
      try (XmlPull xml = parts.xml(workbook)) {
        while (xml.next()) {
          if (xml.isStart("workbookPr")) {
            from1904 |= xml.flag("date1904"); // an extension may hold a second, bare one
          } else if (xml.isStart("sheet")) {
            addSheet(xml, limits);
          }
        }
      }
      if (sheets.isEmpty()) {
        throw new UnreadableSheetException("This file has no sheet with cells in it.");
      }
    }

    private void addSheet(XmlPull xml, Limits limits) {
      if (sheets.size() >= limits.sheets()) {
        throw new UnreadableSheetException(
            "This file has too many sheets. Copy those you need into a new file and import that.");
      }
      XlsxPackage.Link link = links.get(xml.attribute("id", ""));
      if (link != null && link.type().endsWith("/worksheet")) {
        boolean hidden = !xml.attribute("state", "visible").equals("visible");
        sheets.add(new Sheet(sheets.size(), xml.attribute("name", ""), hidden));
        sheetParts.add(link.target());
      }
    }

    /** Read once, at the first sheet: a look at the tabs alone does without. */
    Tables tables(XlsxPackage parts, Limits limits) throws IOException, XMLStreamException {
      if (tables.isEmpty()) {
        Optional<String> texts = XlsxPackage.target(links, "sharedStrings").filter(parts::has);
        Optional<String> styles = XlsxPackage.target(links, "styles").filter(parts::has);
        tables =
            Optional.of(
                new Tables(
                    texts.isEmpty() ? List.of() : XlsxTexts.read(parts, texts.get(), limits),
                    styles.isEmpty()
                        ? XlsxFormats.Styles.NONE
                        : XlsxFormats.read(parts, styles.get(), limits),
                    from1904));
      }
      return tables.get();
    }
  }
}

package traytally.sheet;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** An .xlsx put together part by part, to have what no library would write. */
final class HandmadeXlsx {
  static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String LINKS =
      "http://schemas.openxmlformats.org/package/2006/relationships";
  private static final String TYPE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  private final Map<String, String> parts = new LinkedHashMap<>();

  /** One visible sheet, "Box", with the given content of its sheetData and after. */
  static HandmadeXlsx ofSheet(String inside) {
    return new HandmadeXlsx()
        .part("[Content_Types].xml", "<Types/>")
        .part("_rels/.rels", links(link("a", "officeDocument", "xl/workbook.xml")))
        .part(
            "xl/workbook.xml",
            "<workbook xmlns='%s' xmlns:r='urn:r'><sheets><sheet name='Box' r:id='s1'/></sheets></workbook>"
                .formatted(MAIN))
        .part(
            "xl/_rels/workbook.xml.rels",
            links(
                link("s1", "worksheet", "worksheets/sheet1.xml"),
                link("s2", "sharedStrings", "sharedStrings.xml"),
                link("s3", "styles", "styles.xml")))
        .part("xl/worksheets/sheet1.xml", sheet("<sheetData>" + inside + "</sheetData>"));
  }

  static String sheet(String inside) {
    return "<worksheet xmlns='" + MAIN + "'>" + inside + "</worksheet>";
  }

  static String links(String... links) {
    return "<Relationships xmlns='" + LINKS + "'>" + String.join("", links) + "</Relationships>";
  }

  static String link(String id, String type, String target) {
    return "<Relationship Id='%s' Type='%s' Target='%s'/>".formatted(id, TYPE + type, target);
  }

  HandmadeXlsx part(String name, String content) {
    parts.put(name, content);
    return this;
  }

  HandmadeXlsx texts(String items) {
    return part("xl/sharedStrings.xml", "<sst xmlns='" + MAIN + "'>" + items + "</sst>");
  }

  HandmadeXlsx without(String name) {
    parts.remove(name);
    return this;
  }

  Path writeTo(Path file) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
      }
    }
    return file;
  }

  /** Writes the file with one more part, too long to be held as text. */
  Path writeTo(Path file, String name, Content content) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        if (!part.getKey().equals(name)) {
          zip.putNextEntry(new ZipEntry(part.getKey()));
          zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
          zip.closeEntry();
        }
      }
      zip.putNextEntry(new ZipEntry(name));
      content.write(zip);
      zip.closeEntry();
    }
    return file;
  }

  /** Writes the bytes of one part. */
  interface Content {
    void write(OutputStream out) throws IOException;
  }
}

package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files made to fill the memory or to take for ever, handed to a program with 512 MB of heap. */
class HostileImportTest {
  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String HEADER = row(text("Body style") + text("Colour") + text("Pieces"));

  @TempDir Path folder;
  private final List<String> files = new ArrayList<>();

  @Test
  void noneOfThemHarmsTheProgram() throws IOException, InterruptedException {
    bomb();
    xlsx("12-billion-characters.xlsx", row(shared().repeat(16)).repeat(25_000), "");
    xlsx("far-corner.xlsx", "<row r='1048576'><c r='XFD1048576'><v>1</v></c></row>", "");
    xlsx("merges.xlsx", HEADER, merges(50_000));
    blanks();
    xlsx(
        "cycle.xlsx",
        HEADER + row(text("paddle") + text("kelp") + "<c r='C2'><f>C2+NOW()</f><v>7</v></c>"),
        "");
    Map<String, String> said = said();
    assertSays("65\ttraytally: This file is too large to be read.", said.get("bomb.xlsx"));
    assertSays(
        "65\ttraytally: This file holds more text than can be read.",
        said.get("12-billion-characters.xlsx"));
    assertSays("65\ttraytally: far-corner.xlsx: no list was found.", said.get("far-corner.xlsx"));
    assertSays(
        "65\ttraytally: A sheet of this file has too many merged cells.", said.get("merges.xlsx"));
    assertSays("65\ttraytally: This file is too large to be read.", said.get("blanks.csv"));
    assertEquals("0\t\t7 pieces", said.get("cycle.xlsx"), "stored results are read");
  }

  /** One sentence or two of the file, and nothing in the box. */
  private static void assertSays(String start, String said) {
    assertTrue(said.startsWith(start), said);
    assertTrue(said.endsWith(".\tno pieces"), said);
  }

  /** What each file came to, from one program of its own for all. */
  private Map<String, String> said() throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx512m", "-classpath", System.getProperty("java.class.path")));
    command.add(ImportEach.class.getName());
    command.addAll(files);
    Path out = folder.resolve("said.txt");
    Path err = folder.resolve("errors.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    boolean ended = process.waitFor(20L * files.size(), TimeUnit.SECONDS);
    process.destroyForcibly();
    String all = Files.readString(out) + Files.readString(err);
    assertTrue(ended, () -> "it hangs: " + all);
    assertEquals(0, process.exitValue(), all);
    Map<String, String> said = new LinkedHashMap<>();
    for (String line : Files.readAllLines(out)) {
      String[] parts = line.split("\t", 2);
      said.put(parts[0], parts[1]);
    }
    return said;
  }

  private static String row(String cells) {
    return "<row>" + cells + "</row>";
  }

  private static String text(String text) {
    return "<c t='inlineStr'><is><t>" + text + "</t></is></c>";
  }

  /** A cell of the one shared text, of 30,000 characters. */
  private static String shared() {
    return "<c t='s'><v>0</v></c>";
  }

  private static String merges(int count) {
    StringBuilder merges = new StringBuilder("<mergeCells>");
    for (int i = 0; i < count; i++) {
      merges.append("<mergeCell ref='A").append(i + 2).append(":B").append(i + 2).append("'/>");
    }
    return merges + "</mergeCells>";
  }

  private void xlsx(String name, String rows, String after) throws IOException {
    try (ZipOutputStream zip = begin(name)) {
      part(zip, "xl/sharedStrings.xml", "<sst><si><t>" + "x".repeat(30_000) + "</t></si></sst>");
      String sheet = "<worksheet xmlns='" + MAIN + "'><sheetData>" + rows + "</sheetData>";
      part(zip, "xl/worksheets/sheet1.xml", sheet + after + "</worksheet>");
    }
  }

  /** A sheet part of 128 MB in a file of 130 KB. */
  private void bomb() throws IOException {
    try (ZipOutputStream zip = begin("bomb.xlsx")) {
      zip.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
      zip.write("<worksheet><sheetData>".getBytes(StandardCharsets.UTF_8));
      byte[] blanks = " ".repeat(1 << 20).getBytes(StandardCharsets.UTF_8);
      for (int i = 0; i < 128; i++) {
        zip.write(blanks);
      }
      zip.closeEntry();
    }
    assertTrue(Files.size(folder.resolve("bomb.xlsx")) < 200_000);
  }

  /** A gigabyte that takes no room on the disk. */
  private void blanks() throws IOException {
    Path file = Files.writeString(folder.resolve("blanks.csv"), "Body style,Colour,Pieces\n");
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.setLength(1L << 30);
    }
    files.add(file.toString());
  }

  private ZipOutputStream begin(String name) throws IOException {
    Path file = folder.resolve(name);
    files.add(file.toString());
    OutputStream out = Files.newOutputStream(file);
    ZipOutputStream zip = new ZipOutputStream(out);
    part(zip, "[Content_Types].xml", "<Types/>");
    part(
        zip,
        "xl/workbook.xml",
        "<workbook xmlns='%s' xmlns:r='urn:r'><sheets><sheet name='Box' r:id='s1'/></sheets></workbook>"
            .formatted(MAIN));
    part(
        zip,
        "xl/_rels/workbook.xml.rels",
        "<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/relationships'>"
            + link("s1", "worksheet", "worksheets/sheet1.xml")
            + link("s2", "sharedStrings", "sharedStrings.xml")
            + "</Relationships>");
    return zip;
  }

  private static String link(String id, String type, String target) {
    return "<Relationship Id='%s' Type='http://schemas.openxmlformats.org/officeDocument/2006/relationships/%s' Target='%s'/>"
        .formatted(id, type, target);
  }

  private static void part(ZipOutputStream zip, String name, String content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(content.getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }
}

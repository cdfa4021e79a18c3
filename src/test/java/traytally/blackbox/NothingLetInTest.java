package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/**
 * The main job uses no network, starts no program and opens no file that a list names, whatever the
 * list says.
 */
class NothingLetInTest {
  private static final int MOST_SECONDS = 300;
  private static final String SECRET = "the words in the bait";

  @TempDir Path folder;

  private Path bait;
  private Path record;

  /** The parts of a workbook that this program wrote, and another program may have edited. */
  private Map<String, String> parts() throws IOException {
    Path sheet = folder.resolve("sheet.xlsx");
    Path own = Files.createDirectory(folder.resolve("own"));
    Ran.in(own, "count", "4", "--new", "grub, chalk, 50", "--tray", "A");
    assertEquals(0, Ran.in(own, "sheet", "box", "--out", sheet.toString()).code());
    Map<String, String> parts = new TreeMap<>();
    try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(sheet))) {
      for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
        parts.put(part.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    return parts;
  }

  private void write(String name, Map<String, String> parts) throws IOException {
    Path file = folder.resolve("hostile").resolve(name + ".xlsx");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
      }
    }
  }

  /** Definitions of things outside the file, and of text without end. */
  private Map<String, String> definitions() {
    return Map.of(
        "file", "<!DOCTYPE x [<!ENTITY a SYSTEM '" + bait.toUri() + "'>]>",
        "http", "<!DOCTYPE x [<!ENTITY a SYSTEM 'http://127.0.0.1:9/bait'>]>",
        "dtd", "<!DOCTYPE x SYSTEM 'http://nowhere.invalid/bait.dtd' [<!ENTITY a 'b'>]>",
        "parameter", "<!DOCTYPE x [<!ENTITY % p SYSTEM '" + bait.toUri() + "'> %p;]>",
        "laughs",
            "<!DOCTYPE x [<!ENTITY l0 'ha'>"
                + nested(40)
                + "<!ENTITY a '&l40;&l40;&l40;&l40;&l40;&l40;'>]>");
  }

  private static String nested(int depth) {
    StringBuilder text = new StringBuilder();
    for (int i = 1; i <= depth; i++) {
      text.append("<!ENTITY l").append(i).append(" '");
      text.append(("&l" + (i - 1) + ";").repeat(10)).append("'>");
    }
    return text.toString();
  }

  /** One workbook for each part and definition, the thing defined used within the first element. */
  private int writeEntities(Map<String, String> parts) throws IOException {
    int written = 0;
    for (String name : parts.keySet()) {
      for (Map.Entry<String, String> definition : definitions().entrySet()) {
        String content = parts.get(name).replaceFirst("^<\\?xml[^>]*\\?>\\s*", "");
        String use = definition.getKey().equals("parameter") ? "" : "&a;";
        int texts = content.indexOf("<t>");
        int at = texts >= 0 ? texts + "<t>".length() : content.indexOf('>') + 1;
        String spoilt = content.substring(0, at) + use + content.substring(at);
        Map<String, String> hostile = new TreeMap<>(parts);
        hostile.put(name, definition.getValue() + spoilt);
        write(definition.getKey() + " " + name.replace('/', ' '), hostile);
        written++;
      }
    }
    return written;
  }

  /** Links, pictures, formulas and exchange with other programs, all naming the bait. */
  private void writeLinks(Map<String, String> parts) throws IOException {
    Map<String, String> links = new TreeMap<>(parts);
    String sheet = "xl/worksheets/sheet1.xml";
    String relation =
        "<Relationship Id='%s' Type='http://schemas.openxmlformats.org/"
            + "officeDocument/2006/relationships/%s' Target='%s' TargetMode='External'/>";
    String relations =
        "<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/"
            + "relationships'>%s</Relationships>";
    links.put(
        "xl/worksheets/_rels/sheet1.xml.rels",
        relations.formatted(
            relation.formatted("b1", "hyperlink", bait.toUri())
                + relation.formatted("b2", "image", bait.toUri())
                + relation.formatted("b3", "drawing", "http://127.0.0.1:9/bait")));
    links.put(
        "xl/externalLinks/externalLink1.xml",
        "<externalLink xmlns='http://schemas.openxmlformats.org/spreadsheetml/2006/main'>"
            + "<ddeLink ddeService='cmd' ddeTopic='/c bait'/></externalLink>");
    links.put(
        "xl/externalLinks/_rels/externalLink1.xml.rels",
        relations.formatted(relation.formatted("e1", "externalLinkPath", bait.toUri())));
    String formulas =
        "<row r='9'><c r='A9' t='str'><f>HYPERLINK(\"%s\",\"grub\")</f><v>grub</v></c>"
            + "<c r='B9' t='str'><f>'[1]bait'!A1</f><v>rust</v></c>"
            + "<c r='C9' t='str'><f>cmd|'/c bait'!A1</f><v>x</v></c></row></sheetData>";
    links.put(sheet, links.get(sheet).replace("</sheetData>", formulas.formatted(bait.toUri())));
    assertTrue(links.get(sheet).contains("HYPERLINK"));
    write("links", links);
    Files.writeString(
        folder.resolve("hostile").resolve("links.csv"),
        "Body style,Colour,Length (mm),Pieces,Note\n"
            + "grub,rust,50,3,\"=HYPERLINK(\"\""
            + bait.toUri()
            + "\"\")\"\n"
            + "grub,plum,50,3,=cmd|'/c bait'!A1\n"
            + "grub,bone,50,3,"
            + bait
            + "\n");
  }

  private List<String> run() throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx512m", "-XX:TieredStopAtLevel=1"));
    command.add("-Djava.security.manager=" + Watcher.class.getName());
    command.add("-Dwatched=" + record);
    command.addAll(List.of("-classpath", System.getProperty("java.class.path")));
    command.addAll(List.of(WatchedJob.class.getName(), folder.toString()));
    Path said = folder.resolve("said.txt");
    Process process =
        new ProcessBuilder(command).redirectOutput(said.toFile()).redirectErrorStream(true).start();
    boolean ended = process.waitFor(MOST_SECONDS, TimeUnit.SECONDS);
    process.destroyForcibly();
    assertTrue(ended && process.exitValue() == 0, () -> "hangs or fails: " + read(said));
    return Files.readAllLines(said);
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return e.toString();
    }
  }

  @Test
  void noNetworkNoProgramAndNoFileThatAListNames() throws IOException, InterruptedException {
    assumeTrue(
        Runtime.version().feature() < 24, "skipped: this Java lets nobody watch a whole program");
    Files.createDirectory(folder.resolve("hostile"));
    bait = Files.writeString(folder.resolve("bait.txt"), SECRET);
    record = folder.resolve("seen.txt");
    Map<String, String> parts = parts();
    final int entities = writeEntities(parts);
    writeLinks(parts);
    List<String> said = run();
    assertEquals(List.of(), seen());
    List<String> main = said.stream().filter(line -> line.startsWith("ran ")).toList();
    assertEquals(21 + entities + 2, main.size(), main.toString());
    for (String line : main.subList(0, 21)) {
      assertTrue(line.startsWith("ran 0 "), line);
    }
    int refused = 0;
    for (String line : main.subList(21, main.size())) {
      assertTrue(line.startsWith("ran 0 ") || line.startsWith("ran 65 "), line);
      refused += line.startsWith("ran 65 ") ? 1 : 0;
    }
    // Every part that is read at all is refused: the book, its texts, its sheet, their relations.
    assertTrue(refused >= 5 * 5, "refused " + refused + " of " + main);
    assertTrue(said.stream().noneMatch(line -> line.contains(SECRET)), "the bait was read");
    assertTrue(said.stream().noneMatch(line -> line.contains("haha")), "it was laughed at");
  }

  /**
   * What was seen and refused but for two things that libraries do, both of this machine alone: the
   * SQLite driver asks {@code uname} which system it is, and Java asks for the machine's own name
   * when it looks for fonts, as a library does before it writes a workbook. Both go on when
   * refused.
   */
  private List<String> seen() throws IOException {
    String own = InetAddress.getLocalHost().getHostName();
    List<String> seen = Files.exists(record) ? Files.readAllLines(record) : List.of();
    return seen.stream()
        .filter(line -> !line.equals("start uname"))
        .filter(line -> !line.equals("(\"java.net.SocketPermission\" \"" + own + "\" \"resolve\")"))
        .toList();
  }

  /** The watcher sees what it is there to see. */
  @Test
  void theWatcherIsAwake() throws IOException, InterruptedException {
    assumeTrue(Runtime.version().feature() < 24, "skipped as above");
    for (String what : List.of("connect", "resolve", "read", "true")) {
      record = folder.resolve("seen-" + what + ".txt");
      List<String> command = new ArrayList<>();
      command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
      command.add("-Djava.security.manager=" + Watcher.class.getName());
      command.add("-Dwatched=" + record);
      command.addAll(List.of("-classpath", System.getProperty("java.class.path")));
      command.addAll(List.of(WatchedJob.class.getName() + "$Planted", what));
      new ProcessBuilder(command).start().waitFor();
      assertTrue(Files.exists(record), what + " was not seen");
    }
  }
}

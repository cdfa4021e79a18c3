package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.List;
import java.util.TreeSet;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.jline.utils.WCWidth;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Names in the angler's own script, from the list to every format and whole in each. */
class OtherScriptsTest {
  private static final List<String> COLOURS =
      List.of("أخضر زيتوني", "ירוק זית", "墨绿色", "オリーブ", "올리브색", "ελιά", "оливковый", "vert d’eau");

  @TempDir static Path folder;

  @BeforeAll
  static void importTheList() throws IOException {
    StringBuilder list = new StringBuilder("Body style,Colour,Length (mm),Pieces\n");
    COLOURS.forEach(colour -> list.append("paddle,").append(colour).append(",75,4\n"));
    Path file = Files.writeString(folder.resolve("list.csv"), list);
    Ran ran = Ran.in(folder, "import", file.toString());
    assertEquals(0, ran.code(), ran.err());
  }

  private static String shown(String format) {
    Ran ran = Ran.in(folder, "box", "--format", format);
    assertEquals(0, ran.code(), ran.err());
    return ran.out();
  }

  private static Path written(String name) {
    Path file = folder.resolve(name);
    Ran ran = Ran.in(folder, "box", "--out", file.toString());
    assertEquals(0, ran.code(), ran.err());
    return file;
  }

  private static void assertAllIn(String text) {
    COLOURS.forEach(colour -> assertTrue(text.contains(colour), colour + " in " + text));
  }

  /** The width of characters is asked of JLine, which goes by Markus Kuhn's wcwidth. */
  @Test
  void theColumnsOfATableStandUnderOneAnother() {
    String table = shown("table");
    assertAllIn(table);
    TreeSet<Integer> places = new TreeSet<>();
    int rows = 0;
    for (String line : table.lines().filter(l -> l.contains(" 75 mm")).toList()) {
      String before = line.substring(0, line.indexOf(" 75 mm"));
      places.add(before.codePoints().map(WCWidth::wcwidth).sum());
      rows++;
    }
    assertEquals(COLOURS.size(), rows);
    assertEquals(1, places.size(), places + "\n" + table);
  }

  @Test
  void programsReadThem() {
    assertAllIn(shown("csv"));
    assertEquals(
        new TreeSet<>(COLOURS),
        new TreeSet<>(
            Json.parse(shown("json")).rows().stream().map(row -> row.text("colour")).toList()));
  }

  @Test
  void aWorkbookHoldsThem() throws IOException {
    StringBuilder text = new StringBuilder();
    try (InputStream in = Files.newInputStream(written("box.xlsx"));
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      DataFormatter formatter = new DataFormatter();
      for (Row row : book.getSheetAt(0)) {
        row.forEach(cell -> text.append(formatter.formatCellValue(cell)).append('\n'));
      }
    }
    assertAllIn(text.toString());
  }

  @Test
  void aPageShowsThem() throws IOException {
    String page = Files.readString(written("box.html"));
    assertAllIn(page);
    assertTrue(page.contains("dir=\"rtl\""), "no cell runs from right to left");
  }

  /** Letters that paper joins are taken apart again by NFKC of The Unicode Standard. */
  @Test
  void paperShowsThem() throws IOException, InterruptedException {
    Path paper = written("box.pdf");
    String text = Program.named("pdftotext").run(folder, "-layout", paper.toString(), "-");
    assertAllIn(Normalizer.normalize(text, Normalizer.Form.NFKC).replaceAll("\\p{Cf}", ""));
  }
}

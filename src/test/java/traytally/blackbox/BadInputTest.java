package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.cli.Ran;

/** What is wrong with the input is said in a sentence or two, and changes nothing. */
class BadInputTest {
  private static final String BOX_HEADER = "Body style,Colour,Length (mm),Pieces\n";

  @TempDir Path folder;
  private String before = "";

  @BeforeEach
  void countATray() throws IOException {
    Ran ran = Ran.in(folder, "import", list("tray.csv", BOX_HEADER + "paddle,motor oil,75,10\n"));
    assertEquals(0, ran.code(), ran.err());
    before = state();
  }

  private String list(String name, String content) throws IOException {
    return Files.writeString(folder.resolve(name), content).toString();
  }

  private String state() {
    return Ran.in(folder, "box", "--format", "json").out()
        + Ran.in(folder, "ledger", "--format", "json").out()
        + Ran.in(folder, "trips", "--format", "json").out();
  }

  private Ran refused(int code, String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(code, ran.code(), ran.out() + ran.err());
    assertFalse(ran.err().contains("\tat "), ran.err());
    assertEquals(before, state(), "nothing changes");
    return ran;
  }

  @Test
  void aFileThatIsNotThere() {
    Ran ran = refused(66, "import", folder.resolve("nowhere.xlsx").toString());
    assertTrue(ran.err().contains("there is no file"), ran.err());
    assertEquals("", ran.out());
  }

  @Test
  void aFolder() {
    assertTrue(refused(66, "import", folder.toString()).err().contains("is a folder"));
  }

  @Test
  void anEmptyFile() throws IOException {
    assertTrue(refused(65, "import", list("empty.csv", "")).err().contains("empty"));
  }

  @Test
  void aWrongSheet() throws IOException {
    String list = list("people.csv", "Name,Birthday\nAda,1815-12-10\n");
    assertTrue(refused(65, "import", list).err().contains("no list was found"));
  }

  @ParameterizedTest
  @CsvSource({
    "paddle;chalk;75;lots, lots",
    "paddle;chalk;75;-4, -4",
    "paddle;chalk;75;1000000000, 1000000000",
    "paddle;chalk;soon;4, soon",
  })
  void aCellThatIsNotWhatItShouldBe(String row, String value) throws IOException {
    String list = list("bad.csv", BOX_HEADER + row.replace(';', ',') + "\n");
    Ran ran = refused(65, "import", list, "--format", "json");
    Json report = Json.parse(ran.out());
    assertEquals(1, report.number("rows_skipped"));
    assertEquals(value, report.rows().get(0).text("value"));
    assertEquals(2, report.rows().get(0).number("row"));
    assertEquals("problem", report.rows().get(0).text("severity"));
  }

  @Test
  void aProblemRowTakesNoNeighbourDown() throws IOException {
    String list = list("half.csv", BOX_HEADER + "paddle,chalk,75,lots\npaddle,rust,75,4\n");
    Ran ran = Ran.in(folder, "import", list, "--format", "json");
    assertEquals(0, ran.code());
    Json report = Json.parse(ran.out());
    assertEquals(2, report.number("rows_read"));
    assertEquals(1, report.number("rows_taken"));
    assertEquals(1, report.number("rows_skipped"));
  }

  @Test
  void strictTakesNothingIfARowIsWrong() throws IOException {
    String list = list("half.csv", BOX_HEADER + "paddle,chalk,75,lots\npaddle,rust,75,4\n");
    refused(65, "import", list, "--strict");
  }

  @Test
  void anUnknownPlasticInALog() throws IOException {
    String log = "Date,Body style,Colour,Length (mm),Takes\n2026-04-02,stick,plum,127,3\n";
    Ran ran = refused(65, "import", list("log.csv", log));
    assertTrue(ran.out().contains("not in the box"), ran.out());
  }

  @Test
  void aSlipOfThePenInALogIsProposedNotMerged() throws IOException {
    String log = "Date,Body style,Colour,Length (mm),Takes\n2026-04-02,paddle,motr oil,75,3\n";
    Ran ran = refused(65, "import", list("log.csv", log), "--format", "json");
    String problem = Json.parse(ran.out()).rows().get(0).text("problem");
    assertTrue(problem.contains("traytally agree 'motr oil' = 'motor oil'"), problem);
    assertEquals(0, Ran.in(folder, "agree", "motr oil", "=", "motor oil").code());
    assertEquals(0, Ran.in(folder, "import", folder.resolve("log.csv").toString()).code());
  }

  @Test
  void hookedAboveTakes() throws IOException {
    String log =
        "Date,Body style,Colour,Length (mm),Takes,Hooked\n2026-04-02,paddle,motor oil,75,1,3\n";
    refused(65, "import", list("log.csv", log));
  }

  @Test
  void aTripNextYear() throws IOException {
    String log = "Date,Body style,Colour,Length (mm),Takes\n2027-04-02,paddle,motor oil,75,1\n";
    refused(65, "import", list("log.csv", log));
  }

  @ParameterizedTest
  @CsvSource({
    "catch-fish",
    "--nonsense",
    "restock --until 2026-13-01",
    "restock --until 2020-01-01",
    "restock --trips 0",
    "restock --trips 2 --until 2026-06-01",
    "restock --budget 0",
    "restock --budget 20 --worth 1",
    "restock --worth 0",
    "restock --try=-1",
    "box --format fax",
    "trust weather",
    "import",
    "settings currency shells",
    "settings mood good",
    "agree chalk = CHALK",
    "import x.csv --map how",
    "sheet blank diary",
    "box --fail"
  })
  void wrongUsageExitsWithTwo(String words) {
    Ran ran = refused(2, words.split(" "));
    assertEquals("", ran.out());
    assertTrue(ran.err().lines().count() <= 3, ran.err());
  }

  @Test
  void noBoxYet() {
    Map<String, String> elsewhere = Map.of("TRAYTALLY_BOX", folder.resolve("none.box").toString());
    Ran ran = Ran.with(elsewhere, "restock");
    assertEquals(66, ran.code());
    assertTrue(ran.err().contains("traytally import"), ran.err());
    Ran bare = Ran.with(elsewhere);
    assertEquals(0, bare.code());
    assertTrue(bare.out().contains("traytally sheet blank box"), bare.out());
    assertFalse(Files.exists(folder.resolve("none.box")));
  }

  @Test
  void aFileThatIsNoBox() throws IOException {
    String file = list("notes.txt", "Not a box, but long enough to be looked at twice, or thrice.");
    Ran ran = Ran.with(Map.of("TRAYTALLY_BOX", file), "box");
    assertEquals(65, ran.code(), ran.err());
    assertEquals(1, ran.err().lines().count(), ran.err());
  }

  @Test
  void outThatCannotBeWritten() {
    Ran ran = refused(73, "restock", "--out", folder.resolve("no/such/folder/l.xlsx").toString());
    assertEquals("", ran.out());
  }

  @Test
  void undoOfWhatIsNotThere() {
    refused(65, "undo", "99");
  }

  @Test
  void undoTwiceHasNothingLeft() {
    assertEquals(0, Ran.in(folder, "undo").code());
    Ran again = Ran.in(folder, "undo");
    assertEquals(65, again.code());
    assertTrue(again.err().contains("nothing to undo"), again.err());
  }

  @Test
  void aBlankSheetNeverReplacesAFilledInOne() throws IOException {
    String mine = list("box.csv", BOX_HEADER + "paddle,chalk,75,4\n");
    refused(73, "sheet", "blank", "box", "--out", mine);
    assertEquals(BOX_HEADER + "paddle,chalk,75,4\n", Files.readString(Path.of(mine)));
  }

  @ParameterizedTest
  @CsvSource({"list.odt", "list.doc", "list"})
  void aResultInAFormNobodyWrites(String name) {
    String file = folder.resolve(name).toString();
    refused(2, "box", "--out", file);
    assertFalse(Files.exists(Path.of(file)));
  }

  @Test
  void aShopThatNoPriceListNames() throws IOException {
    String prices =
        "Shop,Body style,Colour,Length (mm),Pack size,Pack price\nQuay,paddle,motor oil,75,8,5\n";
    assertEquals(0, Ran.in(folder, "import", list("prices.csv", prices)).code());
    before = state();
    Ran ran = refused(65, "restock", "--shop", "Quey");
    assertTrue(ran.err().contains("There are Quay."), ran.err());
  }

  @Test
  void agreeingThatOneNameIsAnotherSaysWhatItDoes() {
    Ran ran = Ran.in(folder, "agree", "motor oil", "=", "rust");
    assertEquals(0, ran.code());
    assertTrue(ran.err().contains("is a name in your box"), ran.err());
    assertTrue(ran.out().contains("traytally undo takes it back"), ran.out());
  }

  @Test
  void namesThatAreNoAsciiSurvive() throws IOException {
    String list = list("names.csv", BOX_HEADER + "paddle,świt 緑 أخضر,75,3\n");
    assertEquals(0, Ran.in(folder, "import", list).code());
    String json = Ran.in(folder, "box", "--format", "json").out();
    assertTrue(json.contains("świt 緑 أخضر"), json);
    assertEquals(json, new String(json.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
  }
}

package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.cli.Ran;

/** Pieces that come and go by hand, and the names they are called by. */
class HandEntryTest {
  private static final String TRAY =
      """
      Maker,Body style,Colour,Length (mm),Pieces,Pack size
      Plimwick,paddle tail,motor oil,75,3,8
      Plimwick,paddle tail,motor oil,100,4,6
      ,paddle tail,white,75,5,
      ,curl tail,chalk,90,6,
      ,sandeel,rust,115,2,
      """;

  @TempDir Path folder;

  @BeforeEach
  void countATray() throws IOException {
    String list = Files.writeString(folder.resolve("tray.csv"), TRAY).toString();
    assertEquals(0, Ran.in(folder, "import", list, "--count-date", "2026-04-20").code());
  }

  private Ran done(String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    assertEquals("", ran.err());
    return ran;
  }

  private Ran refused(int code, String... args) {
    String before = ledger() + Ran.in(folder, "box", "--format", "json").out();
    Ran ran = Ran.in(folder, args);
    assertEquals(code, ran.code(), ran.out() + ran.err());
    assertEquals(before, ledger() + Ran.in(folder, "box", "--format", "json").out());
    return ran;
  }

  private String ledger() {
    return Ran.in(folder, "ledger", "--format", "json").out();
  }

  private int pieces(String body, String colour, int lengthMm) {
    return Json.parse(done("box", "--format", "json").out()).rows().stream()
        .filter(r -> r.text("body").equals(body) && r.text("colour").equals(colour))
        .filter(r -> r.number("length_mm") == lengthMm)
        .mapToInt(r -> (int) r.number("pieces"))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "paddle motor oil 75",
        "75 OIL Paddle-Tail motor",
        "padle moter oil 75mm",
        "paddle mtr oil 3in",
        "plimwick 3\"",
        "paddle motor oil 3",
      })
  void wordsInAnyOrderCaseAndWithSlipsNameOne(String words) {
    Ran ran = done("bought", words, "8", "pieces");
    assertTrue(ran.out().contains("bought 8 pieces: paddle tail, motor oil, 75 mm"), ran.out());
    assertTrue(ran.out().contains("In the tray: 3 before, 11 now."), ran.out());
    assertTrue(ran.out().contains("Recorded as batch 2; traytally undo"), ran.out());
    assertEquals(11, pieces("paddle tail", "motor oil", 75));
  }

  @Test
  void aPriceMayHaveADecimalCommaButNotOneThatCouldMeanThousands() {
    String[] bought = {"bought", "paddle motor oil 75", "2", "packs", "--price", "", "--dry-run"};
    bought[5] = "5,20";
    Ran taken = Ran.in(folder, bought);
    assertTrue(taken.out().contains("a pack at 5.20 EUR"), taken.err());
    bought[5] = "5,200";
    Ran refused = Ran.in(folder, bought);
    assertEquals(2, refused.code());
    assertTrue(refused.err().contains("\"5,200\" is not a number that fits here."), refused.err());
  }

  @Test
  void theRowOfTheLastListingNamesOne() {
    String box = done("box", "--colour", "motor oil").out();
    assertTrue(box.contains("100 mm"), box);
    done("lost", "2", "1", "--how", "snagged");
    assertEquals(3, pieces("paddle tail", "motor oil", 100));
    done("box");
    assertTrue(done("lost", "1", "1").out().contains("curl tail, chalk"));
    assertEquals(5, pieces("curl tail", "chalk", 90));
  }

  @Test
  void lookingLeavesTheBoxAsItIs() throws IOException {
    byte[] before = Files.readAllBytes(folder.resolve("tray.box"));
    done("box");
    refused(65, "lost", "paddle", "1");
    assertEquals(
        -1,
        Files.mismatch(
            folder.resolve("tray.box"), Files.write(folder.resolve("before.box"), before)));
  }

  @Test
  void severalMatchesAreListedAndNothingChanges() {
    Ran ran = refused(65, "bought", "paddle motor oil", "2");
    assertTrue(ran.err().contains("fits 2 plastics"), ran.err());
    assertTrue(ran.err().contains("    1  paddle tail, motor oil, 75 mm"), ran.err());
    assertTrue(ran.err().contains("    2  paddle tail, motor oil, 100 mm"), ran.err());
    done("bought", "2", "2", "pieces");
    assertEquals(6, pieces("paddle tail", "motor oil", 100));
  }

  @Test
  void noMatchProposesTheNearest() {
    Ran ran = refused(65, "count", "paddle motor oil 90", "3");
    assertTrue(ran.err().contains("is called \"paddle motor oil 90\""), ran.err());
    assertTrue(ran.err().contains("paddle tail, motor oil, 75 mm"), ran.err());
    assertTrue(ran.err().contains("--new"), ran.err());
    assertTrue(refused(65, "lost", "9", "1").err().contains("traytally box"));
  }

  @Test
  void anAgreedSpellingNamesItsPlastic() {
    done("agree", "sludge", "=", "motor oil");
    assertTrue(done("lost", "sludge", "75", "1").out().contains("motor oil, 75 mm"));
  }

  @Test
  void packsAreOpenedByTheirSize() {
    Ran ran = done("bought", "paddle", "motor", "oil", "75", "2", "packs", "--price", "5.20");
    assertTrue(ran.out().contains("bought 16 pieces"), ran.out());
    assertTrue(ran.out().contains("a pack at 5.20 EUR"), ran.out());
    assertEquals(19, pieces("paddle tail", "motor oil", 75));
    assertTrue(refused(65, "bought", "white", "1", "pack").err().contains("--pack-size"));
    done("bought", "white", "1", "pack", "--pack-size", "10");
    assertEquals(15, pieces("paddle tail", "white", 75));
    done("undo");
    assertTrue(refused(65, "bought", "white", "1", "pack").err().contains("--pack-size"));
  }

  @Test
  void fewPiecesWherePacksAreKnownAreQuestioned() {
    assertTrue(done("bought", "paddle oil 75", "2").out().contains("write \"2 packs\""));
  }

  @ParameterizedTest
  @CsvSource({
    "lost, snag, lost",
    "lost, bitten off, lost",
    "lost, worn, worn",
    "given, , given",
    "found, , found",
  })
  void piecesGoAndComeInEveryWay(String command, String how, String kind) {
    List<String> args = new ArrayList<>(List.of(command, "white", "2"));
    if (how != null) {
      args.addAll(List.of("--how", how));
    }
    done(args.toArray(String[]::new));
    assertEquals(command.equals("found") ? 7 : 3, pieces("paddle tail", "white", 75));
    List<Json> movements = Json.parse(ledger()).rows();
    assertEquals(kind, movements.get(movements.size() - 1).text("kind"));
    done("undo");
    assertEquals(5, pieces("paddle tail", "white", 75));
  }

  @Test
  void losingMoreThanTheBookHoldsNeedsAYes() {
    Ran ran = refused(65, "lost", "sandeel", "5");
    assertTrue(ran.err().contains("the book holds only 2 pieces"), ran.err());
    assertTrue(ran.err().contains("--yes"), ran.err());
    done("lost", "sandeel", "5", "--yes");
    assertEquals(0, pieces("sandeel", "rust", 115));
    assertEquals(0, Ran.in(folder, "check").code());
  }

  @Test
  void aCountStandsAndWhatItSawIsHistory() {
    Ran ran = done("count", "white", "9");
    assertTrue(ran.out().contains("the book said 5"), ran.out());
    assertEquals(9, pieces("paddle tail", "white", 75));
    Ran late = done("lost", "white", "1", "--date", "2026-04-25");
    assertTrue(late.out().contains("It was counted on 2026-05-01"), late.out());
    assertTrue(late.out().contains("9 before, 9 now"), late.out());
    assertEquals(9, pieces("paddle tail", "white", 75));
  }

  @Test
  void aNewPlasticIsTakenWhenItIsSaidToBeNew() {
    done("bought", "--new", "paddle tail, ink blue, 75", "1", "pack", "--pack-size", "8");
    assertEquals(8, pieces("paddle tail", "ink blue", 75));
    done("count", "4", "--new", "grub, chalk, 2\", Plimwick", "--tray", "B");
    assertEquals(4, pieces("grub", "chalk", 51));
    assertTrue(refused(65, "count", "4", "--new", "curl tail,chalk,90").err().contains("already"));
    assertTrue(refused(65, "count", "4", "--new", "curl tial,chalk,90").err().contains("nearly"));
    assertTrue(refused(2, "count", "4", "--new", "grub").err().contains("commas"));
  }

  @Test
  void aFirstBoxCanBeginWithOneCount() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    assertEquals(66, Ran.in(other, "count", "paddle", "4").code());
    String[] count = {"count", "4", "--new", "grub, chalk, 50"};
    String[] tried = {"count", "4", "--new", "grub, chalk, 50", "--dry-run"};
    assertEquals(0, Ran.in(other, tried).code());
    assertFalse(Files.exists(other.resolve("tray.box")), "a dry run makes no box");
    assertEquals(0, Ran.in(other, count).code());
    assertTrue(Ran.in(other, "box").out().contains("4 pieces of 1 plastic"));
  }

  @Test
  void aDryRunRecordsNothing() {
    Ran ran = refused(0, "bought", "white", "8", "--dry-run");
    assertTrue(ran.out().contains("5 before, 13 now"), ran.out());
    assertTrue(ran.out().contains("Tried only"), ran.out());
  }

  @Test
  void numbersThatCannotBeAreRefused() {
    assertTrue(refused(2, "bought", "white").err().contains("does not end in a number"));
    assertTrue(refused(65, "bought", "white", "0").err().contains("Write how many"));
    assertTrue(refused(65, "bought", "white", "1000000000").err().contains("Write 0 to 10000"));
    assertTrue(refused(65, "bought", "sandeel rust 115").err().contains("or how many?"));
    assertTrue(
        refused(65, "bought", "white", "8", "--date", "2027-01-01").err().contains("to come"));
    assertTrue(refused(2, "lost", "white", "1", "--how", "eaten").err().contains("no way to lose"));
  }

  @Test
  void keepVouchesAndTakesBack() {
    done("keep", "white");
    assertTrue(done("box", "--colour", "white").out().contains("yes"));
    assertTrue(done("keep", "white").out().contains("It was so already"));
    done("keep", "white", "--off");
    assertFalse(done("box", "--colour", "white").out().contains("yes"));
  }
}

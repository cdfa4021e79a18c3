package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.cli.Ran;

/** A trip told in one line. */
class TripLineTest {
  private static final String TRAY =
      """
      Body style,Colour,Length (mm),Pieces
      paddle tail,motor oil,75,3
      paddle tail,white,75,5
      curl tail,chalk,90,6
      """;
  private static final String LINE =
      "2026-04-28 \"Gannet Stack\" pollack clear:"
          + " paddle 75 motor oil 60m 3t 2h 2l -1 snag; curl 90 chalk 25m";

  @TempDir Path folder;

  @BeforeEach
  void countATray() throws IOException {
    String list = Files.writeString(folder.resolve("tray.csv"), TRAY).toString();
    assertEquals(0, Ran.in(folder, "import", list, "--count-date", "2026-04-20").code());
  }

  private Ran log(String... words) {
    String[] args = new String[words.length + 2];
    args[0] = "trips";
    args[1] = "log";
    System.arraycopy(words, 0, args, 2, words.length);
    return Ran.in(folder, args);
  }

  private Ran logged(String... words) {
    Ran ran = log(words);
    assertEquals(0, ran.code(), ran.err());
    assertEquals("", ran.err());
    return ran;
  }

  private List<Json> trips() {
    return Json.parse(Ran.in(folder, "trips", "--format", "json").out()).rows();
  }

  private int pieces(String colour) {
    return Json.parse(Ran.in(folder, "box", "--format", "json").out()).rows().stream()
        .filter(r -> r.text("colour").equals(colour))
        .mapToInt(r -> (int) r.number("pieces"))
        .sum();
  }

  @Test
  void theLineIsEchoedAsItWasUnderstood() {
    assertEquals(
        """
        Understood: 2026-04-28, Gannet Stack, pollack, clear
          1. paddle tail, motor oil, 75 mm: 60 minutes, 3 takes, 2 hooked, 2 landed, 1 lost (snagged)
          2. curl tail, chalk, 90 mm: 25 minutes, no takes
        In the tray: 3 before, 2 now.
        Recorded as batch 2; traytally undo takes it back.
        """,
        logged(LINE).out());
    Json first = trips().get(0);
    assertEquals("2026-04-28", first.text("date"));
    assertEquals("Gannet Stack", first.text("water"));
    assertEquals("pollack", first.text("species"));
    assertEquals("clear", first.text("clarity"));
    assertEquals("motor oil", first.text("colour"));
    assertEquals(60, first.number("minutes"));
    assertEquals(3, first.number("takes"));
    assertEquals(2, first.number("landed"));
    assertEquals("snagged", first.text("lost_how"));
    assertEquals(25, trips().get(1).number("minutes"));
    assertEquals(2, pieces("motor oil"));
  }

  @Test
  void theShellMaySplitTheLine() {
    logged(
        "2026-04-28",
        "Gannet Stack",
        "pollack",
        "clear:",
        "paddle",
        "75",
        "motor",
        "oil",
        "60m",
        "3t",
        "-1",
        "snag",
        "/",
        "curl",
        "90",
        "chalk",
        "25m");
    assertEquals(2, trips().size());
    assertEquals("Gannet Stack", trips().get(1).text("water"));
    assertEquals(2, pieces("motor oil"));
  }

  @Test
  void knownWatersNeedNoQuotes() {
    logged(LINE);
    logged("2026-04-29 gannet stack dirty 2r: white 1:15 2l -1 bite -1 worn");
    Json last = trips().get(2);
    assertEquals("Gannet Stack", last.text("water"));
    assertEquals("dirty", last.text("clarity"));
    assertEquals(75, last.number("minutes"));
    assertEquals(2, last.number("rods"));
    assertEquals(2, last.number("takes"));
    assertEquals(1, last.number("worn"));
    assertEquals("bitten off", last.text("lost_how"));
    assertEquals(3, pieces("white"));
  }

  @Test
  void rowsOfTheLastListingNamePlastics() {
    assertEquals(0, Ran.in(folder, "box").code());
    Ran ran = logged("yesterday: 3 60 minutes 4 takes 1 hooked");
    assertTrue(ran.out().contains("1. paddle tail, white, 75 mm: 60 minutes, 4 takes, 1 hooked"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-04-28 Gull pollack clear paddle 75 60m | 2 | a colon",
        "28/04/2026 Gull: white 60m | 2 | is not a date",
        "2026-05-28 Gull: white 60m | 65 | is still to come",
        "today Gull: white 60m; | 0 | ''",
        "today Gull: | 2 | no stint",
        "today Gull: white 60m; paddle 40m | 65 | stint 2, \"paddle 40m\": \"paddle\" fits 2",
        "today Gull: white 60m; squid 40m | 65 | stint 2, \"squid 40m\": no plastic",
        "today Gull: white 60m 1t 2h | 65 | cannot be",
        "today Gull: white 60m 70m | 65 | twice",
        "today Gull: white 6000m | 65 | too many",
        "today Gull: 60m 3t | 65 | names no plastic",
        "today Gull: white 60m 3q | 65 | no plastic in the box is called \"white 3q\"",
        "today The Old Harbour Wall: white 60m | 2 | in quotes",
      })
  void whatIsWrongIsSaid(String line, int code, String words) {
    String before = Ran.in(folder, "ledger", "--format", "json").out();
    Ran ran = log(line);
    assertEquals(code, ran.code(), ran.out() + ran.err());
    assertTrue(ran.err().contains(words), ran.err());
    if (code != 0) {
      assertEquals(before, Ran.in(folder, "ledger", "--format", "json").out());
      assertEquals(0, trips().size());
    }
  }

  @Test
  void aTripLoggedTwiceIsQuestioned() {
    logged(LINE);
    assertTrue(log(LINE).err().contains("in the log of that trip already"));
    assertEquals(2, trips().size());
    logged(LINE, "--yes");
    assertEquals(4, trips().size());
  }

  @Test
  void aNameNearlyKnownIsQuestioned() {
    logged(LINE);
    Ran ran = log("today \"Ganet Stack\" pollack: white 20m");
    assertEquals(65, ran.code());
    assertTrue(ran.err().contains("Did you mean that?"), ran.err());
    logged("today \"Ganet Stack\" pollack: white 20m", "--yes");
  }

  @Test
  void losingMoreThanTheBookHeldIsRecordedInFull() {
    Ran ran = logged("today Gull: motor oil 60m -5 snag");
    assertTrue(ran.out().contains("2 pieces must have been there"), ran.out());
    assertEquals(0, pieces("motor oil"));
    assertEquals(0, Ran.in(folder, "check").code());
  }

  @Test
  void aTripBeforeTheCountMovesNothing() {
    Ran ran = logged("2026-04-12 Gull: motor oil 60m 2t -2 snag");
    assertTrue(ran.out().contains("was counted on 2026-04-20"), ran.out());
    assertEquals(3, pieces("motor oil"));
    assertEquals(2, trips().get(0).number("lost"));
  }

  @Test
  void aDryRunRecordsNothingAndUndoTakesItBack() {
    assertTrue(logged(LINE, "--dry-run").out().contains("3 before, 2 now"));
    assertEquals(0, trips().size());
    logged(LINE);
    assertEquals(0, Ran.in(folder, "undo").code());
    assertEquals(0, trips().size());
    assertEquals(3, pieces("motor oil"));
  }
}

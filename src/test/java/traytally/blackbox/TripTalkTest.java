package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** A trip told at the keyboard, key by key. */
class TripTalkTest {
  private static final String TRAY =
      """
      Maker,Body style,Colour,Length (mm),Pieces,Pack size
      Plimwick,paddle tail,motor oil,75,3,8
      ,paddle tail,motor oil,75,9,8
      ,paddle tail,white,75,5,
      ,curl tail,chalk,90,6,
      ,grub,"2t; dark",50,2,
      """;
  private static final String CTRL_C = "\u0003";
  private static final String CTRL_D = "\u0004";
  private static final String CTRL_U = "\u0015";
  private static final String BACKSPACE = "\u007f";
  private static final String HEAD = "\rGannet Stack\rpollack\rclear\r2\r";

  @TempDir Path folder;

  @BeforeEach
  void countATray() throws IOException {
    String list = Files.writeString(folder.resolve("tray.csv"), TRAY).toString();
    assertEquals(0, Ran.in(folder, "import", list, "--count-date", "2026-04-20").code());
  }

  private Path draft() {
    return folder.resolve("tray.box.draft");
  }

  private Ran type(String keys) {
    return Ran.typing(folder, keys, "trips", "log");
  }

  private List<Json> stints() {
    return Json.parse(Ran.in(folder, "trips", "--format", "json").out()).rows();
  }

  private List<String> told() {
    return stints().stream()
        .map(
            row ->
                row.text("colour")
                    + " "
                    + (row.isNull("minutes") ? "?" : (int) row.number("minutes"))
                    + " "
                    + (int) row.number("takes")
                    + " "
                    + (int) row.number("lost"))
        .toList();
  }

  @Test
  void aTripIsToldStintAfterStint() {
    Ran ran = type(HEAD + "white 60m 3t 2h 2l -1 snag\rchalk 25m\r\r\r");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("2026-05-01, Gannet Stack, pollack, clear"), ran.out());
    assertTrue(ran.out().contains("Recorded as batch 2"), ran.out());
    assertTrue(
        ran.err().contains("2 stints: 85 minutes, 3 takes, 2 hooked, 2 landed, 1 lost"), ran.err());
    assertEquals(List.of("white 60 3 1", "chalk 25 0 0"), told());
    assertEquals(2, stints().get(0).number("rods"));
    assertFalse(Files.exists(draft()));
    // The same trip in one line is the same trip.
    Ran line =
        Ran.in(
            folder,
            "trips",
            "log",
            "today 'Gannet Stack' pollack clear 2r: white 60m 3t 2h 2l -1 snag");
    assertTrue(line.err().contains("Stint 1 is in the log of that trip already"), line.err());
  }

  @Test
  void tabCompletesANameFromItsWordsInAnyOrderWithSlipsForgiven() {
    type(HEAD + "75 whit pad\t30m\rchlak\t20m -1 s\t\rgrub\t5m\r\r\r");
    assertEquals(List.of("white 30 0 0", "chalk 20 0 1", "2t; dark 5 0 0"), told());
    assertEquals("snagged", stints().get(1).text("lost_how"));
  }

  @Test
  void ofSeveralThatFitOneIsPicked() {
    Ran ran = type(HEAD + "motor oil 40m\r2\r\r\r");
    assertTrue(ran.err().contains("which of them, 1 to 2?"), ran.err());
    assertEquals("Plimwick", stints().get(0).text("maker"));
    type(HEAD + "motor oil 30m\r1\r\r\r");
    assertTrue(stints().get(1).isNull("maker") || stints().get(1).text("maker").isEmpty());
  }

  @Test
  void whatIsMissingIsAskedFor() {
    Ran ran = type("\rGull Rock\r-\r-\r\rwhite\r45m 2l -1\rbite\r\r\r");
    assertTrue(ran.err().contains("how long, how many?"), ran.err());
    assertTrue(ran.err().contains("lost how?"), ran.err());
    assertEquals(List.of("white 45 2 1"), told());
    assertEquals("bitten off", stints().get(0).text("lost_how"));
    assertEquals("", stints().get(0).isNull("species") ? "" : stints().get(0).text("species"));
  }

  @Test
  void aStintIsCorrectedDroppedAndGoneBackTo() {
    type(
        HEAD
            + "white 60m\rchalk 10m\rchalk 5m\r"
            + "drop 2\r" // chalk 10m
            + "fix 1\r-2 torn\r" // the line stands there to be added to
            + "back\r3t\r" // the last one: chalk 5m
            + "drop 9\r"
            + "nothing like it\r" // the line stands there again
            + CTRL_U
            + "whiff 7m\r"
            + BACKSPACE.repeat("ff 7m".length())
            + "te 7m\r\r\r");
    assertEquals(List.of("white 60 0 2", "chalk 5 3 0", "white 7 0 0"), told());
  }

  @Test
  void theHeadIsGoneBackToAndCorrected() {
    type(
        "yesterday\rGull\rback\rGannet Stack\rbass\rcl\rback\rbass\rclear\rx\r1\rwhite 5m\rhead\r"
            + "2026-04-30\rGannet Stack\rpollack\rstained\r1\r\r\r");
    Json stint = stints().get(0);
    assertEquals("2026-04-30", stint.text("date"));
    assertEquals("Gannet Stack", stint.text("water"));
    assertEquals("pollack", stint.text("species"));
    assertEquals("stained", stint.text("clarity"));
  }

  @Test
  void theHeadMayBeGivenInOneLineAndTheLastTripIsSuggested() {
    type("yesterday gannet-stack pollack clear 2r\rwhite 5m\r\r\r");
    assertEquals("2026-04-30", stints().get(0).text("date"));
    type("\r\r\r\r\rwhite 6m\r\r\r");
    Json stint = stints().get(1);
    assertEquals(
        "2026-05-01 gannet-stack pollack",
        stint.text("date") + " " + stint.text("water") + " " + stint.text("species"));
    // A name that is nearly known is asked after.
    Ran ran = type("\rganet-stack\r\r\r\r\rwhite 7m\r\r\r");
    assertTrue(ran.err().contains("Did you mean gannet-stack?"), ran.err());
    assertEquals("gannet-stack", stints().get(2).text("water"));
  }

  @Test
  void aTripLeftIsOfferedAgain() throws IOException {
    Ran left = type(HEAD + "grub 20m -1 snag\rmotor oil 5m\r2\r" + CTRL_D);
    assertEquals(0, left.code());
    assertTrue(left.err().contains("Nothing was recorded. A draft is kept"), left.err());
    assertEquals(List.of(), told());
    String kept = Files.readString(draft());
    assertTrue(kept.contains("\"grub, 2t; dark, 50 mm\" 20m -1 snag\n"), kept);
    Ran again = type("\rwhite 10m\r\r\r");
    assertTrue(
        again.err().contains("A trip was left unfinished: 2026-05-01, Gannet Stack"), again.err());
    assertEquals(List.of("2t; dark 20 0 1", "motor oil 5 0 0", "white 10 0 0"), told());
    assertEquals("Plimwick", stints().get(1).text("maker"));
    assertFalse(Files.exists(draft()));
    // The file is a trip in the words of one line, too.
    Ran line = Ran.in(folder, "trips", "log", kept, "--dry-run", "--yes");
    assertEquals(0, line.code(), line.err());
    type(HEAD + "white 20m\r" + CTRL_D);
    type("n\r" + HEAD + "white 21m\r\r\r");
    assertTrue(
        told().contains("white 21 0 0") && !told().contains("white 20 0 0"), told().toString());
  }

  @Test
  void ctrlCRecordsNothing() {
    Ran ran =
        type(
            HEAD
                + "white 20m\rhalf a line"
                + Ran.once("2> half a line")
                + CTRL_C
                + Ran.once("2> ")
                + "chalk 5m\r"
                + Ran.once("3> ")
                + CTRL_C);
    assertEquals(130, ran.code(), ran.err());
    assertEquals(List.of(), told());
    assertTrue(ran.err().contains("A draft is kept"), ran.err());
    assertEquals(0, type("\r\r\r").code());
    assertEquals(List.of("white 20 0 0", "chalk 5 0 0"), told());
    Ran early = type("\rGull" + Ran.once("Stack]: Gull") + CTRL_C + Ran.once("Stack]: ") + CTRL_C);
    assertEquals(130, early.code());
    assertTrue(early.err().endsWith("Nothing was recorded." + System.lineSeparator()), early.err());
    assertFalse(Files.exists(draft()));
  }

  @Test
  void whatTheKeyboardSaysNoToIsNotRecorded() {
    type(HEAD + "white 20m\r\rn\rforget\ry\r");
    assertEquals(List.of(), told());
    assertFalse(Files.exists(draft()));
  }

  @Test
  void withoutATerminalItNeverWaits() {
    Ran ran = Ran.piping(folder, "today\r", "trips", "log");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("there is no terminal to ask at"), ran.err());
  }

  /**
   * Typists press 4.3 keys a second on average over 168,000 people (Dhakal, Feit, Kristensson and
   * Oulasvirta, "Observations on typing from 136 million keystrokes", CHI 2018,
   * doi:10.1145/3173574.3174220: 52 words of five keys a minute). A tired one is given two thirds.
   */
  @Test
  void aMedianTripOfFiveStintsIsToldWithinAMinute() {
    assertEquals(
        0, Ran.in(folder, "plan", "add", "2026-05-01", "Gannet Stack", "pollack", "5h").code());
    String keys =
        "\r\r\r\r\r" // as planned
            + "whi\t40m 3t 2l -1 s\t\r"
            + "cha\t25m\r"
            + "plim\t30m 1t\r"
            + "grub\t20m -1 b\t\r"
            + "whi\t60m 2l\r"
            + "\r\r";
    assertEquals(0, type(keys).code());
    assertEquals(
        List.of(
            "white 40 3 1", "chalk 25 0 0", "motor oil 30 1 0", "2t; dark 20 0 1", "white 60 2 0"),
        told());
    double seconds = keys.length() / (4.3 * 2 / 3);
    assertTrue(seconds < 60, keys.length() + " keys, " + seconds + " s");
  }
}

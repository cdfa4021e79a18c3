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

/** What a real terminal does to a person in the middle of telling something. */
class TerminalTest {
  private static final String CTRL_C = "\u0003";
  private static final String CTRL_D = "\u0004";

  @TempDir Path folder;

  @BeforeEach
  void countATray() {
    done("count", "4", "--new", "paddle tail, motor oil, 75");
    done("count", "6", "--new", "curl tail, chalk, 90");
  }

  private Ran done(String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    return ran;
  }

  private List<String> stints() {
    return Json.parse(done("trips", "--format", "json").out()).rows().stream()
        .map(row -> row.text("colour") + " " + (int) row.number("lost"))
        .toList();
  }

  private void assertWhole(List<String> stints) {
    assertEquals("The box is whole.\n", done("check").out());
    assertEquals(stints, stints());
  }

  @Test
  void aTripIsToldAndItsNamesAreCompleted() throws IOException, InterruptedException {
    try (Pty pty = Pty.start(folder, "trips", "log")) {
      pty.until("date [").type("\r").until("water: ").type("Gull\r").until("fish: ").type("\r");
      pty.until("clarity: ").type("\r").until("rods [1]: ").type("\r").until("1> ");
      pty.type("mtr oil\t").until("paddle tail, motor oil, 75 mm").type("20m -1 snag\r");
      pty.until("2> ").type("\r").until("Record it? [Y/n]").type("\r").until("Recorded as batch 3");
      assertEquals(0, pty.end(), pty.shown());
    }
    assertWhole(List.of("motor oil 1"));
  }

  @Test
  void ctrlCAndCtrlDRecordNothingAndKeepTheDraft() throws IOException, InterruptedException {
    for (String key : List.of(CTRL_C, CTRL_D)) {
      try (Pty pty = Pty.start(folder, "trips", "log")) {
        pty.until("date [").type("today Gull pollack\r").until("1> ").type("oil 20m -1 snag\r");
        pty.until("2> ").type(key).until("Nothing was recorded. A draft is kept");
        assertEquals(key.equals(CTRL_C) ? 130 : 0, pty.end(), pty.shown());
      }
      assertTrue(Files.exists(folder.resolve("tray.box.draft")));
      assertWhole(List.of());
      Files.delete(folder.resolve("tray.box.draft"));
    }
  }

  @Test
  void aTerminalThatDiesLeavesADraftThatIsGoneOnWith() throws IOException, InterruptedException {
    try (Pty pty = Pty.start(folder, "trips", "log")) {
      pty.until("date [").type("today Gull pollack\r").until("1> ").type("oil 20m -1 snag\r");
      pty.until("2> ").type("half a li").until("half a li");
      pty.hangUp();
    }
    assertWhole(List.of());
    try (Pty pty = Pty.start(folder, "trips", "log")) {
      pty.until("left unfinished").type("\r").until("2> ").type("chalk 5m\r");
      pty.until("3> ").type("\r").until("Record it?").type("\r").until("Recorded as batch 3");
      assertEquals(0, pty.end(), pty.shown());
    }
    assertWhole(List.of("motor oil 1", "chalk 0"));
    assertFalse(Files.exists(folder.resolve("tray.box.draft")));
  }

  @Test
  void aTrayCountThatIsBrokenOffCountsNothing() throws IOException, InterruptedException {
    done("count", "3", "--new", "grub, ink, 50", "--tray", "B");
    for (boolean hangUp : new boolean[] {true, false}) {
      try (Pty pty = Pty.start(folder, "count", "--tray", "B")) {
        pty.until("1/1  grub").type("9\r").until("Record it?");
        if (hangUp) {
          pty.hangUp();
        } else {
          assertEquals(130, pty.type(CTRL_C).end(), pty.shown());
        }
      }
      assertEquals("The box is whole.\n", done("check").out());
      assertTrue(done("box", "--tray", "B", "--format", "csv").out().contains(",3,"));
    }
  }
}

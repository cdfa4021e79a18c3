package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Looking things up in the ledger, taking them back, and planning. */
class BookkeepingTest {
  private static final String TRAY =
      """
      Body style,Colour,Length (mm),Pieces
      paddle tail,motor oil,75,3
      paddle tail,white,75,5
      curl tail,chalk,90,6
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
    return ran;
  }

  private List<Json> rows(String... args) {
    List<String> all = new ArrayList<>(Arrays.asList(args));
    all.addAll(List.of("--format", "json"));
    return Json.parse(done(all.toArray(String[]::new)).out()).rows();
  }

  @Test
  void theLedgerIsFiltered() {
    done("bought", "white", "8", "--date", "2026-04-22");
    done("lost", "white", "2", "--how", "snag");
    done("lost", "chalk", "1");
    assertEquals(6, rows("ledger").size());
    assertEquals(3, rows("ledger", "--plastic", "white").size());
    assertEquals(2, rows("ledger", "--kind", "lost").size());
    assertEquals(3, rows("ledger", "--kind", "lost", "--kind", "bought").size());
    assertEquals(3, rows("ledger", "--since", "2026-04-21").size());
    assertEquals(1, rows("ledger", "--batch", "2").size());
    assertEquals(1, rows("ledger", "--plastic", "chalk", "--kind", "lost").size());
    assertEquals(2, Ran.in(folder, "ledger", "--kind", "eaten").code());
    assertEquals(65, Ran.in(folder, "ledger", "--plastic", "squid").code());
  }

  @Test
  void ofALongLedgerTheEndIsShownUnlessAllIsAskedFor() throws IOException {
    StringBuilder list = new StringBuilder("Body style,Colour,Length (mm),Pieces\n");
    for (int i = 1; i <= 2005; i++) {
      list.append("grub,shade ").append(i).append(",50,1\n");
    }
    String file = Files.writeString(folder.resolve("long.csv"), list).toString();
    done("import", file);
    String shown = done("ledger").out();
    assertTrue(
        shown.contains("The newest 2000 movements. 8 earlier ones are shown by --all"), shown);
    assertTrue(shown.contains("shade 2005") && !shown.contains("motor oil"), shown);
    assertTrue(done("ledger", "--all").out().contains("motor oil"));
    assertTrue(done("ledger", "--kind", "opening").out().contains("motor oil"));
    assertEquals(2008, rows("ledger").size());
    assertEquals(2, Ran.in(folder, "ledger", "--batches", "--all").code());
  }

  @Test
  void batchesTellWhatEachCommandRecorded() {
    done("bought", "white", "8");
    done("undo");
    List<Json> batches = rows("ledger", "--batches");
    assertEquals(3, batches.size());
    assertEquals("bought 8 pieces: paddle tail, white, 75 mm", batches.get(1).text("summary"));
    assertEquals(3, batches.get(1).number("undone_by"));
    assertTrue(batches.get(2).isNull("undone_by"));
    assertEquals(2, Ran.in(folder, "ledger", "--batches", "--batch", "1").code());
  }

  /** A list corrected and set back on one day: what it says last holds. */
  @Test
  void aListSetBackTheSameDayIsCountedAgain() throws IOException {
    for (int pieces : new int[] {7, 3, 7}) {
      String list = TRAY.replace("white,75,5", "white,75," + pieces);
      done("import", Files.writeString(folder.resolve("tray.csv"), list).toString());
      assertEquals(pieces, rows("box", "--colour", "white").get(0).number("pieces"));
    }
    // An older list read again still says nothing new.
    String old = Files.writeString(folder.resolve("tray.csv"), TRAY).toString();
    done("import", old, "--count-date", "2026-04-20");
    assertEquals(7, rows("box", "--colour", "white").get(0).number("pieces"));
  }

  @Test
  void anUndoIsShownBeforeItIsDone() {
    done("trips", "log", "2026-04-28 Gull pollack: white 60m 2t -2 snag");
    Ran preview = done("undo", "--dry-run");
    assertTrue(preview.out().contains("paddle tail, white, 75 mm: 3 now, 5 after"), preview.out());
    assertTrue(preview.out().contains("1 stint, told then"), preview.out());
    assertEquals(2, rows("ledger", "--batches").size());
    done("undo");
    assertEquals(0, rows("trips").size());
  }

  @Test
  void anUndoInTheWayOfLaterOnesSaysWhichAndInWhichOrder() {
    done("trips", "log", "2026-04-10 Gull pollack: white 60m 2t -2 snag");
    done("trips", "log", "2026-04-11 Gull pollack: white 60m 2t -1 snag");
    Ran ran = Ran.in(folder, "undo", "1");
    assertEquals(65, ran.code());
    assertTrue(ran.err().contains("batch 1, "), ran.err());
    int last = ran.err().indexOf("traytally undo 3  (2026-04-11, Gull");
    int first = ran.err().indexOf("traytally undo 2  (2026-04-10, Gull");
    assertTrue(last > 0 && first > last, ran.err());
    done("undo", "3");
    done("undo", "2");
    done("undo", "1");
  }

  @Test
  void tripsArePlannedAndDropped() {
    Ran one = done("plan", "add", "2026-05-09", "Gannet Stack", "pollack", "clear", "5h", "2r");
    assertTrue(
        one.out().contains("2026-05-09, Gannet Stack, pollack, clear, 5 hours, 2 rods"), one.out());
    Json planned = rows("plan").get(0);
    assertEquals("Gannet Stack", planned.text("water"));
    assertEquals(5, planned.number("hours"));
    assertEquals(2, planned.number("rods"));
    done("plan", "add", "2026-05-16 gannet stack pollack 4.5 hours", "--weekly", "3");
    assertEquals(4, rows("plan", "list").size());
    assertEquals("2026-05-30", rows("plan").get(3).text("date"));
    assertEquals(65, Ran.in(folder, "plan", "add", "2026-05-09 gannet stack pollack 3h").code());
    done("plan", "add", "2026-05-09", "Gull", "bass", "3h");
    Ran two = Ran.in(folder, "plan", "drop", "2026-05-09");
    assertEquals(65, two.code());
    assertTrue(two.err().contains("Name the water of one"), two.err());
    done("plan", "drop", "2026-05-09", "gull");
    assertEquals(4, rows("plan").size());
    done("plan", "drop", "2026-05-16", "--all");
    assertEquals(1, rows("plan").size());
    done("undo");
    assertEquals(4, rows("plan").size());
  }

  @Test
  void aPlanThatCannotBeIsRefused() {
    assertTrue(Ran.in(folder, "plan", "add", "2026-04-09 Gull bass 5h").err().contains("is past"));
    assertTrue(Ran.in(folder, "plan", "add", "2026-05-09 Gull bass").err().contains("how long"));
    assertEquals(65, Ran.in(folder, "plan", "drop", "2026-05-09").code());
    assertEquals(0, rows("plan").size());
  }
}

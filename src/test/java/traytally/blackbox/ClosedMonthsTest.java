package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** The months in which the angler will not fish a water, held against the plan. */
class ClosedMonthsTest {
  private static final String FLAG = "Gannet Stack is closed by your own note (May to June)";

  @TempDir Path folder;

  @BeforeEach
  void planTwoTrips() {
    done("count", "4", "--new", "grub, chalk, 50");
    done("plan", "add", "2026-05-30", "Gannet Stack", "pollack", "5h");
    done("plan", "add", "2026-07-04", "Gannet Stack", "pollack", "5h");
  }

  private Ran done(String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    assertEquals("", ran.err());
    return ran;
  }

  private List<String> closed() {
    return Json.parse(done("plan", "--format", "json").out()).rows().stream()
        .map(row -> row.text("date") + " " + row.yes("closed"))
        .toList();
  }

  @Test
  void aTripInsideThemIsFlaggedWhereverItShows() {
    assertFalse(done("plan").out().contains("is closed"));
    assertTrue(done("plan", "closed", "gannet", "stack", "may-6").out().contains(FLAG));
    for (String command : List.of("plan", "restock", "")) {
      Ran ran = command.isEmpty() ? done() : done(command);
      assertTrue(
          ran.out()
              .replaceAll("\\s+", " ")
              .contains(FLAG + ", and you plan to be there on 2026-05-30."),
          ran.out());
    }
    assertEquals(List.of("2026-05-30 true", "2026-07-04 false"), closed());
    Ran added = done("plan", "add", "2026-06-06", "gannet stack", "bass", "3h", "--weekly", "2");
    assertTrue(added.out().contains("2026-06-06, 2026-06-13"), added.out());
    assertFalse(done("plan", "add", "2026-08-01", "Gannet Stack", "3h").out().contains("closed"));
  }

  @Test
  void theLastWordCountsAndCanBeTakenBack() {
    done("plan", "closed", "Gannet Stack", "5-6");
    done("plan", "closed", "Gannet Stack", "feb,", "nov");
    Json list = Json.parse(done("plan", "closed", "--format", "json").out());
    assertEquals(1, list.rows().size());
    assertEquals("2,11", list.rows().get(0).text("months"));
    assertTrue(done("plan", "closed", "gannet-stack", "2,11").out().contains("Nothing changed."));
    done("undo");
    assertEquals(List.of("2026-05-30 true", "2026-07-04 false"), closed());
    done("plan", "closed", "gannet stack", "--off");
    assertEquals(List.of("2026-05-30 false", "2026-07-04 false"), closed());
    assertTrue(done("plan", "closed").out().contains("No closed months are noted"));
  }

  @Test
  void whatCannotBeMeantIsRefused() {
    assertEquals(2, Ran.in(folder, "plan", "closed", "Gannet Stack").code());
    assertEquals(2, Ran.in(folder, "plan", "closed", "Gannet Stack", "14").code());
    assertEquals(2, Ran.in(folder, "plan", "closed", "--off").code());
    assertEquals(65, Ran.in(folder, "plan", "closed", "Gannet Stack", "--off").code());
    Ran slip = Ran.in(folder, "plan", "closed", "Ganet Stack", "2");
    assertEquals(65, slip.code());
    assertTrue(slip.err().contains("nearly \"Gannet Stack\""), slip.err());
  }
}

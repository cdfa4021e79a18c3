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

/** One tray counted through of an evening. */
class TrayCountTest {
  private static final String TRAY =
      """
      Body style,Colour,Length (mm),Pieces,Tray
      curl tail,chalk,90,6,B
      paddle tail,motor oil,75,3,A
      paddle tail,rust,75,4,b
      paddle tail,white,75,5,B
      sandeel,rust,115,0,B
      """;

  @TempDir Path folder;

  @BeforeEach
  void countABox() throws IOException {
    String list = Files.writeString(folder.resolve("tray.csv"), TRAY).toString();
    assertEquals(0, Ran.in(folder, "import", list, "--count-date", "2026-04-20").code());
  }

  private Ran type(String keys, String... more) {
    return Ran.typing(folder, keys, args(more));
  }

  private Ran pipe(String lines, String... more) {
    return Ran.piping(folder, lines, args(more));
  }

  private static String[] args(String... more) {
    String[] args = new String[3 + more.length];
    System.arraycopy(new String[] {"count", "--tray", "b"}, 0, args, 0, 3);
    System.arraycopy(more, 0, args, 3, more.length);
    return args;
  }

  /** Pieces by row: chalk, motor oil, paddle rust, white, sandeel rust. */
  private List<Integer> pieces() {
    return Json.parse(Ran.in(folder, "box", "--format", "json").out()).rows().stream()
        .map(row -> (int) row.number("pieces"))
        .toList();
  }

  private int batches() {
    return Json.parse(Ran.in(folder, "ledger", "--batches", "--format", "json").out())
        .rows()
        .size();
  }

  @Test
  void enterTakesTheBooksWordAndANumberTheEyes() {
    Ran ran = type("\r2\r7\r1\r\r");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.err().contains("1/4  curl tail, chalk, 90 mm: book 6, you see"), ran.err());
    assertTrue(ran.out().contains("counted tray b: 4 plastics, 3 not as the book said"), ran.out());
    assertTrue(ran.out().contains("paddle tail, rust, 75 mm: 4 before, 2 now."), ran.out());
    assertEquals(List.of(6, 3, 2, 7, 1), pieces());
    assertEquals(2, batches());
    assertEquals(0, Ran.in(folder, "undo").code());
    assertEquals(List.of(6, 3, 4, 5, 0), pieces());
  }

  @Test
  void itGoesBackSkipsAndStops() {
    type("9\rback\r8\rskip\rsome\r3\rstop\r\r");
    assertEquals(List.of(8, 3, 4, 3, 0), pieces());
    Ran none = type("skip\rstop\r");
    assertTrue(none.out().contains("Nothing changed."), none.out());
    assertEquals(2, batches());
  }

  @Test
  void leavingRecordsNothing() {
    assertEquals(130, type("9\r8\r" + Ran.once("3/4  ") + Ran.once("see ") + "\u0003").code());
    assertEquals(0, type("9\r8\r\u0004").code());
    assertEquals(0, type("9\r8\rstop\rn\r").code());
    assertEquals(List.of(6, 3, 4, 5, 0), pieces());
    assertEquals(1, batches());
  }

  @Test
  void aPipeAnswersToo() {
    Ran ran = pipe("5\n\nskip\n2\n");
    assertEquals(0, ran.code(), ran.err());
    assertEquals(List.of(5, 3, 4, 5, 2), pieces());
    assertEquals(0, pipe("4\n").code(), "a pipe that ends early ends the walk");
    assertEquals(List.of(4, 3, 4, 5, 2), pieces());
    Ran wrong = pipe("7\nmany\n");
    assertEquals(65, wrong.code());
    assertTrue(wrong.err().contains("line 2: \"many\" is no count of pieces"), wrong.err());
    assertTrue(pipe("").out().contains("Nothing changed."));
    assertTrue(pipe("9\n", "--dry-run").out().contains("Tried only"));
    assertEquals(List.of(4, 3, 4, 5, 2), pieces());
  }

  @Test
  void anUnknownTrayNamesTheKnownOnes() {
    Ran ran = Ran.in(folder, "count", "--tray", "C");
    assertEquals(65, ran.code());
    assertTrue(ran.err().contains("Trays: A, B."), ran.err());
    assertFalse(Ran.in(folder, "count").code() == 0);
  }
}

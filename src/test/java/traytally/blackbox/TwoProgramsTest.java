package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Two programs at one box: one waits for the other, or says so, and nothing is lost. */
class TwoProgramsTest {
  private static final int MOST_SECONDS = 120;

  @TempDir Path folder;

  @BeforeEach
  void countAPlastic() {
    assertEquals(0, Ran.in(folder, "count", "4", "--new", "grub, chalk, 50").code());
  }

  private Ran waiting(String seconds, String... args) {
    return Ran.with(
        Map.of(
            "TRAYTALLY_BOX", folder.resolve("tray.box").toString(),
            "XDG_STATE_HOME", folder.resolve("state").toString(),
            "XDG_CACHE_HOME", folder.resolve("cache").toString(),
            "TRAYTALLY_WAIT", seconds),
        args);
  }

  private Connection other() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("tray.box"));
  }

  @Test
  void whoWritesWaitsAndThenSaysThatTheBoxIsInUse() throws SQLException {
    String before = Ran.in(folder, "ledger", "--format", "json").out();
    try (Connection other = other();
        Statement lock = other.createStatement()) {
      lock.execute("BEGIN IMMEDIATE");
      lock.execute("UPDATE counted SET pieces = 99");
      for (String[] args :
          new String[][] {
            {"lost", "grub", "1"},
            {"undo"},
            {"restore", copy()},
            {"import", "demo-data/tray.xlsx"}
          }) {
        Ran ran = waiting("0", args);
        assertEquals(75, ran.code(), args[0] + ran.out() + ran.err());
        assertTrue(ran.err().contains("Another program is using the box"), ran.err());
        assertEquals(1, ran.err().lines().count(), ran.err());
      }
      // Who only looks sees the book as it was.
      for (String command : List.of("box", "trips", "restock", "check", "backup")) {
        assertEquals(0, waiting("0", command).code(), command);
      }
      assertEquals(before, waiting("0", "ledger", "--format", "json").out());
      lock.execute("ROLLBACK");
    }
    assertEquals(0, waiting("0", "lost", "grub", "1").code());
    assertEquals("The box is whole.\n", Ran.in(folder, "check").out());
  }

  private String copy() {
    String copy = folder.resolve("copy.box").toString();
    assertEquals(0, Ran.in(folder, "backup", copy).code());
    return copy;
  }

  @Test
  void whoWaitsLongEnoughGoesOn() throws Exception {
    try (Connection other = other();
        Statement lock = other.createStatement()) {
      lock.execute("BEGIN IMMEDIATE");
      Process waiting = start(Map.of("TRAYTALLY_WAIT", "60"), "found", "grub", "2");
      // It has the box open and waits: it does not end while the other holds on.
      assertTrue(!waiting.waitFor(2, TimeUnit.SECONDS), () -> said(waiting));
      lock.execute("ROLLBACK");
      assertTrue(waiting.waitFor(MOST_SECONDS, TimeUnit.SECONDS), "it hangs");
      assertEquals(0, waiting.exitValue(), () -> said(waiting));
    }
    String listed = Ran.in(folder, "box", "--format", "json").out();
    assertEquals(6, Json.parse(listed).rows().get(0).number("pieces"), listed);
  }

  @Test
  void twoImportsAtOnceBothEndWell() throws Exception {
    String header = "Body style,Colour,Length (mm),Pieces\n";
    Path first = Files.writeString(folder.resolve("a.csv"), header + "grub,rust,50,3\n");
    Path second = Files.writeString(folder.resolve("b.csv"), header + "grub,plum,50,5\n");
    List<Process> both = new ArrayList<>();
    for (Path list : List.of(first, second)) {
      both.add(start(Map.of(), "import", list.toString()));
    }
    int done = 0;
    for (Process each : both) {
      assertTrue(each.waitFor(MOST_SECONDS, TimeUnit.SECONDS), "it hangs");
      // One that read the book before the other wrote is told to try again.
      assertTrue(each.exitValue() == 0 || each.exitValue() == 75, () -> said(each));
      done += each.exitValue() == 0 ? 1 : 0;
    }
    assertTrue(done >= 1);
    assertEquals("The box is whole.\n", Ran.in(folder, "check").out());
    String listed = Ran.in(folder, "box", "--format", "json").out();
    assertEquals(1 + done, Json.parse(listed).rows().size(), listed);
  }

  @Test
  void howLongToWaitIsANumber() {
    Ran ran = waiting("long", "box");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("TRAYTALLY_WAIT"), ran.err());
  }

  private final Map<Process, Path> outputs = new HashMap<>();

  private Process start(Map<String, String> more, String... args) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-classpath"));
    command.addAll(List.of(System.getProperty("java.class.path"), "traytally.cli.Main"));
    command.addAll(List.of("--as-of", "2026-05-01"));
    command.addAll(List.of(args));
    Path said = Files.createTempFile(folder, "said", ".txt");
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile());
    builder.environment().put("TRAYTALLY_BOX", folder.resolve("tray.box").toString());
    builder.environment().put("XDG_CACHE_HOME", folder.resolve("cache").toString());
    builder.environment().putAll(more);
    Process process = builder.start();
    outputs.put(process, said);
    return process;
  }

  private String said(Process process) {
    try {
      return Files.readString(outputs.get(process));
    } catch (IOException e) {
      return e.toString();
    }
  }
}

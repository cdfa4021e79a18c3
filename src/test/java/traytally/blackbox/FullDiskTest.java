package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** A disk that is full or read-only: the book stays whole, and a sentence or two say why. */
class FullDiskTest {
  @TempDir Path folder;

  private static final String[][] RECORDING = {
    {"count", "grub", "3", "pieces"},
    {"bought", "grub", "2", "pieces"},
    {"trips", "log", "today Gull: grub 20m -1 snag"},
    {"plan", "add", "2026-05-09", "Gull", "3h"},
    {"plan", "closed", "Gull", "2-4"},
    {"keep", "grub", "--yes"},
    {"settings", "delivery-days", "9"},
    {"undo"},
    {"backup"},
    {"export", "all.json"},
  };

  private static void assertRefused(Ran ran, String why) {
    assertTrue(Set.of(73, 74).contains(ran.code()), why + ran.code() + ran.out() + ran.err());
    String message = ran.err().strip();
    assertTrue(message.startsWith("traytally: "), why + message);
    assertEquals(1, message.lines().count(), why + message);
    assertTrue(message.split("[.?] ", -1).length <= 4, why + message);
    assertTrue(!message.contains("Exception:") && !message.contains("fault of"), why + message);
  }

  @Test
  void aFullDiskLeavesTheBookWhole() throws IOException {
    try (SmallDisk disk = SmallDisk.in(folder)) {
      Path at = disk.folder();
      assertEquals(0, Ran.in(at, "count", "4", "--new", "grub, chalk, 50").code());
      String before = Ran.in(at, "ledger", "--format", "json").out();
      disk.fill(0);
      for (String[] args : RECORDING) {
        String[] here = args.clone();
        if (args[0].equals("export")) {
          here[1] = at.resolve(args[1]).toString();
        }
        assertRefused(Ran.in(at, here), String.join(" ", args) + ": ");
        assertEquals(before, Ran.in(at, "ledger", "--format", "json").out());
        assertEquals("The box is whole.\n", Ran.in(at, "check").out());
      }
      // The trip that is told at the keyboard is not lost without a word.
      Ran told = Ran.typing(at, "today Gull pollack\rgrub 20m\r\r\r", "trips", "log");
      assertTrue(told.err().contains("No draft can be kept"), told.err());
      assertEquals(74, told.code(), told.err());
      assertEquals("The box is whole.\n", Ran.in(at, "check").out());
      Files.delete(at.resolve("filler"));
      assertEquals(0, Ran.in(at, "bought", "grub", "2", "pieces").code());
      try (var left = Files.list(at)) {
        assertEquals(
            List.of(), left.filter(f -> f.toString().endsWith(".part")).toList(), "left behind");
      }
    }
  }

  @Test
  void aReadOnlyFolderLeavesTheBookReadable() throws IOException {
    try (SmallDisk disk = SmallDisk.in(folder)) {
      Path at = disk.folder();
      assertEquals(0, Ran.in(at, "count", "4", "--new", "grub, chalk, 50").code());
      String before = Ran.in(at, "ledger", "--format", "json").out();
      disk.makeReadOnly();
      for (String[] args : RECORDING) {
        String[] here = args.clone();
        if (args[0].equals("export")) {
          here[1] = at.resolve(args[1]).toString();
        }
        assertRefused(Ran.in(at, here), String.join(" ", args) + ": ");
      }
      assertEquals(before, Ran.in(at, "ledger", "--format", "json").out());
      assertEquals("The box is whole.\n", Ran.in(at, "check").out());
    }
  }
}

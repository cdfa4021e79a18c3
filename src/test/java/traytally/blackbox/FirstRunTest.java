package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** What somebody meets who has no box yet. */
class FirstRunTest {
  @TempDir Path folder;

  @Test
  void fiveLinesThatFitTheScreenSayHowToStart() {
    Ran ran = Ran.in(folder);
    assertEquals(0, ran.code(), ran.err());
    List<String> lines = ran.out().lines().toList();
    assertEquals(5, lines.size(), ran.out());
    assertTrue(lines.stream().allMatch(line -> line.length() <= 80), ran.out());
    assertFalse(Files.exists(folder.resolve("tray.box")));
    // Every command it names is one.
    Matcher named = Pattern.compile("traytally (--?)?([a-z]+)").matcher(ran.out());
    int commands = 0;
    while (named.find()) {
      Ran help =
          named.group(1) == null ? Ran.in(folder, named.group(2), "--help") : Ran.in(folder, "-h");
      assertEquals(0, help.code(), named.group());
      commands++;
    }
    assertEquals(5, commands);
  }

  @Test
  void whatNeedsABoxSaysHowToGetOne() {
    for (String command : List.of("box", "restock", "trips", "undo", "check", "backup")) {
      Ran ran = Ran.in(folder, command);
      assertEquals(66, ran.code(), command);
      assertTrue(ran.err().contains("traytally import tray.xlsx"), ran.err());
      assertEquals("", ran.out());
      assertFalse(Files.exists(folder.resolve("tray.box")), command);
    }
  }

  @Test
  void aBoxFromNothingIsCountedInOneLine() {
    Ran ran = Ran.in(folder, "count", "3", "--new", "paddle tail, motor oil, 75", "--tray", "A");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(Ran.in(folder).out().contains("Pieces"), Ran.in(folder).out());
  }
}

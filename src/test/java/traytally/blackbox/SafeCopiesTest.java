package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Copies of the box: made, kept, put back. */
class SafeCopiesTest {
  @TempDir Path folder;

  @BeforeEach
  void countAPlastic() {
    done("count", "4", "--new", "grub, chalk, 50");
  }

  private Ran done(String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    return ran;
  }

  private String ledger() {
    return done("ledger", "--format", "json").out();
  }

  private long backups() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("tray.box.backups"))) {
      return files.count();
    }
  }

  @Test
  void aCopyPutBackIsTheBoxAsItWas() throws IOException {
    String before = ledger();
    Path copy = folder.resolve("stick").resolve("tray.box");
    done("backup", copy.toString());
    byte[] bytes = Files.readAllBytes(copy);
    done("lost", "grub", "2");
    String after = ledger();
    Ran ran = done("restore", copy.toString());
    assertTrue(ran.out().contains("Put back and checked"), ran.out());
    assertEquals(before, ledger());
    assertEquals(0, Ran.in(folder, "check").code());
    assertEquals(1, backups(), "the box as it was is kept");
    assertEquals(-1, Files.mismatch(copy, Files.write(folder.resolve("same"), bytes)));
    try (Stream<Path> kept = Files.list(folder.resolve("tray.box.backups"))) {
      done("restore", kept.findFirst().orElseThrow().toString());
    }
    assertEquals(after, ledger());
  }

  @Test
  void datedCopiesAreKeptUpToANumber() throws IOException {
    for (int i = 0; i < 4; i++) {
      done("backup", "--keep", "3");
    }
    assertEquals(3, backups());
    assertEquals(2, Ran.in(folder, "backup", "--keep", "0").code());
    assertEquals(2, Ran.in(folder, "backup", "copy.box", "--keep", "3").code());
  }

  @Test
  void whatIsNoBoxIsNotPutBack() throws IOException {
    String before = ledger();
    Path copy = folder.resolve("copy.box");
    done("backup", copy.toString());
    byte[] bytes = Files.readAllBytes(copy);
    Path half = Files.write(folder.resolve("half"), java.util.Arrays.copyOf(bytes, 8192));
    Path text = Files.writeString(folder.resolve("text"), "no box");
    assertEquals(65, Ran.in(folder, "restore", half.toString()).code());
    assertEquals(65, Ran.in(folder, "restore", text.toString()).code());
    assertEquals(66, Ran.in(folder, "restore", folder.resolve("nowhere").toString()).code());
    assertEquals(2, Ran.in(folder, "restore", folder.resolve("tray.box").toString()).code());
    assertEquals(before, ledger());
    assertFalse(Files.exists(folder.resolve("tray.box.restoring")));
  }

  @Test
  void aCopyTakesThePlaceOfABoxThatCannotBeOpened() throws IOException {
    String before = ledger();
    Path box = folder.resolve("tray.box");
    Path copy = folder.resolve("copy.box");
    done("backup", copy.toString());
    byte[] whole = Files.readAllBytes(copy);
    byte[] torn = java.util.Arrays.copyOf(whole, whole.length);
    java.util.Arrays.fill(torn, 4096, torn.length, (byte) 0x5a);
    byte[] newer = whole.clone();
    newer[63] = 99; // the user version (sqlite.org/fileformat2.html, 1.3)
    byte[][] broken = {
      "no box at all".getBytes(java.nio.charset.StandardCharsets.UTF_8),
      java.util.Arrays.copyOf(whole, 5000),
      torn,
      newer
    };
    for (int i = 0; i < broken.length; i++) {
      Files.write(box, broken[i]);
      Files.write(folder.resolve("tray.box-journal"), new byte[] {1, 2, 3});
      Ran ran = done("restore", copy.toString());
      assertEquals(before, ledger(), "case " + i);
      assertEquals(0, Ran.in(folder, "check").code());
      assertFalse(Files.exists(folder.resolve("tray.box.restored")));
      if (ran.out().contains(".unreadable")) {
        Path aside = folder.resolve("tray.box.unreadable" + (i == 0 ? "" : "-" + (i + 1)));
        assertEquals(-1, Files.mismatch(aside, Files.write(folder.resolve("same"), broken[i])));
      }
    }
    assertTrue(Files.exists(folder.resolve("tray.box.unreadable-4")));
  }
}

package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.cli.Ran;

/** What commands write: for its owner only, whole or not at all, and nothing beside it. */
class WrittenFilesTest {
  /** Commands that write the file named last. */
  private static final List<String> WRITING =
      List.of(
          "sheet blank box --out blank.xlsx",
          "sheet blank trips --out blank.csv",
          "sheet box --out tray.xlsx",
          "sheet box --out tray.csv",
          "sheet report --out report.xlsx",
          "export all.json",
          "export all",
          "backup copy.box",
          "restock --save parcel.csv",
          "restock --out list.csv",
          "restock --out list.json",
          "restock --out list.xlsx",
          "restock --out list.html",
          "restock --out list.pdf",
          "import bad.csv --problems problems.xlsx");

  @TempDir Path folder;
  @TempDir Path temporary;

  @BeforeEach
  void countATray() throws IOException {
    assertEquals(0, Ran.in(folder, "count", "4", "--new", "grub, chalk, 50").code());
    Files.writeString(
        folder.resolve("bad.csv"),
        "Body style,Colour,Length (mm),Pieces\ngrub,chalk,50,lots\ngrub,rust,50,4\n");
  }

  /** Runs it with a folder for temporary files of its own, where files of others do not lie. */
  private Ran run(String words) {
    String shared = System.setProperty("java.io.tmpdir", temporary.toString());
    try {
      return told(words);
    } finally {
      System.setProperty("java.io.tmpdir", shared);
    }
  }

  private Ran told(String words) {
    String[] args = words.split(" ");
    for (int i = 1; i < args.length; i++) {
      if (args[i].contains(".") || args[i].equals("all")) {
        args[i] = folder.resolve(args[i]).toString();
      }
    }
    return Ran.in(folder, args);
  }

  private Path written(String words) {
    return folder.resolve(words.substring(words.lastIndexOf(' ') + 1));
  }

  private Set<String> names(Path in) throws IOException {
    try (Stream<Path> files = Files.list(in)) {
      return files
          .map(file -> file.getFileName().toString())
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  private static void assertOwnersOnly(Path path) throws IOException {
    String rights =
        PosixFilePermissions.toString(
            Files.getPosixFilePermissions(path, LinkOption.NOFOLLOW_LINKS));
    assertEquals(Files.isDirectory(path) ? "rwx------" : "rw-------", rights, "rights of " + path);
  }

  @Test
  void filesAreTheirOwnersOnlyAndLeaveNothingBesideThem() throws IOException {
    assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
    for (String words : WRITING) {
      final Set<String> before = names(folder);
      Ran ran = run(words);
      assertEquals(0, ran.code(), words + ran.out() + ran.err());
      Path file = written(words);
      assertOwnersOnly(file);
      Set<String> more = names(folder);
      more.removeAll(before);
      more.remove("tray.box.before-import");
      more.remove("cache"); // AnswersTest looks into it
      assertEquals(Set.of(file.getFileName().toString()), more, words);
      assertEquals(Set.of(), names(temporary), words);
    }
    try (Stream<Path> inside = Files.walk(folder.resolve("all"))) {
      for (Path file : inside.toList()) {
        assertOwnersOnly(file);
      }
    }
    assertEquals(0, Ran.in(folder, "backup").code());
    for (String kept : List.of("tray.box.backups", "tray.box.before-import")) {
      assertOwnersOnly(folder.resolve(kept));
      assertOwnersOnly(folder.resolve(kept).resolve(names(folder.resolve(kept)).iterator().next()));
    }
  }

  @Test
  void whereNothingCanBeWrittenASentenceSaysSo() throws IOException {
    Files.createDirectory(folder.resolve("taken"));
    Files.createFile(folder.resolve("taken").resolve("x"));
    for (String words : WRITING) {
      String target = words.substring(words.lastIndexOf(' ') + 1);
      for (String place : List.of("bad.csv/" + target, "no/such/" + target)) {
        boolean makesFolders = words.startsWith("export") || words.startsWith("backup");
        if (makesFolders && place.startsWith("no/")) {
          continue;
        }
        Ran ran = run(words.substring(0, words.lastIndexOf(' ') + 1) + folder.resolve(place));
        assertEquals(73, ran.code(), words + place + ran.out() + ran.err());
        assertEquals(1, ran.err().strip().lines().count(), ran.err());
        assertFalse(ran.err().contains("\tat ") || ran.err().contains("Exception"), ran.err());
      }
    }
    assertFalse(Files.exists(folder.resolve("no")));
  }

  /** A box on a drive that is gone, or in a place that cannot be one. */
  @ParameterizedTest
  @ValueSource(strings = {"gone/tray.box", "file/tray.box", "loop/tray.box"})
  void aBoxWhereNoBoxCanBe(String place) throws IOException {
    Files.createFile(folder.resolve("file"));
    Files.createSymbolicLink(folder.resolve("loop"), folder.resolve("loop"));
    String box = folder.resolve(place).toString();
    for (String words : List.of("box", "trips", "undo", "backup", "check", "restock", "ledger")) {
      Ran ran = Ran.in(folder, words, "--box", box);
      assertEquals(66, ran.code(), words + ran.err());
      assertTrue(ran.err().contains("there is no box at"), ran.err());
      assertEquals(1, ran.err().strip().lines().count(), ran.err());
    }
    Ran made = Ran.in(folder, "count", "4", "--new", "grub, chalk, 50", "--box", box);
    assertEquals(place.startsWith("gone") ? 0 : 73, made.code(), made.err());
    assertFalse(made.err().contains("Exception") || made.err().contains("\tat "), made.err());
  }

  /** The computer's clock was set back, or an older day is asked for. */
  @Test
  void aClockSetBackLosesNothing() {
    String[] later = {"--as-of", "2026-06-10"};
    assertEquals(0, Ran.in(folder, "bought", "grub", "3", later[0], later[1]).code());
    assertEquals(0, Ran.in(folder, "plan", "add", "2026-06-20", "Gull", "3h").code());
    String batches = Ran.in(folder, "ledger", "--batches", "--format", "json").out();
    assertEquals(3, Json.parse(batches).rows().size());
    // In May the purchase of June has not come yet; it is in the book all the same.
    assertEquals(4, pieces("2026-05-01"));
    assertEquals(7, pieces("2026-06-10"));
    assertEquals(0, Ran.in(folder, "lost", "grub", "2", "--as-of", "2026-05-20").code());
    assertEquals(2, pieces("2026-05-20"));
    assertEquals(5, pieces("2026-06-10"));
    // The last batch is the one recorded last, whatever day it speaks of.
    Ran undone = Ran.in(folder, "undo", "--as-of", "2026-04-01");
    assertTrue(undone.out().startsWith("Undone: batch 4,"), undone.out() + undone.err());
    assertEquals(7, pieces("2026-06-10"));
    assertEquals(0, Ran.in(folder, "restock", "--as-of", "2025-01-01").code());
    assertEquals("The box is whole.\n", Ran.in(folder, "check", "--as-of", "2025-01-01").out());
  }

  private int pieces(String day) {
    String listed = Ran.in(folder, "box", "--format", "json", "--as-of", day).out();
    return Json.parse(listed).rows().stream().mapToInt(row -> (int) row.number("pieces")).sum();
  }
}

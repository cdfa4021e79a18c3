package traytally.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.cli.Ran;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.store.Box;

/** A box written as text and read back is the same box. */
class ExportTest {
  private static final int BOXES = Boolean.getBoolean("slow") ? 200 : 8;

  @TempDir Path folder;

  private Ran run(Path box, String... args) {
    String[] all = Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--box";
    all[args.length + 1] = box.toString();
    return Ran.in(folder, all);
  }

  private static Book book(Path file) {
    try (Box box = Box.open(file, RandomBox.CLOCK)) {
      assertEquals(List.of(), box.check());
      return box.book();
    }
  }

  private static void assertSame(Path expected, Path actual) {
    Book one = book(expected);
    Book other = book(actual);
    assertEquals(one.batches(), other.batches());
    // As text, since two spellings of a name are equal.
    assertEquals(one.facts().toString(), other.facts().toString());
    assertEquals(one.ledger().movements().toString(), other.ledger().movements().toString());
    assertEquals(one.settings(), other.settings());
    assertEquals(one.nextStint(), other.nextStint());
  }

  @ParameterizedTest
  @ValueSource(strings = {"all.json", "all"})
  void aBoxReadBackIsEqual(String name) throws IOException {
    for (int seed = 0; seed < BOXES; seed++) {
      Path box = folder.resolve(seed + ".box");
      RandomBox.fill(box, seed, 25);
      Path target = folder.resolve(seed + name);
      assertEquals(0, run(box, "export", target.toString()).code());
      Path back = folder.resolve(seed + "-back.box");
      Ran read = run(back, "import", target.toString());
      assertEquals(0, read.code(), read.err());
      assertSame(box, back);
      // What was undone is still known, and can be brought back alike.
      Path again = folder.resolve(seed + "-again-" + name);
      assertEquals(0, run(back, "export", again.toString()).code());
      assertEquals(contents(target), contents(again));
      undoSomething(box);
      undoSomething(back);
      assertSame(box, back);
    }
  }

  private static void undoSomething(Path file) {
    try (Box box = Box.open(file, RandomBox.CLOCK)) {
      Book book = box.book();
      for (Batch batch : book.batches()) {
        if (batch.stands() && box.undo(batch.id()).blockers(book).isEmpty()) {
          Entry entry = box.undo(batch.id()).entry(book);
          box.record(entry);
          return;
        }
      }
    }
  }

  /** Every file of an export, with its name. */
  private static List<String> contents(Path export) throws IOException {
    if (Files.isRegularFile(export)) {
      return List.of(Files.readString(export));
    }
    List<String> contents = new ArrayList<>();
    try (Stream<Path> files = Files.list(export)) {
      for (Path file : files.sorted().toList()) {
        contents.add(file.getFileName() + "\n" + Files.readString(file));
      }
    }
    return contents;
  }

  private Path exported(String name) {
    Path box = folder.resolve("tray.box");
    RandomBox.fill(box, 7, 10);
    Path target = folder.resolve(name);
    assertEquals(0, run(box, "export", target.toString()).code());
    return target;
  }

  @Test
  void columnsAndFilesMayComeInAnyOrder() throws IOException {
    Path export = exported("all");
    // A spreadsheet program may put a byte order mark and CRLF, another may shuffle columns.
    Path kept = export.resolve("agreed.csv");
    Files.writeString(kept, "\uFEFF" + Files.readString(kept).replace("\n", "\r\n"));
    Path chosen = export.resolve("chosen.csv");
    List<String> shuffled = new ArrayList<>();
    for (String line : Files.readAllLines(chosen)) {
      List<String> cells = new ArrayList<>(Arrays.asList(line.split(",", -1)));
      Collections.reverse(cells);
      shuffled.add(String.join(",", cells));
    }
    Files.write(chosen, shuffled);
    Path back = folder.resolve("back.box");
    Ran read = run(back, "import", export.toString());
    assertEquals(0, read.code(), read.err());
    assertSame(folder.resolve("tray.box"), back);
  }

  @Test
  void aBoxThatHoldsSomethingIsNotReplaced() {
    Path export = exported("all.json");
    Ran ran = run(folder.resolve("tray.box"), "import", export.toString());
    assertEquals(65, ran.code());
    assertTrue(ran.err().contains("--box new.box"), ran.err());
    assertEquals(73, run(folder.resolve("tray.box"), "export", export.toString()).code());
    assertEquals(2, run(folder.resolve("b.box"), "import", export.toString(), "x.csv").code());
    Ran tried = run(folder.resolve("b.box"), "import", export.toString(), "--dry-run");
    assertEquals(0, tried.code());
    assertFalse(Files.exists(folder.resolve("b.box")));
  }

  @Test
  void aBrokenExportMakesNoBox() throws IOException {
    String whole = Files.readString(exported("all.json"));
    List<String> broken =
        List.of(
            whole.substring(0, whole.length() / 2),
            whole.replace("traytally/export/1", "traytally/export/2"),
            whole.replace("\"box_version\": " + Box.version(), "\"box_version\": 99"),
            whole.replace("\"box_version\": " + Box.version(), "\"box_version\": 0"),
            whole.replaceFirst("\"batch\": 1,", "\"batch\": 4711,"),
            whole.replaceFirst("\"pieces\": \\d+", "\"pieces\": \"many\""),
            whole.replaceFirst("\"pieces\": \\d+", "\"pieces\": [1]"),
            whole.replaceFirst("\"movements\"", "\"motions\""),
            whole.replaceFirst("\"kind\": \"bought\"", "\"kind\": \"borrowed\""));
    for (int i = 0; i < broken.size(); i++) {
      assertFalse(broken.get(i).equals(whole), "case " + i);
      Path file = Files.writeString(folder.resolve("broken" + i + ".json"), broken.get(i));
      Path box = folder.resolve("broken" + i + ".box");
      Ran ran = run(box, "import", file.toString());
      assertEquals(65, ran.code(), "case " + i + ran.out() + ran.err());
      assertTrue(ran.err().startsWith("traytally: "), ran.err());
      assertFalse(ran.err().contains("fault of the program"), ran.err());
      assertFalse(Files.exists(box), "case " + i);
      assertFalse(Files.exists(folder.resolve("broken" + i + ".box.restoring")), "case " + i);
    }
  }
}

package traytally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.ledger.Fact;

/** What is written beside its place first. */
final class PartTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-05-01T12:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void writingThatFailsLeavesWhatWasThere() throws IOException {
    Path file = Files.writeString(folder.resolve("list.csv"), "mine");
    assertThrows(
        IOException.class,
        () ->
            Part.write(
                file,
                out -> {
                  out.write(new byte[100_000]);
                  throw new IOException("the disk is full");
                }));
    assertEquals("mine", Files.readString(file));
    assertEquals(List.of("list.csv"), names());
  }

  @Test
  void aLinkGoesOnPointingAtWhatIsWritten() throws IOException {
    Path real = Files.writeString(folder.resolve("real.csv"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.csv"), real);
    Part.write(link, out -> out.write("new".getBytes(StandardCharsets.UTF_8)));
    assertTrue(Files.isSymbolicLink(link));
    assertEquals("new", Files.readString(real));
  }

  @Test
  void whatDeadProcessesLeftIsSweptAndWhatLivingOnesWriteIsNot() throws Exception {
    Process other = new ProcessBuilder("sleep", "60").start();
    String living = ".traytally-" + other.pid() + "-1.part";
    String own = ".traytally-" + ProcessHandle.current().pid() + "-1.part";
    long dead = new ProcessBuilder("true").start().onExit().get().pid();
    for (String name : List.of(living, own, ".traytally-" + dead + "-1.part-journal", "mine")) {
      Files.createFile(folder.resolve(name));
    }
    Path half = Files.createDirectory(folder.resolve(".traytally-" + dead + "-2.part"));
    Files.createFile(half.resolve("copy.box"));
    Box.open(folder.resolve("tray.box"), CLOCK).close();
    assertEquals(Stream.of(living, own, "mine", "tray.box").sorted().toList(), names());
    other.destroy();
    other.waitFor();
    Box.openExisting(folder.resolve("tray.box"), CLOCK).orElseThrow().close();
    assertEquals(Stream.of(own, "mine", "tray.box").sorted().toList(), names());
  }

  @Test
  void aProgramThatHadTheBoxOpenDoesNotRecordIntoTheOneReplaced() throws IOException {
    Path file = folder.resolve("tray.box");
    Path copy = folder.resolve("copy.box");
    try (Box mine = Box.open(file, CLOCK)) {
      mine.record(Sample.opening(12));
      mine.backup(copy);
      mine.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.WORM))));
      mine.book();
      try (Box other = Box.open(file, CLOCK)) {
        other.restore(copy, folder.resolve("kept"), 20);
      }
      BoxException refused = assertThrows(BoxException.class, () -> mine.record(Sample.opening(5)));
      assertEquals(BoxException.Kind.BUSY, refused.kind());
      assertEquals(1, mine.book().batches().size());
      // As many batches as it knew of, but others.
      try (Box other = Box.open(file, CLOCK)) {
        other.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.PADDLE))));
      }
      assertThrows(BoxException.class, () -> mine.record(Sample.opening(5)));
      assertEquals(2, mine.book().batches().size());
      assertEquals(3, mine.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.WORM)))));
      assertEquals(List.of(), mine.check());
    }
    assertFalse(Files.exists(folder.resolve("tray.box-journal")));
  }

  @Test
  void aBackupOverABoxThatCrashedLosesNothingUntilItIsWhole() throws Exception {
    Path copy = folder.resolve("copy.box");
    try (Box box = Box.open(folder.resolve("tray.box"), CLOCK)) {
      box.record(Sample.opening(12));
      box.backup(copy);
      Files.write(folder.resolve("copy.box-journal"), new byte[] {1, 2, 3});
      box.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.WORM))));
      box.backup(copy);
    }
    assertEquals(List.of("copy.box", "tray.box"), names());
    try (Box box = Box.open(copy, CLOCK)) {
      assertEquals(2, box.batches().size());
    }
  }
}

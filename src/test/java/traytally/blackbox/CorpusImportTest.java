package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Several hundred files that nobody made for this program, handed to it one by one. */
class CorpusImportTest {
  /**
   * Ten times what the slowest takes on a busy machine (some 2 s): a hang, not a speed, is looked
   * for.
   */
  private static final Duration HANG = Duration.ofSeconds(20);

  @TempDir Path folder;

  @Test
  void everyFileEndsInAReportOrOneSentence() throws IOException {
    Path corpus = Path.of(System.getProperty("traytally.shared", "../shared")).resolve("corpus");
    assumeTrue(
        Files.isDirectory(corpus),
        () -> "skipped: no folder " + corpus.toAbsolutePath().normalize());
    List<Path> files;
    try (Stream<Path> found = Files.walk(corpus)) {
      files = found.filter(Files::isRegularFile).sorted().toList();
    }
    Path tray =
        Files.writeString(
            folder.resolve("tray.csv"), "Body style,Colour,Length (mm),Pieces\npaddle,kelp,75,4\n");
    assertEquals(0, Ran.in(folder, "import", tray.toString()).code());
    byte[] box = Files.readAllBytes(folder.resolve("tray.box"));
    for (Path file : files) {
      Ran ran =
          assertTimeoutPreemptively(
              HANG, () -> Ran.in(folder, "import", file.toString()), file::toString);
      check(file, ran);
      if (ran.code() == 65) {
        byte[] after = Files.readAllBytes(folder.resolve("tray.box"));
        assertTrue(java.util.Arrays.equals(box, after), () -> "the box changed: " + file);
      }
      Files.write(folder.resolve("tray.box"), box);
    }
  }

  private static void check(Path file, Ran ran) {
    String said = file + "\n" + ran.out() + ran.err();
    assertTrue(ran.code() == 0 || ran.code() == 65, said);
    assertFalse(said.contains("Exception") || said.contains("\tat "), said);
    assertFalse(said.contains("a fault of the program"), said);
    if (ran.out().isEmpty()) {
      assertEquals(65, ran.code(), said);
      assertEquals(1, ran.err().lines().count(), said);
      assertTrue(ran.err().startsWith("traytally: ") && ran.err().endsWith(".\n"), said);
    }
  }
}

package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Several hundred files from the test folders of spreadsheet libraries, many of them broken. */
class CorpusTest {
  /**
   * Long past what any of them takes (all 553 take some 5 s): a hang, not a speed, is looked for.
   */
  private static final Duration HANG = Duration.ofSeconds(20);

  @Test
  void everyFileEndsInCellsOrOneSentence() throws IOException {
    Path corpus = SharedFolder.require("corpus");
    List<String> refused = new ArrayList<>();
    int read = 0;
    for (Path file : SharedFolder.filesBelow(corpus)) {
      String outcome = assertTimeoutPreemptively(HANG, () -> outcome(file), file.toString());
      if (outcome.isEmpty()) {
        read++;
      } else {
        refused.add(file + ": " + outcome);
        assertFalse(outcome.contains("Exception"), outcome);
        assertTrue(outcome.endsWith("."), outcome);
        assertTrue(outcome.length() <= 200, outcome);
      }
    }
    assertTrue(read > 8 * refused.size(), "read " + read + ", refused " + refused);
    assertEquals(List.of(), refused.stream().filter(CorpusTest::isPlain).toList());
  }

  /** Whether a file is refused whose name shows no reason for it. */
  private static boolean isPlain(String refused) {
    return refused.contains("samples") || refused.matches(".*(csv|txt|json|yaml): .*");
  }

  private static String outcome(Path file) throws IOException {
    long size = Files.size(file);
    try {
      for (Row row : Reader.rows(file)) {
        assertTrue(row.cells().size() > 0, row.toString());
      }
      return "";
    } catch (UnreadableSheetException e) {
      return e.getMessage();
    } finally {
      assertEquals(size, Files.size(file), "the file was written to: " + file);
    }
  }
}

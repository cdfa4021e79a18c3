package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Small files of every kind, sound and spoilt: each ends in cells or in a sentence. */
class FuzzSeedTest {
  @TempDir Path folder;

  static List<Path> seeds() throws IOException {
    try (Stream<Path> found = Files.walk(FuzzTarget.SEEDS)) {
      return found
          .filter(Files::isRegularFile)
          .filter(file -> !file.endsWith("README.md"))
          .sorted()
          .toList();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void everySeedEndsInCellsOrASentence(Path seed) throws IOException {
    read(seed, Files.readAllBytes(seed));
  }

  /** Each seed cut short and with one bit turned at every so many bytes. */
  @ParameterizedTest
  @MethodSource("seeds")
  void soDoesEverySeedSpoilt(Path seed) throws IOException {
    byte[] content = Files.readAllBytes(seed);
    assertTrue(content.length > 0, seed.toString());
    int step = Math.max(1, content.length / 60);
    for (int at = 0; at < content.length; at += step) {
      byte[] turned = content.clone();
      turned[at] ^= (byte) (1 << (at % 8));
      read(seed, turned);
      read(seed, Arrays.copyOf(content, at));
    }
  }

  private void read(Path seed, byte[] content) throws IOException {
    if (seed.getParent().endsWith("part")) {
      FuzzTarget.sheetPart(folder, content);
    } else {
      FuzzTarget.file(folder, content);
    }
  }
}

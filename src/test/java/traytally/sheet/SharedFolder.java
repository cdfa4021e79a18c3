package traytally.sheet;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Files too many or too large to keep with the project; tests that need them are skipped without.
 */
public final class SharedFolder {
  private SharedFolder() {}

  /** A folder below {@code -Dtraytally.shared=...}, or below {@code ../shared}. */
  public static Path require(String name) {
    Path folder = Path.of(System.getProperty("traytally.shared", "../shared")).resolve(name);
    assumeTrue(
        Files.isDirectory(folder),
        () -> "skipped: no folder " + folder.toAbsolutePath().normalize());
    return folder;
  }

  static List<Path> filesBelow(Path folder) throws IOException {
    try (Stream<Path> found = Files.walk(folder)) {
      return found.filter(Files::isRegularFile).sorted().toList();
    }
  }
}

package traytally.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** A folder for the time of a benchmark. */
record ScratchFolder(Path path) implements AutoCloseable {
  static ScratchFolder make() throws IOException {
    return new ScratchFolder(Files.createTempDirectory("traytally-bench"));
  }

  @Override
  public void close() throws IOException {
    try (Stream<Path> files = Files.walk(path)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}

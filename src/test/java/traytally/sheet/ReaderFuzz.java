package traytally.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Any bytes at all as a file: a text, an old workbook, a packed one. */
public final class ReaderFuzz {
  private static final Path FOLDER = folder();

  private ReaderFuzz() {}

  static Path folder() {
    try {
      return Files.createTempDirectory("traytally-fuzz");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Called by the fuzzer with each input. */
  public static void fuzzerTestOneInput(byte[] content) throws IOException {
    FuzzTarget.file(FOLDER, content);
  }
}

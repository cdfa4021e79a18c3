package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import traytally.report.Report;

/** Outputs looked over by a person and kept; {@code -Dgolden.update=true} writes them anew. */
final class Golden {
  static final boolean UPDATE = Boolean.getBoolean("golden.update");

  private static final Path FOLDER = Path.of("src/test/resources/golden-render");

  private Golden() {}

  static void assertSame(String file, String actual) throws IOException {
    Path kept = FOLDER.resolve(file);
    if (UPDATE) {
      Files.writeString(kept, actual);
    }
    assertEquals(Files.readString(kept), actual, file);
  }

  static String text(Report report, Format format, Look look) throws IOException {
    StringWriter text = new StringWriter();
    Rendering.write(report, format, look, text);
    return text.toString();
  }
}

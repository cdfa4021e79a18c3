package traytally.blackbox;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import traytally.cli.Ran;

/** A program of its own that imports one file after another, each into an empty box. */
final class ImportEach {
  private ImportEach() {}

  /**
   * Prints a line for each of {@code files}: its name, the exit code and the words of the error.
   */
  public static void main(String[] files) throws IOException {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    for (String file : files) {
      Path folder = Files.createTempDirectory(Path.of(file).getParent(), "box");
      Ran ran = Ran.in(folder, "import", file);
      String count = Ran.in(folder, "box", "--format", "json").out().replaceAll("\\s+", "");
      out.println(
          Path.of(file).getFileName()
              + "\t"
              + ran.code()
              + "\t"
              + ran.err().replace("\n", " ").strip()
              + "\t"
              + (count.contains("\"pieces\":7") ? "7 pieces" : "no pieces"));
    }
  }
}

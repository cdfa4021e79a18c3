package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Another program of this machine that looks at what was written; a test is skipped without it. */
final class Program {
  private static final int MOST_SECONDS = 120;

  private final Path file;

  private Program(Path file) {
    this.file = file;
  }

  /** The program with one of these names, or the end of the test if there is none. */
  static Program named(String... names) {
    for (String name : names) {
      List<Path> found =
          Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator, -1))
              .filter(folder -> !folder.isEmpty())
              .map(folder -> Path.of(folder, name))
              .filter(Files::isExecutable)
              .toList();
      if (!found.isEmpty()) {
        return new Program(found.get(0));
      }
    }
    assumeTrue(false, "skipped: none of " + String.join(", ", names) + " is installed");
    throw new IllegalStateException();
  }

  /** Chromium, to open pages with. */
  static Program browser() {
    return named("chromium", "chromium-browser", "google-chrome");
  }

  /** LibreOffice, to open workbooks with. */
  static Program office() {
    return named("soffice", "libreoffice");
  }

  /**
   * Has LibreOffice save {@code files} of {@code folder} as another kind in {@code to}: one start
   * for all, with a profile that stays for the next.
   */
  static void convert(Path folder, String kind, Path to, String... files)
      throws IOException, InterruptedException {
    Path profile =
        Path.of("target", "office-" + System.getProperty("surefire.forkNumber", "1"))
            .toAbsolutePath();
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "-env:UserInstallation=" + profile.toUri(),
                "--headless",
                "--convert-to",
                kind,
                "--outdir",
                to.toString()));
    arguments.addAll(List.of(files));
    office().run(folder, arguments.toArray(String[]::new));
  }

  /** Runs it in {@code folder}, and tells what it printed. */
  String run(Path folder, String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of(file.toString()));
    command.addAll(List.of(arguments));
    Path printed = Files.createTempFile(folder, "printed", ".txt");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .redirectOutput(printed.toFile());
    builder.environment().put("HOME", folder.toString());
    Process process = builder.start();
    if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError(command + " took too long");
    }
    assertEquals(0, process.exitValue(), command.toString());
    return Files.readString(printed, StandardCharsets.UTF_8);
  }
}

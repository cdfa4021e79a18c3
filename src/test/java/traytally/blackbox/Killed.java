package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;

/** The program in a process of its own, which is killed without a warning (SIGKILL). */
final class Killed {
  private static final int MOST_SECONDS = 120;

  /** Where a kill landed, by what could be seen of the command's work. */
  enum When {
    /** Nothing had changed on the disk. */
    BEFORE,
    /** Something had, and the command had not ended. */
    DURING,
    /** It had ended by itself. */
    AFTER
  }

  private final Path folder;
  private final Path temporary;

  /** For the box {@code tray.box} in {@code folder}; temporary files go into {@code temporary}. */
  Killed(Path folder, Path temporary) {
    this.folder = folder;
    this.temporary = temporary;
  }

  /** Runs a command to its end, and tells how many nanoseconds that took. */
  long whole(List<String> args) throws IOException, InterruptedException {
    long began = System.nanoTime();
    Process process = start(args);
    assertTrue(process.waitFor(MOST_SECONDS, TimeUnit.SECONDS), "it hangs: " + args);
    assertEquals(0, process.exitValue(), () -> args + said());
    return System.nanoTime() - began;
  }

  /** Kills it so many nanoseconds after its start. */
  When afterStart(long nanos, List<String> args) throws IOException, InterruptedException {
    Map<Path, String> before = seen();
    Process process = start(args);
    process.waitFor(nanos, TimeUnit.NANOSECONDS);
    return kill(process, !seen().equals(before));
  }

  /** Kills it so many nanoseconds after the first change on the disk that can be seen. */
  When afterChange(long nanos, List<String> args) throws IOException, InterruptedException {
    Map<Path, String> before = seen();
    Process process = start(args);
    boolean changed = false;
    while (!changed && process.isAlive()) {
      changed = !seen().equals(before);
    }
    long until = System.nanoTime() + nanos;
    while (System.nanoTime() < until && process.isAlive()) {
      LockSupport.parkNanos(20_000);
    }
    return kill(process, changed);
  }

  private static When kill(Process process, boolean changed) throws InterruptedException {
    process.destroyForcibly();
    process.waitFor();
    // 128 and the number of SIGKILL, as a shell reports it (POSIX); else it ended by itself.
    if (process.exitValue() != 128 + 9) {
      return When.AFTER;
    }
    return changed ? When.DURING : When.BEFORE;
  }

  private Process start(List<String> args) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx256m"));
    command.add("-Djava.io.tmpdir=" + temporary);
    command.addAll(List.of("-classpath", System.getProperty("java.class.path")));
    command.addAll(List.of("traytally.cli.Main", "--as-of", "2026-05-01"));
    command.addAll(args);
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(temporary.resolveSibling("said.txt").toFile());
    builder.environment().put("TRAYTALLY_BOX", folder.resolve("tray.box").toString());
    builder.environment().put("XDG_STATE_HOME", temporary.resolveSibling("state").toString());
    builder.environment().put("XDG_CACHE_HOME", temporary.resolveSibling("cache").toString());
    return builder.start();
  }

  private String said() {
    try {
      return Files.readString(temporary.resolveSibling("said.txt"));
    } catch (IOException e) {
      return e.toString();
    }
  }

  /** Every file in the folder with its size and time of change. */
  private Map<Path, String> seen() throws IOException {
    Map<Path, String> seen = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        try {
          seen.put(file, Files.size(file) + " " + Files.getLastModifiedTime(file));
        } catch (java.nio.file.NoSuchFileException e) {
          seen.put(file, "gone meanwhile");
        }
      }
    }
    return seen;
  }
}

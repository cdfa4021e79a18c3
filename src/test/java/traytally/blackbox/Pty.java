package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The program in a process of its own at a real terminal, which util-linux's script(1) makes. */
final class Pty implements AutoCloseable {
  private static final Path SCRIPT = Path.of("/usr/bin/script");

  /** Long enough for a busy machine; nobody waits for it if all is well. */
  private static final int PATIENCE_SECONDS = 60;

  private final Process script;
  private final OutputStream keys;
  private final ByteArrayOutputStream shown = new ByteArrayOutputStream();
  private int seen;

  private Pty(Process script) {
    this.script = script;
    this.keys = script.getOutputStream();
    Thread reader = new Thread(this::read, "terminal");
    reader.setDaemon(true);
    reader.start();
  }

  /** Starts the program with the box {@code tray.box} in {@code folder}. */
  static Pty start(Path folder, String... args) throws IOException {
    assumeTrue(
        Files.isExecutable(SCRIPT) && isUtilLinux(), "no script(1) of util-linux: no terminal");
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-XX:TieredStopAtLevel=1");
    command.add("-cp");
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add("traytally.cli.Main");
    command.addAll(List.of(args));
    command.addAll(List.of("--as-of", "2026-05-01"));
    String line = String.join(" ", command.stream().map(word -> "'" + word + "'").toList());
    ProcessBuilder builder =
        new ProcessBuilder(SCRIPT.toString(), "-q", "-f", "-e", "-c", line, "/dev/null");
    builder.environment().put("TRAYTALLY_BOX", folder.resolve("tray.box").toString());
    builder.environment().put("XDG_STATE_HOME", folder.resolve("state").toString());
    builder.environment().put("XDG_CACHE_HOME", folder.resolve("cache").toString());
    builder.environment().put("TERM", "xterm");
    return new Pty(builder.redirectErrorStream(true).start());
  }

  private static boolean isUtilLinux() throws IOException {
    Process version =
        new ProcessBuilder(SCRIPT.toString(), "--version").redirectErrorStream(true).start();
    return new String(version.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
        .contains("util-linux");
  }

  private void read() {
    try (InputStream in = script.getInputStream()) {
      byte[] some = new byte[4096];
      for (int n = in.read(some); n >= 0; n = in.read(some)) {
        synchronized (shown) {
          shown.write(some, 0, n);
        }
      }
    } catch (IOException e) {
      // The terminal is gone; what it showed is known.
      return;
    }
  }

  String shown() {
    synchronized (shown) {
      return shown.toString(StandardCharsets.UTF_8);
    }
  }

  /** Waits until {@code text} is shown after what was waited for before. */
  Pty until(String text) throws InterruptedException {
    for (int i = 0; i < PATIENCE_SECONDS * 50; i++) {
      String all = shown();
      int at = all.indexOf(text, seen);
      if (at >= 0) {
        seen = at + text.length();
        return this;
      }
      Thread.sleep(20);
    }
    return fail("never shown: " + text + "\n" + shown());
  }

  Pty type(String text) throws IOException {
    keys.write(text.getBytes(StandardCharsets.UTF_8));
    keys.flush();
    return this;
  }

  /** Waits for the program's end; its exit code. */
  int end() throws InterruptedException {
    if (!script.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      return fail("it never ends\n" + shown());
    }
    return script.exitValue();
  }

  /** Takes the terminal away, as when its window is closed or its line goes dead. */
  void hangUp() throws InterruptedException {
    List<ProcessHandle> below = script.descendants().toList();
    script.destroyForcibly();
    for (ProcessHandle process : below) {
      for (int i = 0; i < PATIENCE_SECONDS * 50 && process.isAlive(); i++) {
        Thread.sleep(20);
      }
      if (process.isAlive()) {
        process.destroyForcibly();
        fail("the program outlives its terminal\n" + shown());
      }
    }
  }

  @Override
  public void close() {
    script.descendants().forEach(ProcessHandle::destroyForcibly);
    script.destroyForcibly();
  }
}

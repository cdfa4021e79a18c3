package traytally.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * What whole commands take on boxes of 10,000, 100,000 and a million movements, the first time and
 * again: CPU time and peak memory (proc(5), VmHWM), Java's heap being held to 512 MB. A command
 * that is not done within three minutes is stopped and shown as a dash.
 */
public final class LargeRatios {
  private static final List<String> COMMANDS =
      List.of(
          "",
          "box",
          "ledger",
          "ledger --format csv",
          "trips --format csv",
          "check",
          "trust",
          "restock");
  private static final long PATIENCE_SECONDS = 180;
  private static final long LOOK_EVERY_MS = 20;

  private LargeRatios() {}

  /**
   * Prints the table.
   *
   * @param args the jar; then the sizes in thousands of movements, if not all three
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    List<Integer> sizes =
        args.length > 1
            ? Arrays.stream(args).skip(1).map(Integer::valueOf).toList()
            : List.of(10, 100, 1000);
    try (ScratchFolder scratch = ScratchFolder.make()) {
      Path folder = scratch.path();
      System.out.println("movements  command              first time             again");
      for (int size : sizes) {
        Path box = folder.resolve("size-" + size + ".box");
        LocalDate today = LargeBox.write(box, size);
        for (String command : COMMANDS) {
          List<String> words = new ArrayList<>();
          words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
          words.addAll(List.of("-Xmx512m", "-jar", args[0], "--box", box.toString()));
          words.addAll(List.of("--as-of", today.toString()));
          if (!command.isEmpty()) {
            words.addAll(List.of(command.split(" ", -1)));
          }
          System.out.printf(
              Locale.ROOT,
              "%,9d  %-20s %s %s%n",
              size * 1000,
              command.isEmpty() ? "(glance)" : command,
              measured(words, folder),
              measured(words, folder));
        }
      }
    }
  }

  private static String measured(List<String> words, Path folder)
      throws IOException, InterruptedException {
    ProcessBuilder builder =
        new ProcessBuilder(words)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD);
    builder.environment().put("XDG_CACHE_HOME", folder.toString());
    builder.environment().put("XDG_STATE_HOME", folder.toString());
    Process process = builder.start();
    Path account = Path.of("/proc", Long.toString(process.pid()), "status");
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    long peakKb = 0;
    double cpuMs = 0;
    while (!process.waitFor(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
      peakKb = Math.max(peakKb, peakKb(account));
      cpuMs = process.info().totalCpuDuration().map(d -> (double) d.toMillis()).orElse(cpuMs);
      if (System.nanoTime() > end) {
        process.destroyForcibly().waitFor();
        return "-";
      }
    }
    return process.exitValue() == 0
        ? String.format(Locale.ROOT, "%8.1f s  %6d MB", cpuMs / 1000, peakKb / 1024)
        : "failed, exit " + process.exitValue();
  }

  /** 0 once the process is gone. */
  private static long peakKb(Path account) {
    try (Stream<String> lines = Files.lines(account)) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException | java.io.UncheckedIOException gone) {
      return 0;
    }
  }
}

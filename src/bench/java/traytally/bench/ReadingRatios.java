package traytally.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Holds a whole import, checked and stored, against what it costs merely to read the same list's
 * cells with the library: whole processes of 256 MB, turn and turn about, the cheapest of three.
 */
public final class ReadingRatios {
  private static final int TURNS = 3;
  private static final Pattern COST = Pattern.compile("cost cpu (\\d+) ms wall (\\d+) ms");

  private ReadingRatios() {}

  /** What one process cost, in milliseconds. */
  private record Cost(long cpu, long wall) {
    Cost least(Cost other) {
      return new Cost(Math.min(cpu, other.cpu), Math.min(wall, other.wall));
    }
  }

  /** Writes the lists to a folder of their own, measures, prints a table and cleans up. */
  public static void main(String[] args) throws Exception {
    try (ScratchFolder scratch = ScratchFolder.make()) {
      Path folder = scratch.path();
      Path workbook = folder.resolve("log.xlsx");
      Path text = folder.resolve("log.csv");
      LongLists.workbook(workbook, 100_000, 1);
      LongLists.text(text, 1_000_000, 8, 2);
      System.out.println("list                      reading CPU  import CPU  ratio   wall ratio");
      compare("100,000 x 12 .xlsx", workbook, folder.resolve("bench.box"));
      compare("1,000,000 x 8 .csv", text, folder.resolve("bench.box"));
    }
  }

  private static void compare(String what, Path list, Path box) throws Exception {
    Cost reading = new Cost(Long.MAX_VALUE, Long.MAX_VALUE);
    Cost importing = reading;
    for (int turn = 0; turn < TURNS; turn++) {
      reading = reading.least(run("traytally.bench.MereReading", list.toString()));
      Files.deleteIfExists(box);
      importing =
          importing.least(
              run("traytally.cli.Main", "--box", box.toString(), "import", list.toString()));
    }
    System.out.printf(
        Locale.ROOT,
        "%-24s %9d ms %8d ms %6.1f %12.1f%n",
        what,
        reading.cpu,
        importing.cpu,
        (double) importing.cpu / reading.cpu,
        (double) importing.wall / reading.wall);
  }

  private static Cost run(String... command) throws IOException, InterruptedException {
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.addAll(List.of("-Xmx256m", "-cp", System.getProperty("java.class.path")));
    words.add(OwnCost.class.getName());
    words.addAll(List.of(command));
    Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes());
    Matcher cost = COST.matcher(output);
    if (process.waitFor() != 0 || !cost.find()) {
      throw new IllegalStateException(String.join(" ", command) + " failed:\n" + output);
    }
    return new Cost(Long.parseLong(cost.group(1)), Long.parseLong(cost.group(2)));
  }
}

package traytally.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Holds the CPU time of whole commands, on a box with the demo's tray and trips, against that of an
 * empty Java program: all of them turn and turn about, the mean of ten turns. Reads Linux's account
 * of its children's time (proc(5), cutime and cstime, ticks of a hundredth of a second).
 */
public final class StartRatios {
  private static final int TURNS = 10;
  private static final int USER = 13; // cutime, counted from behind the name
  private static final int SYSTEM = 14;
  private static final double MS_A_TICK = 10;

  /** What a person asks; what has to be weighed for it is asked anew and again. */
  private static final List<String> WORDS = List.of("--version", "ledger", "box", "trust");

  private static final List<String> WEIGHED = List.of("box", "trust");

  /**
   * A command line and what it is called.
   *
   * @param anew whether what was worked out before is forgotten first
   */
  private record Asked(String name, List<String> command, boolean anew) {}

  private final Path folder;

  private StartRatios(Path folder) {
    this.folder = folder;
  }

  /** The jar, and the packaged program if it is built and installed. */
  public static void main(String[] args) throws IOException, InterruptedException {
    try (ScratchFolder scratch = ScratchFolder.make()) {
      String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
      StartRatios ratios = new StartRatios(scratch.path());
      List<String> jar = List.of(java, "-jar", args[0]);
      ratios.run(with(jar, "demo", ratios.folder.resolve("demo").toString()));
      List<Asked> all = new ArrayList<>();
      List<String> nothing =
          List.of(java, "-cp", System.getProperty("java.class.path"), Nothing.class.getName());
      all.add(new Asked("an empty program", nothing, false));
      ratios.ask("java -jar", jar, all);
      if (args.length > 1 && Files.exists(Path.of(args[1]))) {
        ratios.run(List.of(args[1], ratios.folder.resolve("installed").toString()));
        ratios.ask("packaged", List.of(ratios.installed()), all);
      }
      print(all, ratios.measured(all));
    }
  }

  private String installed() {
    return folder.resolve("installed/bin/traytally").toString();
  }

  private void ask(String name, List<String> program, List<Asked> all) {
    String box = folder.resolve("demo/demo.box").toString();
    for (String word : WORDS) {
      List<String> command = with(program, "--box", box, word, "--as-of", "2026-05-01");
      all.add(new Asked(name + ": " + word, command, false));
      if (WEIGHED.contains(word)) {
        all.add(new Asked(name + ": " + word + ", the box changed", command, true));
      }
    }
  }

  private static void print(List<Asked> all, double[] cost) {
    System.out.println("command                                     CPU     ratio");
    for (int i = 0; i < cost.length; i++) {
      System.out.printf(
          Locale.ROOT, "%-38s %6.0f ms %7.1f%n", all.get(i).name, cost[i], cost[i] / cost[0]);
    }
  }

  private double[] measured(List<Asked> all) throws IOException, InterruptedException {
    double[] cost = new double[all.size()];
    for (int turn = 0; turn < TURNS; turn++) {
      for (int i = 0; i < cost.length; i++) {
        run(all.get(i).command); // what is unpacked or worked out once
        if (all.get(i).anew) {
          forget();
        }
        double before = childrenMs();
        run(all.get(i).command);
        cost[i] += (childrenMs() - before) / TURNS;
      }
    }
    return cost;
  }

  private void forget() throws IOException {
    try (Stream<Path> answers = Files.list(folder.resolve("traytally/answers"))) {
      for (Path answer : answers.toList()) {
        Files.delete(answer);
      }
    }
  }

  private static double childrenMs() throws IOException {
    String stat = Files.readString(Path.of("/proc/self/stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return (Long.parseLong(fields[USER]) + Long.parseLong(fields[SYSTEM])) * MS_A_TICK;
  }

  private static List<String> with(List<String> program, String... words) {
    List<String> command = new ArrayList<>(program);
    command.addAll(List.of(words));
    return command;
  }

  private void run(List<String> command) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("XDG_CACHE_HOME", folder.toString());
    builder.environment().put("XDG_STATE_HOME", folder.toString());
    Process process = builder.start();
    byte[] said = process.getInputStream().readAllBytes();
    if (process.waitFor() != 0) {
      throw new IllegalStateException(command + " failed: " + new String(said));
    }
  }
}

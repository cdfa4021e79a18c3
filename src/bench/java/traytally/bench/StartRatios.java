package traytally.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

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

  private StartRatios() {}

  /** The jar, and the packaged program if it is built and installed. */
  public static void main(String[] args) throws IOException, InterruptedException {
    try (ScratchFolder scratch = ScratchFolder.make()) {
      Path folder = scratch.path();
      String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
      List<String> jar = List.of(java, "-jar", args[0]);
      run(with(jar, "demo", folder.resolve("demo").toString()));
      String box = folder.resolve("demo/demo.box").toString();
      List<List<String>> commands = new ArrayList<>();
      commands.add(
          List.of(java, "-cp", System.getProperty("java.class.path"), Nothing.class.getName()));
      List<List<String>> programs = new ArrayList<>(List.of(jar));
      if (args.length > 1 && Files.exists(Path.of(args[1]))) {
        run(List.of(args[1], folder.resolve("installed").toString()));
        programs.add(List.of(folder.resolve("installed/bin/traytally").toString()));
      }
      for (List<String> program : programs) {
        commands.add(with(program, "--version"));
        for (String command : List.of("ledger", "box", "trust")) {
          commands.add(with(program, "--box", box, command, "--as-of", "2026-05-01"));
        }
      }
      print(commands, measured(commands));
    }
  }

  private static void print(List<List<String>> commands, double[] cost) {
    System.out.println("command                               CPU     ratio");
    for (int i = 0; i < cost.length; i++) {
      List<String> words = commands.get(i);
      boolean jar = words.contains("-jar");
      String name =
          i == 0
              ? "an empty program"
              : (jar ? "java -jar: " : "packaged: ")
                  + words.stream()
                      .filter(List.of("ledger", "box", "trust", "--version")::contains)
                      .findFirst()
                      .orElseThrow();
      System.out.printf(Locale.ROOT, "%-32s %6.0f ms %7.1f%n", name, cost[i], cost[i] / cost[0]);
    }
  }

  private static double[] measured(List<List<String>> commands)
      throws IOException, InterruptedException {
    double[] cost = new double[commands.size()];
    for (int turn = 0; turn < TURNS; turn++) {
      for (int i = 0; i < cost.length; i++) {
        double before = childrenMs();
        run(commands.get(i));
        cost[i] += (childrenMs() - before) / TURNS;
      }
    }
    return cost;
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

  private static void run(List<String> command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    byte[] said = process.getInputStream().readAllBytes();
    if (process.waitFor() != 0) {
      throw new IllegalStateException(command + " failed: " + new String(said));
    }
  }
}

package traytally.blackbox;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import traytally.cli.Ran;

/** The main job in a process that {@link Watcher} watches; prints a line for each command. */
final class WatchedJob {
  private static final String[] MAIN_JOB = {
    "import demo-data/tray.xlsx demo-data/trips.xlsx demo-data/plan.xlsx demo-data/prices.xlsx"
        + " --count-date 2026-03-15",
    "trust",
    "lineup",
    "idle",
    "audit",
    "guide",
    "colours",
    "why kelp_green_curl",
    "check",
    "restock --out %list.pdf",
    "restock --out %list.html",
    "restock --out %list.xlsx",
    "restock --save %parcel.csv",
    "sheet report --out %report.xlsx",
    "sheet box --out %box.xlsx",
    "export %all.json",
    "export %all",
    "backup %copy.box",
    "undo",
    "restore %copy.box",
    "completion"
  };

  private WatchedJob() {}

  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    for (String words : MAIN_JOB) {
      String[] command = words.replace("%", folder + File.separator).split(" ", -1);
      for (int i = 0; i < command.length; i++) {
        command[i] = command[i].replace('_', ' ');
      }
      say(words, Ran.in(folder, command));
    }
    for (Path list : lists(folder)) {
      String box = folder.resolve(list.getFileName() + ".box").toString();
      Ran read = Ran.in(folder, "import", list.toString(), "--box", box);
      say(list.getFileName().toString(), read);
      System.out.println(Ran.in(folder, "box", "--format", "csv", "--box", box).out());
    }
  }

  private static List<Path> lists(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("hostile"))) {
      return files.sorted().toList();
    }
  }

  private static void say(String what, Ran ran) {
    System.out.println("ran " + ran.code() + " " + what + " " + ran.err().strip());
  }

  /** Does what the watcher must see. */
  static final class Planted {
    private Planted() {}

    public static void main(String[] args) throws IOException {
      switch (args[0]) {
        case "connect" ->
            SocketChannel.open(new InetSocketAddress(InetAddress.getLoopbackAddress(), 9)).close();
        case "resolve" -> InetAddress.getAllByName("nowhere.invalid");
        case "read" -> Files.readString(Path.of("bait.txt"));
        default -> new ProcessBuilder(args[0]).start();
      }
    }
  }
}

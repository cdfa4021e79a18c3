package traytally.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.render.Format;

/** {@code demo}: the main job on invented data, in a box of its own. */
@Command(
    name = "demo",
    description = "Runs the main job on an invented tray and log, in a scratch box.",
    footer = {"", "Example: traytally demo"})
final class DemoCommand implements Callable<Integer> {
  /** The demo's today: its story ends the weekend before. */
  static final String TODAY = "2026-05-01";

  /** The day the demo's tray was counted. */
  static final String COUNTED = "2026-03-15";

  private static final List<String> LISTS =
      List.of("tray.xlsx", "trips.xlsx", "plan.xlsx", "prices.xlsx");

  /** The forms in which the list is written beside being printed. */
  private static final List<Format> FORMS = List.of(Format.PDF, Format.HTML, Format.XLSX);

  @ParentCommand private Traytally root;

  @Parameters(
      arity = "0..1",
      paramLabel = "FOLDER",
      description = "Where the scratch box and the lists go (standard: traytally-demo).")
  private Path folder = Path.of("traytally-demo");

  @Override
  public Integer call() {
    Path box = folder.resolve("demo.box");
    List<String> load = new ArrayList<>(List.of("import"));
    copyLists().forEach(list -> load.add(list.toString()));
    load.addAll(List.of("--count-date", COUNTED, "--box", box.toString(), "--as-of", TODAY));
    Program program = new Program(root.desk());
    int loaded = new Program(root.desk().quiet()).run(load.toArray(String[]::new));
    if (loaded != Exit.OK) {
      return loaded;
    }
    String[] restock = {"restock", "--box", box.toString(), "--as-of", TODAY};
    int worst = program.run(restock);
    for (Format form : FORMS) {
      Path list = folder.resolve("shopping-list." + form.extension());
      String[] written = Arrays.copyOf(restock, restock.length + 2);
      written[restock.length] = "--out";
      written[restock.length + 1] = list.toString();
      worst = Math.max(worst, program.run(written));
    }
    root.desk().err().println("Go on: traytally trust --box " + box + " --as-of " + TODAY);
    return worst;
  }

  /** Lays the lists into the folder, over those of an earlier demo, and forgets its box. */
  private List<Path> copyLists() {
    List<Path> lists = new ArrayList<>();
    try {
      Files.createDirectories(folder);
      Files.deleteIfExists(folder.resolve("demo.box"));
      for (String list : LISTS) {
        try (InputStream stream = DemoCommand.class.getResourceAsStream("/demo-data/" + list)) {
          if (stream == null) {
            throw new IllegalStateException("not packed: demo-data/" + list);
          }
          Path file = folder.resolve(list);
          Files.copy(stream, file, StandardCopyOption.REPLACE_EXISTING);
          lists.add(file);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return lists;
  }
}

package traytally.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.export.Export;
import traytally.store.Box;

/** {@code export}: everything in the box as text that any program reads. */
@Command(
    name = "export",
    description = {
      "Writes everything in the box as text: a folder of CSV, or one file that ends in .json.",
      "traytally import reads either back into a new box, equal to this one. The layout is in"
          + " docs/formats.md."
    },
    footer = {
      "",
      "Example: traytally export tray-2026",
      "Example: traytally export tray.json && traytally import tray.json --box second.box"
    })
final class ExportCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Parameters(
      paramLabel = "FOLDER|FILE.json",
      description = "What to write; it must not be there yet.")
  private Path target = Path.of("");

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      if (isTaken()) {
        throw new Refusal(
            Exit.CANNOT_CREATE, target + " is there already. Name a new folder or file.");
      }
      Export.write(box, target);
    } catch (IOException e) {
      throw new Refusal(
          Exit.CANNOT_CREATE,
          "cannot write " + target + ". May you write there, is the disk full?",
          e);
    }
    root.desk().out().println("Written: " + target);
    return Exit.OK;
  }

  private boolean isTaken() throws IOException {
    if (Files.isDirectory(target) && !Export.isJson(target)) {
      try (Stream<Path> files = Files.list(target)) {
        return files.findAny().isPresent();
      }
    }
    return Files.exists(target);
  }
}

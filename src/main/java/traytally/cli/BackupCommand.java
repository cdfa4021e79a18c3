package traytally.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.store.Box;

/** {@code backup}: a safe copy of the box. */
@Command(
    name = "backup",
    description = "Makes a copy of the box that is checked before it counts as one.",
    footer = {
      "",
      "Example: traytally backup                    (dated, in a folder beside the box)",
      "Example: traytally backup /media/stick/tray.box"
    })
final class BackupCommand implements Callable<Integer> {
  /** As many as are kept from before imports. */
  static final int KEPT = 20;

  private static final int MOST = 1000;

  @ParentCommand private Traytally root;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "The copy's name, or a folder for a dated one.")
  private Optional<Path> file = Optional.empty();

  @Option(
      names = "--keep",
      paramLabel = "N",
      description = "Dated copies to keep in the folder; the oldest go (standard: 20).")
  private Optional<Integer> keep = Optional.empty();

  @Override
  public Integer call() {
    if (keep.filter(n -> n < 1 || n > MOST).isPresent()) {
      throw new Refusal(Exit.USAGE, "--keep wants how many copies, 1 to " + MOST + ".");
    }
    Path target = file.orElseGet(() -> folder(root.boxFile()));
    boolean dated = file.isEmpty() || Files.isDirectory(target);
    if (!dated && keep.isPresent()) {
      throw new Refusal(Exit.USAGE, "--keep goes with dated copies: name a folder, or nothing.");
    }
    try (Box box = root.openBox()) {
      Path made = dated ? box.backup(target, keep.orElse(KEPT)) : box.backup(target);
      root.desk().out().println("Copied and checked: " + made);
    }
    return Exit.OK;
  }

  /** Where dated copies of a box lie if no other place is named. */
  static Path folder(Path box) {
    return box.resolveSibling(box.getFileName() + ".backups");
  }
}

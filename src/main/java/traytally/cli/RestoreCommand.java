package traytally.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.store.Box;
import traytally.store.Replacement;

/** {@code restore}: puts a copy in the place of the box. */
@Command(
    name = "restore",
    description = "Puts a copy back in the place of the box, which is itself copied first.",
    footer = {"", "Example: traytally restore /media/stick/tray.box"})
final class RestoreCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Parameters(paramLabel = "FILE", description = "The copy, as backup made it.")
  private Path copy = Path.of("");

  @Override
  public Integer call() {
    if (!Files.isRegularFile(copy)) {
      throw new Refusal(Exit.NO_INPUT, "there is no file " + copy + ".");
    }
    Path target = root.boxFile();
    Optional<Path> before = Optional.empty();
    if (Files.exists(target)) {
      if (copy.toAbsolutePath().normalize().equals(target.toAbsolutePath().normalize())) {
        throw new Refusal(Exit.USAGE, copy + " is the box itself. Name a copy of it.");
      }
      try (Box box = root.openBox()) {
        before = Optional.of(box.backup(BackupCommand.folder(target), BackupCommand.KEPT));
      }
    }
    Replacement.restore(copy, target, root.desk().clock());
    root.desk().out().println("Put back and checked: " + copy + " is now the box " + target + ".");
    before.ifPresent(
        file ->
            root.desk()
                .out()
                .println("The box as it was: " + file + "; traytally restore brings it back."));
    return Exit.OK;
  }
}

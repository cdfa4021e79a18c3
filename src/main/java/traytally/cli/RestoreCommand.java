package traytally.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.store.Box;
import traytally.store.BoxException;
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
    Clock clock = root.desk().clock();
    root.readySqlite();
    if (!Files.exists(target)) {
      Replacement.restore(copy, target, clock);
      say("");
    } else if (copy.toAbsolutePath().normalize().equals(target.toAbsolutePath().normalize())) {
      throw new Refusal(Exit.USAGE, copy + " is the box itself. Name a copy of it.");
    } else {
      Optional<Box> present = present();
      if (present.isPresent()) {
        try (Box box = present.get()) {
          Path before = box.restore(copy, BackupCommand.folder(target), BackupCommand.KEPT);
          say("The box as it was: " + before + "; traytally restore brings it back.");
        }
      } else {
        Path aside = Replacement.restoreAside(copy, target, clock);
        say("What was there cannot be used; it lies in " + aside + " now.");
      }
    }
    return Exit.OK;
  }

  /** The present box, unless it is one that cannot be opened or read. */
  private Optional<Box> present() {
    try {
      Box box = root.openBox();
      if (box.check().isEmpty()) {
        return Optional.of(box);
      }
      box.close();
      return Optional.empty();
    } catch (BoxException e) {
      return switch (e.kind()) {
        case NOT_A_BOX, TOO_NEW, IO -> Optional.empty();
        case BUSY, CANNOT_CREATE -> throw e;
      };
    }
  }

  private void say(String before) {
    root.desk()
        .out()
        .println("Put back and checked: " + copy + " is now the box " + root.boxFile() + ".");
    if (!before.isEmpty()) {
      root.desk().out().println(before);
    }
  }
}

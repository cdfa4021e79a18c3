package traytally.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import traytally.export.Export;
import traytally.ledger.Book;
import traytally.report.Words;
import traytally.store.Box;
import traytally.store.Replacement;

/** {@code import} of what {@code export} wrote: it becomes the box, if there is none yet. */
final class ReadBack {
  private final Traytally root;
  private final Path path;
  private final Export export;

  private ReadBack(Traytally root, Path path, Export export) {
    this.root = root;
    this.path = path;
    this.export = export;
  }

  /** The export among {@code files}, if one is; it must then be the only one. */
  static Optional<ReadBack> of(Traytally root, List<Path> files) {
    for (Path file : files) {
      try {
        Optional<Export> export = Export.at(file);
        if (export.isPresent()) {
          if (files.size() > 1) {
            throw new Refusal(Exit.USAGE, file + " is an export of a whole box: import it alone.");
          }
          return Optional.of(new ReadBack(root, file, export.get()));
        }
      } catch (IOException e) {
        throw unreadable(e);
      }
    }
    return Optional.empty();
  }

  int run(boolean dryRun) {
    Path box = root.boxFile();
    if (Files.exists(box) && !isEmpty()) {
      throw new Refusal(
          Exit.DATA,
          "an export becomes a box of its own, and "
              + box
              + " holds something. Name a new one: traytally import "
              + path
              + " --box new.box");
    }
    try {
      int version = export.version();
      if (dryRun) {
        root.desk().out().println(path + " is an export of a whole box. Nothing was recorded.");
        return Exit.OK;
      }
      root.readySqlite();
      Replacement.rebuild(export, version, path.toString(), box, root.desk().clock());
    } catch (IOException e) {
      throw unreadable(e);
    }
    try (Box made = root.openBox()) {
      Book book = made.book();
      root.desk()
          .out()
          .println(
              "Read back and checked: "
                  + path
                  + " is now the box "
                  + box
                  + ", "
                  + Words.count(book.plastics().size(), "plastic")
                  + ", "
                  + Words.count(book.ledger().movements().size(), "movement")
                  + ".");
    }
    return Exit.OK;
  }

  private boolean isEmpty() {
    try (Box box = root.openBox()) {
      return box.batches().isEmpty();
    }
  }

  private static Refusal unreadable(IOException e) {
    return new Refusal(Exit.DATA, e.getMessage() + ". Export the box again.", e);
  }
}

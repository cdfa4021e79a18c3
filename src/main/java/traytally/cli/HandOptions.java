package traytally.cli;

import java.nio.file.Files;
import java.time.LocalDate;
import java.util.function.Function;
import java.util.function.Predicate;
import picocli.CommandLine.Option;
import traytally.ledger.Book;
import traytally.ledger.Movement;
import traytally.plastic.Plastic;
import traytally.render.Sentence;
import traytally.store.Box;

/** What the commands that record something by hand share: their options, and how they end. */
final class HandOptions {
  @Option(names = "--dry-run", description = "Say what would be recorded, record nothing.")
  private boolean dryRun;

  @Option(names = "--yes", description = "Record it even if it looks odd; for scripts.")
  private boolean yes;

  /**
   * Works a change out from the book, says it, and records it as one batch unless it is only tried.
   *
   * @param mayMake whether a box that is not there yet may be made
   */
  int record(Traytally root, boolean mayMake, Function<Book, HandChange> told) {
    if (mayMake && dryRun && !Files.exists(root.boxFile())) {
      say(root, Book.EMPTY, told.apply(Book.EMPTY));
      root.desk().out().println("Tried only: nothing was recorded.");
      return Exit.OK;
    }
    try (Box box = mayMake && !dryRun ? root.openOrMakeBox() : root.openBox()) {
      Book book = box.book();
      HandChange change = told.apply(book);
      if (!yes) {
        change.refuseIfOdd();
      }
      say(root, book, change);
      finish(root, box, change);
    }
    return Exit.OK;
  }

  /**
   * Works a change out from the book and says it, and records it as one batch if the person agrees.
   *
   * @return whether the person agreed
   */
  boolean recordIfAgreed(
      Traytally root, Function<Book, HandChange> told, Predicate<HandChange> agreed) {
    try (Box box = root.openBox()) {
      Book book = box.book();
      HandChange change = told.apply(book);
      say(root, book, change);
      if (!yes && !dryRun && !agreed.test(change)) {
        return false;
      }
      finish(root, box, change);
      return true;
    }
  }

  boolean isDryRun() {
    return dryRun;
  }

  private void finish(Traytally root, Box box, HandChange change) {
    if (change.entry().isEmpty()) {
      root.desk().out().println("Nothing changed.");
    } else if (dryRun) {
      root.desk().out().println("Tried only: nothing was recorded.");
    } else {
      root.desk().out().println(recorded(box.record(change.entry())));
    }
  }

  static String recorded(long batch) {
    return "Recorded as batch " + batch + "; traytally undo takes it back.";
  }

  private static void say(Traytally root, Book book, HandChange change) {
    root.desk().out().println(Sentence.of(change.said(), Looks.locale()));
    for (Plastic plastic : change.plastics()) {
      int before = book.ledger().stock(plastic, root.today()).count();
      int after = before + moved(change, plastic, root.today());
      String name = change.plastics().size() > 1 ? plastic + ": " : "In the tray: ";
      root.desk().out().println(name + before + " before, " + after + " now.");
    }
    change.notes().forEach(root.desk().out()::println);
  }

  private static int moved(HandChange change, Plastic plastic, LocalDate today) {
    return change.entry().movements().stream()
        .filter(m -> m.plastic().equals(plastic) && !m.date().isAfter(today))
        .mapToInt(Movement::pieces)
        .sum();
  }
}

package traytally.cli;

import java.util.Comparator;
import java.util.Optional;
import java.util.SortedSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Undo;
import traytally.store.Box;

/** {@code undo}: reverses a batch. */
@Command(
    name = "undo",
    description = "Takes back the last batch, or the one named.",
    footer = {"", "Example: traytally undo 12"})
final class UndoCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Parameters(
      arity = "0..1",
      paramLabel = "BATCH",
      description = "The batch's number, as the ledger shows it; else the last one.")
  private Optional<Long> number = Optional.empty();

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      Book book = box.book();
      Batch batch = number.map(id -> named(book, id)).orElseGet(() -> last(book));
      Undo undo = box.undo(batch.id());
      SortedSet<Long> blockers = undo.blockers(book);
      if (!blockers.isEmpty()) {
        String first = blockers.stream().map(String::valueOf).collect(Collectors.joining(", "));
        throw new Refusal(
            Exit.DATA,
            "batch "
                + batch.id()
                + " cannot be undone yet: batch "
                + first
                + " built on it. Undo that first.");
      }
      long recorded = box.record(undo.entry(book));
      root.desk()
          .out()
          .println(
              "Undone: batch "
                  + batch.id()
                  + ", "
                  + batch.summary()
                  + ". Recorded as batch "
                  + recorded
                  + "; traytally undo "
                  + recorded
                  + " brings it back.");
    }
    return Exit.OK;
  }

  private static Batch named(Book book, long id) {
    Batch batch =
        book.batches().stream()
            .filter(b -> b.id() == id)
            .findFirst()
            .orElseThrow(() -> new Refusal(Exit.DATA, "there is no batch " + id + "."));
    if (!batch.stands()) {
      throw new Refusal(
          Exit.DATA,
          "batch " + id + " is undone already, by batch " + batch.undoneBy().orElseThrow() + ".");
    }
    return batch;
  }

  /** The last batch that stands and is no undo itself: a second undo goes one further back. */
  private static Batch last(Book book) {
    return book.batches().stream()
        .filter(batch -> batch.stands() && batch.undoes().isEmpty())
        .max(Comparator.comparingLong(Batch::id))
        .orElseThrow(() -> new Refusal(Exit.DATA, "there is nothing to undo."));
  }
}

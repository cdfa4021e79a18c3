package traytally.cli;

import java.io.PrintStream;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Recorded;
import traytally.ledger.Undo;
import traytally.plastic.Plastic;
import traytally.report.Words;
import traytally.store.Box;

/** {@code undo}: reverses a batch. */
@Command(
    name = "undo",
    description = "Takes back the last batch, or the one named.",
    footer = {
      "",
      "Example: traytally undo 12 --dry-run",
      "traytally ledger --batches lists them. An undo is a batch too: undo it to bring back what"
          + " it took."
    })
final class UndoCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Parameters(
      arity = "0..1",
      paramLabel = "BATCH",
      description = "The batch's number, as the ledger shows it; else the last one.")
  private Optional<Long> number = Optional.empty();

  @Option(names = "--dry-run", description = "Show what would change, record nothing.")
  private boolean dryRun;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      Book book = box.book();
      Batch batch = number.map(id -> named(book, id)).orElseGet(() -> last(book));
      Undo undo = box.undo(batch.id());
      SortedSet<Long> blockers = undo.blockers(book);
      if (!blockers.isEmpty()) {
        throw blocked(batch, blockers, book);
      }
      Entry entry = undo.entry(book);
      if (dryRun) {
        preview(book, batch, entry);
        return Exit.OK;
      }
      long recorded = box.record(entry);
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

  private static Refusal blocked(Batch batch, SortedSet<Long> blockers, Book book) {
    StringBuilder text = new StringBuilder();
    text.append("batch ").append(batch.id()).append(", ").append(batch.summary());
    text.append(", cannot be undone yet: what came later changed it or counts on it.");
    text.append(" Undo first, the last one first:");
    book.batches().stream()
        .filter(other -> blockers.contains(other.id()))
        .sorted(Comparator.comparingLong(Batch::id).reversed())
        .forEach(
            other ->
                text.append(
                    String.format(
                        Locale.ROOT, "%n  traytally undo %d  (%s)", other.id(), other.summary())));
    return new Refusal(Exit.DATA, text.toString());
  }

  /** What each tray would hold, and how many things told would be withdrawn or hold again. */
  private void preview(Book book, Batch batch, Entry entry) {
    PrintStream out = root.desk().out();
    out.println("Would undo batch " + batch.id() + ", " + batch.summary() + ":");
    SortedMap<Plastic, Integer> moved = new TreeMap<>();
    entry.movements().stream()
        .filter(movement -> !movement.date().isAfter(root.today()))
        .forEach(m -> moved.merge(m.plastic(), m.pieces(), Integer::sum));
    moved.forEach(
        (plastic, pieces) -> {
          int now = book.ledger().stock(plastic, root.today()).count();
          out.println("  " + plastic + ": " + now + " now, " + (now + pieces) + " after");
        });
    told(out, entry.withdrawn().stream().map(Recorded::what), "told then, would hold no more");
    told(out, entry.added().stream(), "changed then, would hold again as before");
    out.println("Tried only: nothing was recorded.");
  }

  private static void told(PrintStream out, Stream<? extends Fact> facts, String what) {
    long stints = 0;
    long others = 0;
    for (Fact fact : facts.toList()) {
      if (fact instanceof Fact.Fished) {
        stints++;
      } else {
        others++;
      }
    }
    if (stints > 0) {
      out.println("  " + Words.count(stints, "stint") + ", " + what);
    }
    if (others > 0) {
      out.println("  " + Words.count(others, "other thing") + ", " + what);
    }
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

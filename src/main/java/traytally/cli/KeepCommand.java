package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Kept;
import traytally.ledger.Recorded;
import traytally.plastic.Plastic;
import traytally.store.Box;

/** {@code keep}: the angler vouches for a plastic by hand. */
@Command(
    name = "keep",
    description = "Vouches for a plastic by hand: it is kept in stock as a trusted one is.",
    footer = {"", "Example: traytally keep paddle motor oil 75", "Example: traytally keep 7 --off"})
final class KeepCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Parameters(
      arity = "1..*",
      paramLabel = "PLASTIC",
      description = "Which, by its row in the last listing or by words.")
  private List<String> words = List.of();

  @Option(names = "--off", description = "No longer.")
  private boolean off;

  @Option(names = "--dry-run", description = "Say what would be recorded, record nothing.")
  private boolean dryRun;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      Book book = box.book();
      Plastic plastic = PlasticNames.one(root, book, String.join(" ", words));
      String said = (off ? "no longer kept: " : "kept: ") + plastic;
      Optional<Entry> entry = entry(book, plastic, said);
      root.desk().out().println("Understood: " + said + ".");
      root.desk()
          .out()
          .println(
              entry.isEmpty()
                  ? "It was so already: nothing changed."
                  : dryRun
                      ? "Tried only: nothing was recorded."
                      : HandOptions.recorded(box.record(entry.get())));
    }
    return Exit.OK;
  }

  private Optional<Entry> entry(Book book, Plastic plastic, String said) {
    List<Recorded<? extends Fact>> kept = new ArrayList<>();
    book.recorded(Kept.class).stream()
        .filter(fact -> fact.what().plastic().equals(plastic))
        .forEach(kept::add);
    if (kept.isEmpty() != off) {
      List<Fact> added = off ? List.of() : List.of(new Kept(plastic));
      return Optional.of(
          new Entry("keep", said, OptionalLong.empty(), List.of(), added, off ? kept : List.of()));
    }
    return Optional.empty();
  }
}

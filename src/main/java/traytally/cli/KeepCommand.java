package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Kept;
import traytally.ledger.Recorded;
import traytally.plastic.Plastic;

/** {@code keep}: the angler vouches for a plastic by hand. */
@Command(
    name = "keep",
    description = "Vouches for a plastic by hand: it is kept in stock as a trusted one is.",
    footer = {"", "Example: traytally keep paddle motor oil 75", "Example: traytally keep 7 --off"})
final class KeepCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private HandOptions hand;

  @Parameters(
      arity = "1..*",
      paramLabel = "PLASTIC",
      description = "Which, by its row in the last listing or by words.")
  private List<String> words = List.of();

  @Option(names = "--off", description = "No longer.")
  private boolean off;

  @Override
  public Integer call() {
    return hand.record(root, false, this::change);
  }

  private HandChange change(Book book) {
    Plastic plastic = PlasticNames.one(root, book, String.join(" ", words));
    String said = (off ? "no longer kept: " : "kept: ") + plastic;
    List<Recorded<? extends Fact>> kept = new ArrayList<>();
    book.recorded(Kept.class).stream()
        .filter(fact -> fact.what().plastic().equals(plastic))
        .forEach(kept::add);
    boolean so = kept.isEmpty() == off;
    return new HandChange(
        "Understood: " + said + ".",
        List.of(),
        so ? List.of("It was so already.") : List.of(),
        Optional.empty(),
        Entry.ofFacts(
            "keep",
            said,
            so || off ? List.of() : List.of(new Kept(plastic)),
            so ? List.of() : kept));
  }
}

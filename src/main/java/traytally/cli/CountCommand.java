package traytally.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Described;
import traytally.ledger.Posting;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** {@code count}: what the eye sees of one plastic. */
@Command(
    name = "count",
    description = {
      "Records how many of one plastic are in the tray: what you see stands.",
      "With --tray alone it goes through that tray, plastic after plastic: Enter takes what the"
          + " book says, a number what you see; back, skip and stop. It takes such answers from a"
          + " pipe too, one a line."
    },
    footer = {
      "",
      "Example: traytally count paddle motor oil 75 6",
      "Example: traytally count --tray B",
      "Example: traytally count --new 'curl tail, chalk, 90' 4 --tray B"
    })
final class CountCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private HandOptions hand;
  @Mixin private HandDate day;
  @Mixin private NewPlastic which;

  @Parameters(
      arity = "0..*",
      paramLabel = "PLASTIC N",
      description = "Which, by row or words, and how many pieces you see.")
  private List<String> words = List.of();

  @Option(
      names = "--tray",
      paramLabel = "NAME",
      description = "The tray to count through; with --new: where it lies.")
  private Optional<String> tray = Optional.empty();

  @Override
  public Integer call() {
    if (words.isEmpty() && tray.isPresent() && !which.isNew()) {
      return new TrayCount(root, hand, Name.of(tray.get()), day.date(root)).run();
    }
    HandWords told = HandWords.parse(words, "Example: traytally count paddle motor oil 75 6");
    if (told.unit().filter(HandWords.Unit.PACKS::equals).isPresent()) {
      throw new Refusal(Exit.USAGE, "count takes pieces, not packs. Write the pieces.");
    }
    if (tray.isPresent() && !which.isNew()) {
      throw new Refusal(Exit.USAGE, "--tray goes with --new, or alone: count --tray B");
    }
    return hand.record(root, which.isNew(), book -> change(book, told));
  }

  private HandChange change(Book book, HandWords told) {
    Plastic plastic = which.plastic(root, book, told);
    told.requireCountOf(plastic);
    LocalDate date = day.date(root);
    Counted count = new Counted(plastic, date, told.number(), false);
    Posting posting = new Posting(book.ledger(), book.recorded(Counted.class));
    int held = posting.balance(plastic, date);
    List<String> notes = LeftCommand.history(posting, plastic, date);
    posting.count(count);
    String said = "counted " + HandWords.pieces(told.number()) + ": " + plastic;
    return new HandChange(
        "Understood: " + said + " on " + date + "; the book said " + held + ".",
        List.of(plastic),
        notes,
        Optional.empty(),
        new Entry(
            "count",
            said,
            OptionalLong.empty(),
            posting.movements(),
            tray.isEmpty() ? List.of(count) : List.of(count, lies(plastic, tray.get())),
            List.of()));
  }

  private static Described lies(Plastic plastic, String tray) {
    return new Described(plastic, tray.strip(), OptionalInt.empty(), Optional.empty(), "");
  }
}

package traytally.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Posting;
import traytally.plastic.Plastic;

/** What {@code lost}, {@code given} and {@code found} share: pieces of one plastic come or go. */
abstract class LeftCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private HandOptions hand;
  @Mixin private HandDate day;

  @Parameters(
      arity = "1..*",
      paramLabel = "PLASTIC N",
      description = "Which, by row or words, and how many pieces.")
  private List<String> words = List.of();

  /** {@code lost}: pieces lost or worn out, away from a logged trip. */
  @Command(
      name = "lost",
      description = {
        "Records pieces of one plastic that are lost or worn out.",
        "What a trip lost belongs into its log (traytally trips log): it teaches use."
      },
      footer = {
        "",
        "Example: traytally lost paddle motor oil 75 1 --how snagged",
        "Example: traytally lost 7 2 --how worn"
      })
  static final class Lost extends LeftCommand {
    @Option(
        names = "--how",
        paramLabel = "WORD",
        description = "snagged, bitten off, torn, cast off, or worn.")
    private Optional<String> how = Optional.empty();

    @Override
    Gone gone() {
      return how.map(LossWords::required).orElse(LossWords.UNKNOWN);
    }

    @Override
    String verb() {
      return "lost";
    }
  }

  /** {@code given}: pieces given away. */
  @Command(
      name = "given",
      description = "Records pieces of one plastic that you gave away.",
      footer = {"", "Example: traytally given curl tail chalk 90 3"})
  static final class Given extends LeftCommand {
    @Override
    Gone gone() {
      return new Gone(MovementKind.GIVEN, Optional.empty());
    }

    @Override
    String verb() {
      return "given";
    }
  }

  /** {@code found}: pieces that turned up. */
  @Command(
      name = "found",
      description = "Records pieces of one plastic that turned up.",
      footer = {"", "Example: traytally found 7 2"})
  static final class Found extends LeftCommand {
    @Override
    Gone gone() {
      return new Gone(MovementKind.FOUND, Optional.empty());
    }

    @Override
    String verb() {
      return "found";
    }
  }

  abstract Gone gone();

  abstract String verb();

  @Override
  public Integer call() {
    HandWords told =
        HandWords.parse(words, "Example: traytally " + verb() + " paddle motor oil 75 1");
    if (told.unit().filter(HandWords.Unit.PACKS::equals).isPresent()) {
      throw new Refusal(Exit.USAGE, verb() + " takes pieces, not packs. Write the pieces.");
    }
    return hand.record(root, false, book -> change(book, told));
  }

  private HandChange change(Book book, HandWords told) {
    Plastic plastic = new NewPlastic().plastic(root, book, told);
    told.requireCountOf(plastic);
    if (told.number() == 0) {
      throw new Refusal(Exit.DATA, verb() + " 0 changes nothing. Write how many.");
    }
    Gone gone = gone();
    LocalDate date = day.date(root);
    int signed = gone.kind() == MovementKind.FOUND ? told.number() : -told.number();
    Movement movement =
        new Movement(
            date, gone.kind(), gone.how(), plastic, signed, OptionalLong.empty(), false, "");
    Posting posting = new Posting(book.ledger(), book.recorded(Counted.class));
    int held = posting.balance(plastic, date);
    posting.post(movement);
    String said =
        (gone.kind() == MovementKind.WORN ? "worn out" : verb())
            + gone.how().map(how -> " (" + how.word() + ")").orElse("")
            + " "
            + HandWords.pieces(told.number())
            + ": "
            + plastic;
    return new HandChange(
        "Understood: " + said + ".",
        List.of(plastic),
        history(posting, plastic, date),
        -signed > held
            ? Optional.of("the book holds only " + HandWords.pieces(held) + " of " + plastic + ".")
            : Optional.empty(),
        new Entry(verb(), said, OptionalLong.empty(), posting.movements(), List.of(), List.of()));
  }

  /** A word on a count that stands in the way of a movement dated before it. */
  static List<String> history(Posting posting, Plastic plastic, LocalDate date) {
    List<String> notes = new ArrayList<>();
    if (posting.isHistory(plastic, date)) {
      notes.add(
          "It was counted on "
              + posting.counted(plastic).orElseThrow()
              + ", after "
              + date
              + ": that count stands, so the tray stays as it is.");
    }
    return notes;
  }
}

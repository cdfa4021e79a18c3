package traytally.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Described;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Posting;
import traytally.ledger.Recorded;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Packs;
import traytally.plastic.Plastic;

/** {@code bought}: pieces or packs of one plastic that came into the tray. */
@Command(
    name = "bought",
    description = "Records what you bought of one plastic.",
    footer = {
      "",
      "Example: traytally bought paddle motor oil 75 2 packs --price 5.20",
      "Example: traytally bought --list list.csv --except 'curl tail kelp green'",
      "Example: traytally bought 7 8        (8 pieces of row 7 of the last listing)",
      "Example: traytally bought --new 'paddle tail, ink blue, 75' 1 pack --pack-size 8"
    })
final class BoughtCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private HandOptions hand;
  @Mixin private HandDate day;
  @Mixin private NewPlastic which;

  @Parameters(
      arity = "0..*",
      paramLabel = "PLASTIC N [packs|pieces]",
      description = "Which, by row or words, and how many; pieces if not said.")
  private List<String> words = List.of();

  @Option(names = "--price", paramLabel = "AMOUNT", description = "What one pack cost.")
  private Optional<BigDecimal> price = Optional.empty();

  @Option(names = "--pack-size", paramLabel = "PIECES", description = "Pieces in one pack.")
  private Optional<Integer> packSize = Optional.empty();

  @Option(
      names = "--list",
      paramLabel = "FILE",
      description =
          "Book what restock --save kept. In the file, change Packs where fewer came; 0 for none.")
  private Optional<Path> list = Optional.empty();

  @Option(
      names = "--shop",
      paramLabel = "NAME",
      description = "Of the list, book this shop's parcel only; repeatable.")
  private List<Name> shops = List.of();

  @Option(
      names = "--except",
      paramLabel = "WORDS",
      description = "Of the list, leave out the plastics with these words; repeatable.")
  private List<String> except = List.of();

  @Override
  public Integer call() {
    if (list.isPresent()) {
      return byList(list.get());
    }
    if (!shops.isEmpty() || !except.isEmpty()) {
      throw new Refusal(Exit.USAGE, "--shop and --except choose from a list: add --list FILE.");
    }
    HandWords told = HandWords.parse(words, "Example: traytally bought paddle motor oil 75 8");
    if (packSize.filter(size -> size < 1 || size > 1000).isPresent()) {
      throw new Refusal(Exit.USAGE, "--pack-size wants 1 to 1000 pieces.");
    }
    if (price
        .filter(p -> p.signum() < 0 || p.compareTo(BigDecimal.valueOf(10_000)) > 0)
        .isPresent()) {
      throw new Refusal(Exit.USAGE, "--price wants what one pack cost, such as 5.20.");
    }
    return hand.record(root, which.isNew(), book -> change(book, told));
  }

  private int byList(Path file) {
    if (!words.isEmpty() || which.isNew() || price.isPresent() || packSize.isPresent()) {
      throw new Refusal(
          Exit.USAGE, "--list says which, how many and at what price. Give the list alone.");
    }
    Parcel parcel = new Parcel(BoughtList.read(file), day.date(root), Set.copyOf(shops), except);
    return hand.record(root, false, parcel::change);
  }

  private HandChange change(Book book, HandWords told) {
    Plastic plastic = which.plastic(root, book, told);
    told.requireCountOf(plastic);
    if (told.number() == 0) {
      throw new Refusal(Exit.DATA, "buying none changes nothing. Write how many.");
    }
    Described was =
        Optional.ofNullable(book.described().get(plastic))
            .orElseGet(() -> new Described(plastic, "", OptionalInt.empty(), Optional.empty(), ""));
    OptionalInt size = packSize.map(OptionalInt::of).orElse(was.packSize());
    int pieces = pieces(plastic, told, size);
    Movement bought = Movement.of(day.date(root), MovementKind.BOUGHT, plastic, pieces);
    Posting posting = new Posting(book.ledger(), book.recorded(Counted.class));
    posting.post(bought);
    Described now = described(was, size, book);
    List<Recorded<? extends Fact>> withdrawn = new ArrayList<>();
    if (!now.equals(was)) {
      book.recorded(Described.class).stream()
          .filter(described -> described.what().plastic().equals(plastic))
          .forEach(withdrawn::add);
    }
    String said = "bought " + HandWords.pieces(pieces) + ": " + plastic;
    return new HandChange(
        "Understood: " + said + paid(now) + ".",
        List.of(plastic),
        notes(posting, plastic, told, size),
        Optional.empty(),
        new Entry(
            "bought",
            said,
            OptionalLong.empty(),
            posting.movements(),
            now.equals(was) ? List.of() : List.of(now),
            withdrawn));
  }

  private Described described(Described was, OptionalInt size, Book book) {
    return new Described(
        was.plastic(),
        was.tray(),
        size,
        price.map(p -> Money.of(p, book.settings().currency())).or(was::packPrice),
        was.note());
  }

  private String paid(Described now) {
    return price.isPresent() ? now.packPrice().map(p -> ", a pack at " + p).orElse("") : "";
  }

  private List<String> notes(Posting posting, Plastic plastic, HandWords told, OptionalInt size) {
    List<String> notes = new ArrayList<>(LeftCommand.history(posting, plastic, day.date(root)));
    if (told.unit().isEmpty() && size.isPresent() && told.number() < size.getAsInt()) {
      notes.add(
          "Taken as pieces. A pack holds "
              + size.getAsInt()
              + ": if you meant packs, undo it and write \""
              + told.number()
              + (told.number() == 1 ? " pack\"." : " packs\"."));
    }
    return notes;
  }

  private static int pieces(Plastic plastic, HandWords told, OptionalInt size) {
    if (told.unit().filter(HandWords.Unit.PACKS::equals).isEmpty()) {
      return told.number();
    }
    if (size.isEmpty()) {
      throw new Refusal(
          Exit.DATA,
          "how many are in a pack of " + plastic + "? Add --pack-size 8, or write the pieces.");
    }
    return new Packs(told.number()).opened(size.getAsInt()).count();
  }
}

package traytally.cli;

import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Fact.Described;
import traytally.performance.Standing;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.report.BoxReport;
import traytally.report.Report;
import traytally.restock.LowRule;
import traytally.restock.Outlook;
import traytally.restock.Prospect;
import traytally.store.Box;

/** {@code box}: what is in the box. */
@Command(
    name = "box",
    description = "Shows what is in the box.",
    footer = {"", "Example: traytally box --low --fail"})
final class BoxCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Option(names = "--colour", paramLabel = "NAME", description = "Only this colour.")
  private Optional<Name> colour = Optional.empty();

  @Option(names = "--body", paramLabel = "NAME", description = "Only this body style.")
  private Optional<Name> body = Optional.empty();

  @Option(names = "--length", paramLabel = "MM", description = "Only this length, in mm.")
  private Optional<Integer> length = Optional.empty();

  @Option(names = "--tray", paramLabel = "NAME", description = "Only this tray.")
  private Optional<Name> tray = Optional.empty();

  @Option(
      names = "--standing",
      paramLabel = "WORD",
      description = "Only trusted, promising, unproven or doubtful ones.")
  private Optional<Standing> standing = Optional.empty();

  @Option(names = "--low", description = "Only trusted, kept and promising ones that may run out.")
  private boolean low;

  @Option(names = "--fail", description = "With --low: exit with 1 if there are any.")
  private boolean fail;

  @Override
  public Integer call() {
    if (fail && !low) {
      throw new Refusal(Exit.USAGE, "--fail goes with --low.");
    }
    try (Box box = root.openBox()) {
      Report listed = root.answer(box, this::list);
      output.print(root, listed);
      if (output.isForPeople()) {
        Listing.of(root).remember(BoxReport.plastics(listed));
      }
      return fail && !listed.rows().isEmpty() ? Exit.ATTENTION : Exit.OK;
    }
  }

  private Report list(Book book) {
    Outlook outlook = Outlook.of(book, root.today());
    SortedMap<Plastic, Described> described = book.described();
    LowRule rule = LowRule.of(book.settings());
    return BoxReport.of(
        book,
        outlook,
        prospect ->
            isWanted(prospect, Optional.ofNullable(described.get(prospect.plastic())))
                && (!low || rule.isLow(prospect)),
        root.today());
  }

  private boolean isWanted(Prospect prospect, Optional<Described> described) {
    return colour.map(prospect.plastic().colour()::equals).orElse(true)
        && body.map(prospect.plastic().body()::equals).orElse(true)
        && length.map(mm -> mm == prospect.plastic().lengthMm()).orElse(true)
        && tray.map(t -> described.filter(d -> Name.of(d.tray()).equals(t)).isPresent())
            .orElse(true)
        && standing.map(prospect.standing()::equals).orElse(true);
  }
}

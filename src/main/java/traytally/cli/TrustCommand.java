package traytally.cli;

import java.time.Month;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.performance.Conditions;
import traytally.performance.Grain;
import traytally.performance.Measure;
import traytally.performance.Performance;
import traytally.plastic.Name;
import traytally.report.Report;
import traytally.report.Swatches;
import traytally.report.TrustReport;
import traytally.restock.Outlook;
import traytally.store.Box;
import traytally.trip.Clarity;

/** {@code trust}: which colours have earned their place. */
@Command(
    name = "trust",
    description = "Shows which colours have earned trust, by your own log.",
    footer = {
      "",
      "Example: traytally trust plastic --by landed",
      "Example: traytally trust --for pollack --in cloudy --month 5"
    })
final class TrustCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Parameters(
      arity = "0..1",
      paramLabel = "GRAIN",
      description = "What to judge: colour, plastic or body (standard: colour).")
  private Grain grain = Grain.COLOUR;

  @Option(
      names = "--by",
      paramLabel = "FISH",
      description = "What counts: follows, takes, hooked or landed (standard: takes).")
  private Measure measure = Measure.TAKES;

  @Option(
      names = "--for",
      paramLabel = "FISH",
      description = "For this fish; else for all you fished for, by their hours.")
  private Name species = Name.BLANK;

  @Option(
      names = "--in",
      paramLabel = "CLARITY",
      description = "In clear, stained, cloudy or dirty water; else in all, by their hours.")
  private Optional<Clarity> clarity = Optional.empty();

  @Option(
      names = "--month",
      paramLabel = "N",
      description = "In the season of this month, 1 to 12; else in all, by their hours.")
  private Optional<Integer> month = Optional.empty();

  @Override
  public Integer call() {
    if (month.filter(m -> m < 1 || m > 12).isPresent()) {
      throw new Refusal(Exit.USAGE, "--month is 1 for January to 12 for December.");
    }
    try (Box box = root.openBox()) {
      output.print(root, root.answer(box, this::judge));
    }
    return Exit.OK;
  }

  private Report judge(Book book) {
    Conditions asked = new Conditions(species, clarity, month.map(Month::of));
    Performance performance = Outlook.performance(book, root.today(), measure).under(asked);
    return TrustReport.of(performance, grain, measure, asked, Swatches.of(book), root.today());
  }
}

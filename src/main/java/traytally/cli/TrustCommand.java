package traytally.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Setting;
import traytally.performance.Grain;
import traytally.performance.Measure;
import traytally.performance.Performance;
import traytally.report.TrustReport;
import traytally.restock.Outlook;
import traytally.store.Box;
import traytally.trip.Stint;

/** {@code trust}: which colours have earned their place. */
@Command(
    name = "trust",
    description = "Shows which colours have earned trust, by your own log.",
    footer = {"", "Example: traytally trust plastic --by landed"})
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

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      Book book = box.book();
      List<Stint> log = book.fished(root.today()).stream().map(Fished::stint).toList();
      Performance performance =
          Performance.of(
              log,
              book.settings().number(Setting.MINUTES_PER_CAST),
              measure,
              Outlook.rule(book.settings()));
      output.print(root, TrustReport.of(performance, grain, measure, root.today()));
    }
    return Exit.OK;
  }
}

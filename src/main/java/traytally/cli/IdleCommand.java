package traytally.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.report.IdleReport;
import traytally.report.Swatches;
import traytally.restock.Idle;
import traytally.store.Box;

/** {@code idle}: what will never be used up. */
@Command(
    name = "idle",
    description = "Shows the pieces you will not use up, nine times in ten, and the money in them.",
    footer = {"", "Example: traytally idle --years 3"})
final class IdleCommand implements Callable<Integer> {
  private static final double FEWEST_YEARS = 0.1;
  private static final double MOST_YEARS = 20;

  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Option(
      names = "--years",
      paramLabel = "N",
      description = "How many years ahead to look (standard: 2).")
  private double years = 2;

  @Override
  public Integer call() {
    if (!(years >= FEWEST_YEARS && years <= MOST_YEARS)) {
      throw new Refusal(Exit.USAGE, "--years looks 0.1 to 20 years ahead.");
    }
    try (Box box = root.openBox()) {
      output.print(
          root,
          root.answer(
              box, book -> IdleReport.of(Idle.of(book, root.today(), years), Swatches.of(book))));
    }
    return Exit.OK;
  }
}

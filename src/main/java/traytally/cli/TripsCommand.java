package traytally.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;
import traytally.report.TripsReport;
import traytally.store.Box;

/** {@code trips}: lists the stints of your log. */
@Command(
    name = "trips",
    description = "Lists the stints of your log.",
    footer = {"", "Example: traytally trips --format json"})
final class TripsCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      output.print(root, TripsReport.of(box.book(), root.today()));
    }
    return Exit.OK;
  }
}

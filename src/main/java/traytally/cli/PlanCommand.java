package traytally.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;
import traytally.report.PlanReport;
import traytally.store.Box;

/** {@code plan}: lists the trips to come. */
@Command(
    name = "plan",
    description = "Lists the trips to come.",
    footer = {"", "Example: traytally plan --format json"})
final class PlanCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      output.print(root, PlanReport.of(box.book(), root.today()));
    }
    return Exit.OK;
  }
}

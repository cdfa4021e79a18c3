package traytally.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;
import traytally.report.LedgerReport;
import traytally.store.Box;

/** {@code ledger}: lists every movement of pieces, oldest first. */
@Command(
    name = "ledger",
    description = "Lists every movement of pieces, oldest first.",
    footer = {"", "Example: traytally ledger --format json"})
final class LedgerCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      output.print(root, LedgerReport.of(box.book().ledger(), root.today()));
    }
    return Exit.OK;
  }
}

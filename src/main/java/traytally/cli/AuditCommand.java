package traytally.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.report.AuditReport;
import traytally.restock.Audit;
import traytally.store.Box;

/** {@code audit}: how past forecasts came true. */
@Command(
    name = "audit",
    description = "Replays the log: how often past forecasts, run-out chances and trust came true.",
    footer = {"", "Example: traytally audit --trips 20"})
final class AuditCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Option(
      names = "--trips",
      paramLabel = "N",
      description = "Replay the last N trips (standard: 100).")
  private int trips = 100;

  @Override
  public Integer call() {
    if (trips < 1) {
      throw new Refusal(Exit.USAGE, "--trips counts trips: 1 or more.");
    }
    try (Box box = root.openBox()) {
      output.print(root, root.answer(box, book -> AuditReport.of(audit(book))));
    }
    return Exit.OK;
  }

  private Audit audit(Book book) {
    try (Progress progress = new Progress(root.desk())) {
      return Audit.of(book, root.today(), trips, progress::replay);
    }
  }
}

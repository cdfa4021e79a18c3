package traytally.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Recorded;
import traytally.plastic.Plastic;
import traytally.report.BatchesReport;
import traytally.report.LedgerReport;
import traytally.store.Box;

/** {@code ledger}: lists movements of pieces, oldest first. */
@Command(
    name = "ledger",
    description = "Lists the movements of pieces, in the order recorded.",
    footer = {
      "",
      "Example: traytally ledger --plastic 'paddle motor oil' --kind lost --since 2026-04-01",
      "Example: traytally ledger --batches     (what each command recorded, for undo)"
    })
final class LedgerCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Option(
      names = "--plastic",
      paramLabel = "PLASTIC",
      description = "Only plastics of this row or these words.")
  private Optional<String> plastic = Optional.empty();

  @Option(
      names = "--kind",
      paramLabel = "WORD",
      description =
          "Only opening, bought, lost, worn, given, found or recount; repeat it for more than one.")
  private Set<MovementKind> kinds = Set.of();

  @Option(names = "--since", paramLabel = "DATE", description = "Only from this day on.")
  private Optional<LocalDate> since = Optional.empty();

  @Option(names = "--batch", paramLabel = "N", description = "Only what this batch recorded.")
  private Optional<Long> batch = Optional.empty();

  @Option(names = "--batches", description = "List the batches instead.")
  private boolean batches;

  @Option(names = "--all", description = "Show every movement of a long ledger.")
  private boolean all;

  /** Longer ledgers nobody reads from end to end (an assumption). */
  private static final int MOST_SHOWN = 2_000;

  @Override
  public Integer call() {
    boolean filtered =
        plastic.isPresent() || !kinds.isEmpty() || since.isPresent() || batch.isPresent();
    if (batches && (filtered || all)) {
      throw new Refusal(Exit.USAGE, "--batches lists every batch and takes no filter.");
    }
    try (Box box = root.openBox()) {
      if (batches) {
        output.print(
            root, BatchesReport.of(box.batches(), root.desk().clock().getZone(), root.today()));
        return Exit.OK;
      }
      if (!all && !filtered && output.isForPeople()) {
        Box.Newest end = box.newestMovements(root.today(), MOST_SHOWN);
        if (end.earlier() > 0) {
          output.print(root, LedgerReport.ofNewest(end.newest(), end.earlier(), root.today()));
          return Exit.OK;
        }
      }
      Ledger ledger = box.ledger();
      Optional<Set<Plastic>> plastics = plastic.map(words -> plastics(box, ledger, words));
      output.print(
          root, LedgerReport.of(ledger, recorded -> isWanted(recorded, plastics), root.today()));
    }
    return Exit.OK;
  }

  private boolean isWanted(Recorded<Movement> recorded, Optional<Set<Plastic>> plastics) {
    Movement movement = recorded.what();
    return plastics.map(wanted -> wanted.contains(movement.plastic())).orElse(true)
        && (kinds.isEmpty() || kinds.contains(movement.kind()))
        && since.map(day -> !movement.date().isBefore(day)).orElse(true)
        && batch.map(number -> number == recorded.batch()).orElse(true);
  }

  /** All plastics that ever moved and fit the words; at least one must. */
  private Set<Plastic> plastics(Box box, Ledger ledger, String words) {
    Set<Plastic> moved =
        ledger.movements().stream()
            .map(recorded -> recorded.what().plastic())
            .collect(Collectors.toSet());
    Set<Plastic> fitting = Set.copyOf(PlasticNames.matching(words, moved));
    if (!fitting.isEmpty()) {
      return fitting;
    }
    Book book = box.book();
    List<Plastic> inBox = PlasticNames.fitting(words, book);
    return inBox.isEmpty() ? Set.of(PlasticNames.one(root, book, words)) : Set.copyOf(inBox);
  }
}

package traytally.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.plastic.Name;
import traytally.report.RestockReport;
import traytally.restock.Asked;
import traytally.restock.ShoppingList;
import traytally.store.Box;

/** {@code restock}: the shopping list. */
@Command(
    name = "restock",
    description = "Prints the shopping list: what is running low, where to buy it, for how much.",
    footer = {"", "Example: traytally restock --until 2026-06-30 --out list.xlsx"})
final class RestockCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Option(names = "--until", paramLabel = "DATE", description = "Buy for the trips until this day.")
  private Optional<LocalDate> until = Optional.empty();

  @Option(names = "--trips", paramLabel = "N", description = "Buy for the next N trips.")
  private Optional<Integer> trips = Optional.empty();

  @Option(
      names = "--shop",
      paramLabel = "NAME",
      description = "Buy from this shop only; repeatable.")
  private List<Name> shops = List.of();

  @Override
  public Integer call() {
    if (until.filter(day -> day.isBefore(root.today())).isPresent()) {
      throw new Refusal(
          Exit.USAGE, "--until " + until.get() + " is past. Give a day still to come.");
    }
    if (until.isPresent() && trips.isPresent()) {
      throw new Refusal(Exit.USAGE, "give either --until or --trips, not both.");
    }
    if (trips.filter(count -> count < 1).isPresent()) {
      throw new Refusal(Exit.USAGE, "--trips counts trips: 1 or more.");
    }
    OptionalInt count = trips.map(OptionalInt::of).orElse(OptionalInt.empty());
    try (Box box = root.openBox()) {
      ShoppingList list =
          ShoppingList.of(box.book(), root.today(), new Asked(until, count, Set.copyOf(shops)));
      output.print(root, RestockReport.of(list));
    }
    return Exit.OK;
  }
}

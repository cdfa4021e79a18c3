package traytally.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Fact.Offered;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.render.Format;
import traytally.render.Look;
import traytally.render.Rendering;
import traytally.report.Report;
import traytally.report.RestockReport;
import traytally.report.SavedListReport;
import traytally.report.Swatches;
import traytally.restock.Asked;
import traytally.restock.ShoppingList;
import traytally.store.Box;

/** {@code restock}: the shopping list. */
@Command(
    name = "restock",
    description = "Prints the shopping list: what is running low, where to buy it, for how much.",
    footer = {"", "Example: traytally restock --until 2026-06-30 --out list.xlsx"})
final class RestockCommand implements Callable<Integer> {
  private static final BigDecimal LEAST = new BigDecimal("0.01");

  /** More than any angler spends, and few enough cents to add up. */
  private static final BigDecimal MOST = new BigDecimal("1000000");

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

  @Option(
      names = "--budget",
      paramLabel = "MONEY",
      description = "Spend at most this, postage counted, where it saves most takes.")
  private Optional<BigDecimal> budget = Optional.empty();

  @Option(
      names = "--worth",
      paramLabel = "TAKES",
      description =
          "Also buy every pack that saves this many takes for each unit of money"
              + " (standard: your going rate so far, else 1 take a pack).")
  private Optional<Double> worth = Optional.empty();

  @Option(
      names = "--try",
      paramLabel = "N",
      description = "Add the N most promising colours on sale that you never fished.")
  private int untried;

  @Option(
      names = "--save",
      paramLabel = "FILE",
      description = "Keep what to buy as a .csv file, for bought --list when the parcel comes.")
  private Optional<Path> save = Optional.empty();

  @Override
  public Integer call() {
    refuse();
    try (Box box = root.openBox()) {
      // A list that is to be kept in a file is worked out whether or not it is remembered.
      output.print(root, save.isPresent() ? list(box.book()) : root.answer(box, this::list));
    }
    return Exit.OK;
  }

  private Report list(Book book) {
    requireKnown(book);
    OptionalInt count = trips.map(OptionalInt::of).orElse(OptionalInt.empty());
    OptionalDouble least = worth.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    Optional<Money> most = budget.map(sum -> Money.of(sum, book.settings().currency()));
    Asked asked = new Asked(until, count, Set.copyOf(shops), most, least, untried);
    ShoppingList list = ShoppingList.of(book, root.today(), asked);
    save.ifPresent(file -> keep(list, file));
    return RestockReport.of(list, Swatches.of(book));
  }

  private void keep(ShoppingList list, Path file) {
    Look plain = Looks.of(root.desk(), root.settings()).withColour(false);
    Output.save(
        file, stream -> Rendering.write(SavedListReport.of(list), Format.CSV, plain, stream));
    root.desk()
        .err()
        .println("Kept: " + file + "; when the parcel comes, traytally bought --list " + file);
  }

  private void requireKnown(Book book) {
    SortedSet<Name> known = new TreeSet<>();
    book.facts(Offered.class).forEach(offered -> known.add(offered.offer().shop()));
    for (Name shop : shops) {
      if (!known.contains(shop)) {
        throw new Refusal(
            Exit.DATA,
            "no price list names a shop \""
                + shop
                + "\". "
                + (known.isEmpty()
                    ? "Import what the shops ask first."
                    : "There are "
                        + known.stream().map(Name::text).collect(Collectors.joining(", "))
                        + "."));
      }
    }
  }

  private void refuse() {
    if (until.filter(day -> day.isBefore(root.today())).isPresent()) {
      throw new Refusal(
          Exit.USAGE, "--until " + until.get() + " is past. Give a day still to come.");
    }
    if (save.filter(file -> !file.toString().toLowerCase(Locale.ROOT).endsWith(".csv"))
        .isPresent()) {
      throw new Refusal(Exit.USAGE, "--save keeps the list as .csv, as in --save list.csv.");
    }
    if (until.isPresent() && trips.isPresent()) {
      throw new Refusal(Exit.USAGE, "give either --until or --trips, not both.");
    }
    if (trips.filter(count -> count < 1).isPresent()) {
      throw new Refusal(Exit.USAGE, "--trips counts trips: 1 or more.");
    }
    if (budget.filter(sum -> sum.compareTo(LEAST) < 0 || sum.compareTo(MOST) > 0).isPresent()) {
      throw new Refusal(Exit.USAGE, "--budget is money to spend: above 0, as in 40 or 39.50.");
    }
    if (budget.isPresent() && worth.isPresent()) {
      throw new Refusal(
          Exit.USAGE, "give either --budget or --worth: a budget buys what saves most anyway.");
    }
    if (worth.filter(takes -> !(takes > 0)).isPresent()) {
      throw new Refusal(Exit.USAGE, "--worth counts takes for a unit of money: above 0.");
    }
    if (untried < 0) {
      throw new Refusal(Exit.USAGE, "--try counts colours: 0 or more.");
    }
  }
}

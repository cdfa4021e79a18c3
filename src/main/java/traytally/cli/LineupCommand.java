package traytally.cli;

import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.plastic.Name;
import traytally.report.LineupReport;
import traytally.restock.Outlook;
import traytally.store.Box;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;

/** {@code lineup}: what to tie on, on the next trip. */
@Command(
    name = "lineup",
    description = "Says what to tie on first and next on a trip, what to try, how many to carry.",
    footer = {"", "Example: traytally lineup", "Example: traytally lineup --for bass --in dirty"})
final class LineupCommand implements Callable<Integer> {
  /** A trip's length where neither options, plan nor log tell: an assumption of this tool. */
  private static final double ASSUMED_HOURS = 4;

  private static final double MOST_HOURS = 240;

  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Option(names = "--date", paramLabel = "DATE", description = "The day; else the next planned.")
  private Optional<LocalDate> date = Optional.empty();

  @Option(names = "--water", paramLabel = "WATER", description = "Where.")
  private Optional<Name> water = Optional.empty();

  @Option(names = "--for", paramLabel = "FISH", description = "The fish.")
  private Optional<Name> species = Optional.empty();

  @Option(
      names = "--in",
      paramLabel = "CLARITY",
      description = "The water: clear, stained, cloudy or dirty.")
  private Optional<Clarity> clarity = Optional.empty();

  @Option(names = "--hours", paramLabel = "HOURS", description = "Hours each rod will fish.")
  private Optional<Double> hours = Optional.empty();

  @Override
  public Integer call() {
    if (date.filter(day -> day.isBefore(root.today())).isPresent()) {
      throw new Refusal(Exit.USAGE, "--date " + date.get() + " is past. Give a day still to come.");
    }
    if (hours.filter(h -> !(h > 0 && h <= MOST_HOURS)).isPresent()) {
      throw new Refusal(Exit.USAGE, "--hours is above 0 and at most 240.");
    }
    try (Box box = root.openBox()) {
      output.print(root, root.answer(box, book -> LineupReport.of(book, trip(book), root.today())));
    }
    return Exit.OK;
  }

  /** The trip of that day or the next one, planned or at the usual pace, as the options say. */
  private PlannedTrip trip(Book book) {
    PlannedTrip base =
        Outlook.horizon(book, root.today()).trips().stream()
            .filter(trip -> date.map(trip.date()::equals).orElse(true))
            .filter(trip -> water.isEmpty() || date.isPresent() || water.get().equals(trip.water()))
            .findFirst()
            .orElse(
                new PlannedTrip(
                    date.orElse(root.today()),
                    Name.BLANK,
                    Name.BLANK,
                    Optional.empty(),
                    ASSUMED_HOURS,
                    1,
                    ""));
    return new PlannedTrip(
        date.orElse(base.date()),
        water.orElse(base.water()),
        species.orElse(base.species()),
        clarity.or(base::clarity),
        hours.orElse(base.hours()),
        base.rods(),
        base.note());
  }
}

package traytally.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Planned;
import traytally.ledger.Recorded;
import traytally.plastic.Name;
import traytally.report.PlanReport;
import traytally.report.Words;
import traytally.store.Box;
import traytally.trip.PlannedTrip;

/** {@code plan}: lists the trips to come, adds and drops them. */
@Command(
    name = "plan",
    description = "Lists the trips to come; adds and drops them.",
    subcommands = {
      PlanCommand.Shown.class,
      PlanCommand.Add.class,
      PlanCommand.Drop.class,
      ClosedCommand.class
    },
    footer = {"", "Example: traytally plan --format json", "Example: " + PlanCommand.EXAMPLE})
final class PlanCommand implements Callable<Integer> {
  static final String EXAMPLE =
      "traytally plan add 2026-05-09 \"Gannet Stack\" pollack clear 5h 2r";

  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Override
  public Integer call() {
    return list(root, output);
  }

  Traytally root() {
    return root;
  }

  private static int list(Traytally root, Output output) {
    try (Box box = root.openBox()) {
      output.print(root, PlanReport.of(box.book(), root.today()));
    }
    return Exit.OK;
  }

  /** A trip in words: {@code 2026-05-09, Gannet Stack, pollack, 5 hours, 2 rods}. */
  private static String words(PlannedTrip trip) {
    StringBuilder words = new StringBuilder(trip.date().toString());
    for (Name name : List.of(trip.water(), trip.species())) {
      words.append(name.isBlank() ? "" : ", " + name);
    }
    trip.clarity().ifPresent(clarity -> words.append(", ").append(clarity.word()));
    words.append(String.format(Locale.ROOT, ", %s hours", trip.hours()).replace(".0 ", " "));
    words.append(", ").append(Words.count(trip.rods(), "rod"));
    return words.toString();
  }

  private static HandChange change(
      String verb, List<PlannedTrip> trips, List<String> notes, List<String> odd, Entry entry) {
    String lines =
        String.join(System.lineSeparator() + "  ", trips.stream().map(PlanCommand::words).toList());
    return new HandChange(
        "Understood: " + verb + System.lineSeparator() + "  " + lines,
        List.of(),
        notes,
        odd.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", odd)),
        entry);
  }

  /** {@code plan list}: the same as {@code plan}. */
  @Command(
      name = "list",
      description = "Lists the trips to come.",
      footer = {"", "Example: traytally plan list"})
  static final class Shown implements Callable<Integer> {
    @ParentCommand private PlanCommand parent;
    @Mixin private Output output;

    @Override
    public Integer call() {
      return list(parent.root, output);
    }
  }

  /** {@code plan add}: a trip to come, or the same one every week. */
  @Command(
      name = "add",
      description = {
        "Plans a trip: DATE [WATER] [FISH] [CLARITY] HOURS [RODS]",
        "HOURS is 5h, what each rod will fish; RODS is 2r. A new water of several words goes in"
            + " quotes."
      },
      footer = {"", "Example: " + EXAMPLE, "Example: " + EXAMPLE + " --weekly 6"})
  static final class Add implements Callable<Integer> {
    /** A year of weeks: no plan is sure beyond (common practice). */
    private static final int MOST_WEEKS = 53;

    @ParentCommand private PlanCommand parent;
    @Mixin private HandOptions hand;

    @Parameters(arity = "1..*", paramLabel = "TRIP", description = "The trip, as above.")
    private List<String> words = List.of();

    @Option(names = "--weekly", paramLabel = "N", description = "N trips, a week apart.")
    private int weekly = 1;

    @Override
    public Integer call() {
      if (weekly < 1 || weekly > MOST_WEEKS) {
        throw new Refusal(Exit.USAGE, "--weekly wants how many trips, 1 to " + MOST_WEEKS + ".");
      }
      return hand.record(parent.root, true, this::planned);
    }

    private HandChange planned(Book book) {
      LocalDate today = parent.root.today();
      TripWords trip = TripWords.parse(TripWords.joined(words), book, today);
      if (trip.date().isBefore(today)) {
        throw new Refusal(Exit.DATA, trip.date() + " is past; today is " + today + ".");
      }
      double hours =
          trip.hours()
              .filter(h -> h > 0 && h <= 24)
              .orElseThrow(
                  () ->
                      new Refusal(
                          Exit.USAGE, "say how long each rod will fish, such as 5h, up to 24h."));
      List<PlannedTrip> trips = new ArrayList<>();
      List<String> odd = new ArrayList<>(trip.slips());
      for (int week = 0; week < weekly; week++) {
        PlannedTrip next =
            new PlannedTrip(
                trip.date().plusWeeks(week),
                trip.water(),
                trip.species(),
                trip.clarity(),
                hours,
                Math.max(1, trip.rods().orElse(1)),
                "");
        trips.add(next);
        if (book.facts(Planned.class).stream().anyMatch(p -> p.trip().compareTo(next) == 0)) {
          odd.add("A trip on " + next.date() + " to the same water is planned already.");
        }
      }
      List<Fact> added = new ArrayList<>();
      trips.forEach(next -> added.add(new Planned(next, "")));
      String said =
          "planned " + words(trips.get(0)) + (weekly > 1 ? ", weekly, " + weekly + " trips" : "");
      return change(
          "planned",
          trips,
          ClosedWaters.of(book).notes(trips),
          odd,
          Entry.ofFacts("plan add", said, added, List.of()));
    }
  }

  /** {@code plan drop}: takes planned trips off. */
  @Command(
      name = "drop",
      description = "Drops the trip planned for a day; with --all every one from that day on.",
      footer = {"", "Example: traytally plan drop 2026-05-09 gannet"})
  static final class Drop implements Callable<Integer> {
    @ParentCommand private PlanCommand parent;
    @Mixin private HandOptions hand;

    @Parameters(index = "0", paramLabel = "DATE", description = "The day, or today, tomorrow.")
    private String date = "";

    @Parameters(
        index = "1..*",
        arity = "0..*",
        paramLabel = "WATER",
        description = "Which of several.")
    private List<String> water = List.of();

    @Option(names = "--all", description = "Every one planned from that day on.")
    private boolean all;

    @Override
    public Integer call() {
      return hand.record(parent.root, false, this::dropped);
    }

    private HandChange dropped(Book book) {
      LocalDate day = TripWords.date(date, parent.root.today());
      String wanted = Name.of(String.join(" ", water)).key();
      List<Recorded<Planned>> trips =
          book.recorded(Planned.class).stream()
              .filter(p -> isOn(p.what().trip().date(), day))
              .filter(p -> p.what().trip().water().key().startsWith(wanted))
              .sorted(Comparator.comparing(p -> p.what().trip()))
              .toList();
      if (trips.isEmpty()) {
        throw new Refusal(
            Exit.DATA, "no such trip is planned for " + day + ". traytally plan lists them.");
      }
      if (trips.size() > 1 && !all) {
        throw new Refusal(
            Exit.DATA,
            trips.size()
                + " trips are planned for "
                + day
                + ". Name the water of one:"
                + System.lineSeparator()
                + "  "
                + String.join(
                    System.lineSeparator() + "  ",
                    trips.stream().map(p -> words(p.what().trip())).toList()));
      }
      List<PlannedTrip> dropped = trips.stream().map(p -> p.what().trip()).toList();
      String said = "dropped " + words(dropped.get(0)) + (trips.size() > 1 ? " and later" : "");
      return change(
          "dropped",
          dropped,
          List.of(),
          List.of(),
          Entry.ofFacts("plan drop", said, List.of(), List.copyOf(trips)));
    }

    private boolean isOn(LocalDate planned, LocalDate day) {
      return all ? !planned.isBefore(day) : planned.equals(day);
    }
  }
}

package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import traytally.ledger.Book;
import traytally.ledger.Fact.Planned;
import traytally.ledger.Recorded;
import traytally.trip.PlannedTrip;

/** A list of coming trips; it replaces what the same list said before. */
final class PlanList {
  /** Longer is not a trip but a stay: the most one trip may plan, hours. */
  private static final double MOST_HOURS = 240;

  /** Plans further ahead are slips of the year (an assumption). */
  private static final int MOST_YEARS = 5;

  private static final int MOST_RODS = 20;

  private final Table table;
  private final Book book;
  private final LocalDate today;
  private final KnownPlastics known;
  private final RowReader reader;
  private final List<PlannedTrip> trips = new ArrayList<>();
  private final Doubts doubts = new Doubts();

  PlanList(Table table, Book book, ImportOptions options, KnownPlastics known, LocalDate today) {
    this.table = table;
    this.book = book;
    this.today = today;
    this.known = known;
    this.reader = new RowReader(table, ColumnHabits.of(table, options, today), today);
  }

  void read() {
    Set<PlannedTrip> before = new HashSet<>();
    recorded().forEach(r -> before.add(r.what().trip()));
    for (ListRow row : table.rows()) {
      reader.begin(row);
      Optional<LocalDate> date = reader.date(Field.DATE);
      Optional<PlannedTrip> trip = date.flatMap(this::trip);
      boolean past = date.filter(d -> d.isBefore(today)).isPresent();
      if (past && trip.filter(before::contains).isEmpty()) {
        reader.problem(Field.DATE, "is in the past. Write a day to come, or put it in the log.");
      }
      if (reader.failed() || trip.isEmpty()) {
        doubts.add(date);
      } else {
        trips.add(trip.get());
      }
    }
  }

  private Optional<PlannedTrip> trip(LocalDate date) {
    if (date.isAfter(today.plusYears(MOST_YEARS))) {
      reader.problem(Field.DATE, "is too far ahead to be true. Check the year.");
    }
    Optional<Double> hours =
        reader
            .minutesOfDays(Field.HOURS, MOST_HOURS)
            .or(() -> reader.span(Field.START, Field.END))
            .map(m -> m / 60);
    if (hours.isEmpty() && !reader.failed()) {
      reader.problem(Field.HOURS, "The hours are missing. Write how long you will fish.");
    }
    if (hours.filter(h -> h <= 0).isPresent()) {
      reader.problem(Field.HOURS, "is no time at all. Write how long you will fish.");
    }
    int rods = reader.count(Field.RODS, MOST_RODS).orElse(1);
    if (rods < 1) {
      reader.problem(Field.RODS, "is no rod at all. Write at least 1.");
    }
    if (reader.failed()) {
      return Optional.empty();
    }
    return Optional.of(
        new PlannedTrip(
            date,
            known.agreed(reader.name(Field.WATER)),
            known.agreed(reader.name(Field.SPECIES)),
            reader.word(Field.CLARITY, Words::clarity),
            hours.orElseThrow(),
            rods,
            reader.text(Field.NOTE)));
  }

  int taken() {
    return trips.size();
  }

  private List<Recorded<Planned>> recorded() {
    return book.recorded(Planned.class).stream()
        .filter(r -> r.what().source().equals(table.sheet().source()))
        .toList();
  }

  /** Applies the tables of one list together: what none of them holds any more goes. */
  static void apply(List<PlanList> lists, Changes changes) {
    PlanList first = lists.get(0);
    String source = first.table.sheet().source();
    List<PlannedTrip> left = new ArrayList<>();
    lists.forEach(list -> left.addAll(list.trips));
    for (Recorded<Planned> before : first.recorded()) {
      LocalDate date = before.what().trip().date();
      boolean doubt = lists.stream().anyMatch(list -> list.doubts.mayTouch(date));
      if (!left.remove(before.what().trip()) && !doubt) {
        changes.withdraw(before);
      }
    }
    left.forEach(trip -> changes.add(new Planned(trip, source)));
    if (!left.isEmpty()) {
      changes.summarise(source, left.size(), "trip", "planned");
    }
  }
}

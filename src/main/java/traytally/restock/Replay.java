package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Recorded;
import traytally.ledger.Setting;
import traytally.performance.Measure;
import traytally.performance.Performance;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.PlannedTrip;
import traytally.trip.Trip;

/** A log gone through again, trip by trip, with only what was known on the eve of each. */
final class Replay {
  /** Trips before which there is too little to forecast from (assumption). */
  private static final int FEWEST_TRIPS = 5;

  /** Pieces in a tray that nobody had counted yet: enough not to run out. */
  private static final int UNCOUNTED = 1000;

  /** Days for which a tray nobody had counted is taken to be in use after it was last fished. */
  private static final int IN_USE_DAYS = 365;

  private final Book book;
  private final LocalDate asOf;
  private final int horizonDays;
  private final Performance now;
  private final SortedMap<Trip, List<Turn>> trips = new TreeMap<>();

  Replay(Book book, LocalDate asOf) {
    this.book = book;
    this.asOf = asOf;
    this.horizonDays =
        book.settings().days(Setting.ORDER_EVERY_DAYS)
            + Market.of(book, Set.of()).deliveryDays(book);
    this.now = Outlook.performance(book, asOf, Measure.TAKES);
    for (Turn turn : now.turns()) {
      trips.computeIfAbsent(turn.trip(), t -> new ArrayList<>()).add(turn);
    }
  }

  Audit audit(int most, Audit.Watcher watcher) {
    List<LocalDate> eves = eves(most);
    Scorecard score = new Scorecard();
    TrustCalls calls = new TrustCalls();
    for (LocalDate eve : eves) {
      Outlook then = then(eve);
      Set<Name> colours = new TreeSet<>();
      then.prospects().keySet().forEach(plastic -> colours.add(plastic.colour()));
      calls.at(eve, then.performance(), colours);
      then.prospects().values().forEach(prospect -> add(prospect, eve, score));
      within(eve).values().stream()
          .flatMap(List::stream)
          .filter(turn -> then.prospect(turn.plastic()).isEmpty())
          .forEach(turn -> score.newcomer(turn.use()));
      watcher.replayed(1 + eves.indexOf(eve), eves.size());
    }
    return new Audit(
        asOf, eves.size(), horizonDays, score.use(), score.runOuts(), calls.held(now.turns(), now));
  }

  /** The days before the last trips whose horizon has passed. */
  private List<LocalDate> eves(int most) {
    List<LocalDate> days = trips.keySet().stream().map(Trip::date).distinct().sorted().toList();
    List<LocalDate> eves =
        days.stream()
            .skip(FEWEST_TRIPS)
            .map(day -> day.minusDays(1))
            .filter(eve -> !eve.plusDays(horizonDays).isAfter(asOf))
            .toList();
    return eves.subList(Math.max(0, eves.size() - most), eves.size());
  }

  private Outlook then(LocalDate eve) {
    List<PlannedTrip> made = new ArrayList<>();
    within(eve).forEach((trip, turns) -> made.add(asPlanned(trip, turns)));
    List<Recorded<Movement>> movements =
        new ArrayList<>(
            book.ledger().movements().stream()
                .filter(movement -> !movement.what().date().isAfter(eve))
                .toList());
    Set<Plastic> counted = new HashSet<>();
    movements.forEach(movement -> counted.add(movement.what().plastic()));
    List<Recorded<? extends Fact>> facts = facts(eve, made, counted);
    for (Plastic plastic : fishedInTheYearTo(eve)) {
      if (!counted.contains(plastic)) {
        movements.add(
            new Recorded<>(
                movements.size(), 0, Movement.of(eve, MovementKind.OPENING, plastic, UNCOUNTED)));
      }
    }
    Book known =
        new Book(book.batches(), new Ledger(movements), facts, book.settings(), book.nextStint());
    Asked asked = new Asked(Optional.empty(), OptionalInt.of(made.size()), Set.of());
    return Outlook.of(known, eve, asked, 0);
  }

  /** What the box said by then; the trips then made stand for the plan. */
  private List<Recorded<? extends Fact>> facts(
      LocalDate eve, List<PlannedTrip> made, Set<Plastic> counted) {
    Set<Plastic> known = new HashSet<>(fishedInTheYearTo(eve));
    known.addAll(counted);
    List<Recorded<? extends Fact>> facts = new ArrayList<>();
    for (Recorded<? extends Fact> recorded : book.facts()) {
      Fact fact = recorded.what();
      boolean then =
          fact instanceof Fact.Fished fished
              ? !fished.stint().trip().date().isAfter(eve)
              : fact instanceof Fact.Counted count
                  ? !count.date().isAfter(eve)
                  : fact instanceof Fact.Kept kept
                      ? known.contains(kept.plastic())
                      : !(fact instanceof Fact.Planned
                          || fact instanceof Fact.Described
                          || fact instanceof Fact.Offered);
      if (then) {
        facts.add(recorded);
      }
    }
    made.forEach(trip -> facts.add(new Recorded<>(0, 0, new Fact.Planned(trip, ""))));
    return facts;
  }

  private Set<Plastic> fishedInTheYearTo(LocalDate eve) {
    Set<Plastic> fished = new TreeSet<>();
    for (Turn turn : now.turns()) {
      LocalDate day = turn.trip().date();
      if (!day.isAfter(eve) && day.isAfter(eve.minusDays(IN_USE_DAYS))) {
        fished.add(turn.plastic());
      }
    }
    return fished;
  }

  /** The trips of the horizon after {@code eve}. */
  private SortedMap<Trip, List<Turn>> within(LocalDate eve) {
    SortedMap<Trip, List<Turn>> within = new TreeMap<>(trips);
    within
        .keySet()
        .removeIf(
            trip -> !trip.date().isAfter(eve) || trip.date().isAfter(eve.plusDays(horizonDays)));
    return within;
  }

  private static PlannedTrip asPlanned(Trip trip, List<Turn> turns) {
    double hours = turns.stream().mapToDouble(Turn::rodHours).sum();
    Turn first = turns.get(0);
    return new PlannedTrip(
        trip.date(),
        trip.water(),
        first.species(),
        first.clarity(),
        Math.max(0.01, Math.min(240, hours)),
        1,
        "");
  }

  private void add(Prospect prospect, LocalDate eve, Scorecard score) {
    Plastic plastic = prospect.plastic();
    int pieces = prospect.pieces().count();
    if (pieces == 0) {
      return; // it could not be used
    }
    List<Movement> since =
        book.ledger().movements(plastic).stream()
            .map(Recorded::what)
            .filter(move -> !move.date().isAfter(eve.plusDays(horizonDays)))
            .toList();
    boolean counted = since.stream().anyMatch(move -> !move.date().isAfter(eve));
    List<Movement> other =
        since.stream().filter(move -> move.date().isAfter(eve) && !isUse(move)).toList();
    int came = other.stream().mapToInt(move -> Math.max(0, move.pieces())).sum();
    int most = counted ? pieces + came : Integer.MAX_VALUE;
    SortedMap<Trip, List<Turn>> coming = within(eve);
    int used = Math.min(most, used(plastic, coming));
    List<Integer> past = past(plastic, LocalDate.MIN, eve);
    List<Integer> lastYear = past(plastic, eve.minusDays(IN_USE_DAYS), eve);
    double average = lastYear.stream().mapToInt(use -> use).average().orElse(0);
    score.use(
        prospect.asItIs().distribution(),
        used,
        most,
        Croston.perTrip(past) * coming.size(),
        average * coming.size());
    if (counted && other.isEmpty()) {
      int left = book.ledger().stock(plastic, eve.plusDays(horizonDays)).count();
      score.runOut(prospect.runOutChance(), left == 0);
    }
  }

  private static boolean isUse(Movement move) {
    return move.stint().isPresent()
        || move.kind() == MovementKind.LOST
        || move.kind() == MovementKind.WORN;
  }

  private static int used(Plastic plastic, Map<Trip, List<Turn>> some) {
    return some.values().stream()
        .flatMap(List::stream)
        .filter(turn -> turn.plastic().equals(plastic))
        .mapToInt(Turn::use)
        .sum();
  }

  /** Its use by trip, the trips without it too. */
  private List<Integer> past(Plastic plastic, LocalDate after, LocalDate to) {
    List<Integer> uses = new ArrayList<>();
    trips.forEach(
        (trip, turns) -> {
          if (trip.date().isAfter(after) && !trip.date().isAfter(to)) {
            uses.add(used(plastic, Map.of(trip, turns)));
          }
        });
    return uses;
  }
}

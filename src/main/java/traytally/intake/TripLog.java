package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.ledger.Fact.Fished;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.LossCause;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** A log of trips: its rows read as stints, in the order fished. */
final class TripLog {
  /** More fish, casts or rods than a stint can have are slips (assumptions). */
  private static final int MOST_FISH = 1000;

  private static final Pattern LOST_PART = Pattern.compile("(\\d{0,3})\\s*(\\D+)");

  private static final int MOST_CASTS = 5000;
  private static final int MOST_RODS = 20;

  /**
   * The rows as read, before their plastics are looked up: row and stint stand at the same place.
   * Two lists, because a record for each of a million rows is memory that the stints need.
   */
  private record Lines(List<ListRow> rows, List<Stint> stints) {}

  private final Table table;
  private final LocalDate today;
  private final KnownPlastics known;
  private final RowReader reader;
  private final List<Fished> stints = new ArrayList<>();
  // A long log repeats trips, plastics and numbers; each is kept once.
  private final Map<Trip, Trip> trips = new HashMap<>();
  private final Map<Plastic, Plastic> plastics = new HashMap<>();
  private final Map<Object, Object> met = new HashMap<>();
  private final Set<LocalDate> doubtful = new HashSet<>();
  private final boolean fishCounted;
  private boolean undatedProblem;

  TripLog(Table table, ImportOptions options, KnownPlastics known, LocalDate today) {
    this.table = table;
    this.today = today;
    this.known = known;
    this.reader = new RowReader(table, ColumnHabits.of(table, options, today), today);
    this.fishCounted = countsFish();
    if (fishCounted) {
      table.assume("Numbers where the fish is named were read as fish landed.");
    }
  }

  /** What a log may do with a plastic the box does not hold. */
  enum Strangers {
    /** The box was never counted: every plastic of a log is new. */
    WELCOME,
    /** The person says they are used up; slips of known names are not. */
    USED_UP,
    REFUSED
  }

  /** Reads every row; what cannot be taken is among the table's problems. */
  void read(Strangers strangers) {
    Lines lines = new Lines(new ArrayList<>(), new ArrayList<>());
    for (ListRow row : table.rows()) {
      reader.begin(row);
      Optional<LocalDate> date = reader.date(Field.DATE);
      if (date.filter(d -> d.isAfter(today)).isPresent()) {
        reader.problem(Field.DATE, "is after today. Write the day fished, or put it in the plan.");
      }
      Optional<Stint> stint = stint(date.orElse(today));
      if (stint.isPresent()) {
        lines.rows().add(row);
        lines.stints().add(stint.get());
      } else {
        doubt(date);
      }
    }
    if (strangers == Strangers.WELCOME) {
      welcome(lines.stints());
    }
    take(lines, strangers);
  }

  private void take(Lines lines, Strangers strangers) {
    Map<Trip, Integer> places = new HashMap<>();
    String source = table.sheet().source();
    for (int i = 0; i < lines.rows().size(); i++) {
      reader.begin(lines.rows().get(i));
      Stint stint = lines.stints().get(i);
      Trip trip = stint.trip();
      Optional<Plastic> plastic = plastic(stint.plastic(), strangers);
      if (plastic.isPresent()) {
        int place = places.merge(trip, 1, Integer::sum);
        stints.add(new Fished(with(stint, plastic.get()), 0, place, source));
      } else {
        doubt(Optional.of(trip.date()));
      }
    }
  }

  private void doubt(Optional<LocalDate> date) {
    date.ifPresent(doubtful::add);
    undatedProblem |= date.isEmpty();
  }

  /** The stints taken, not yet numbered, in the list's order. */
  List<Fished> stints() {
    return stints;
  }

  /** The rows taken. */
  int taken() {
    return stints.size();
  }

  /** Whether a row that could not be taken may belong to {@code trip}. */
  boolean mayHold(Trip trip) {
    return undatedProblem || doubtful.contains(trip.date());
  }

  private static Stint with(Stint stint, Plastic plastic) {
    if (stint.plastic().equals(plastic)) {
      return stint;
    }
    return new Stint(
        stint.trip(),
        stint.species(),
        stint.clarity(),
        plastic,
        stint.minutes(),
        stint.casts(),
        stint.fish(),
        stint.lost(),
        stint.lostHow(),
        stint.worn(),
        stint.rods(),
        stint.note());
  }

  private Optional<Stint> stint(LocalDate date) {
    Plastic words = words();
    Trip trip = once(new Trip(date, known.agreed(reader.name(Field.WATER))));
    Optional<Clarity> clarity = reader.word(Field.CLARITY, Words::clarity);
    OptionalDouble minutes = minutes();
    OptionalInt casts = once(reader.count(Field.CASTS, MOST_CASTS));
    Fish fish = fish();
    Loss loss = loss();
    int worn = reader.pieces(Field.WORN, OptionalInt.empty()).orElse(0);
    int rods = reader.count(Field.RODS, MOST_RODS).orElse(1);
    if (rods < 1) {
      reader.problem(Field.RODS, "is no rod at all. Write at least 1.");
    }
    if (reader.failed()) {
      return Optional.empty();
    }
    return Optional.of(
        new Stint(
            trip,
            fishCounted ? Name.BLANK : known.agreed(reader.name(Field.SPECIES)),
            clarity,
            words,
            minutes,
            casts,
            fish,
            loss.pieces(),
            loss.how(),
            worn,
            rods,
            reader.text(Field.NOTE)));
  }

  /** The trip itself, or one met before that is equal and spelt alike. */
  private Trip once(Trip trip) {
    Trip before = trips.computeIfAbsent(trip, t -> t);
    return before.water().text().equals(trip.water().text()) ? before : trip;
  }

  /** The plastic itself, or one met before that is equal and spelt alike. */
  private Plastic once(Plastic words) {
    Plastic before = plastics.computeIfAbsent(words, w -> w);
    boolean alike =
        before.body().text().equals(words.body().text())
            && before.colour().text().equals(words.colour().text())
            && before.maker().text().equals(words.maker().text());
    return alike ? before : words;
  }

  /** The value itself, or one equal to it that was met before. */
  @SuppressWarnings("unchecked") // what is equal is of one class
  private <T> T once(T value) {
    return (T) met.computeIfAbsent(value, v -> v);
  }

  /** The plastic in the row's own words; any plastic if the row has failed. */
  private Plastic words() {
    var body = known.agreed(reader.nameNeeded(Field.BODY));
    var colour = known.agreed(reader.nameNeeded(Field.COLOUR));
    var maker = known.agreed(reader.name(Field.MAKER));
    int lengthMm = reader.lengthMm();
    return body.isBlank() || colour.isBlank()
        ? Plastic.of("", "none", "none", 0)
        : once(new Plastic(maker, body, colour, lengthMm));
  }

  private OptionalDouble minutes() {
    Optional<Double> minutes = reader.minutes(Field.MINUTES);
    if (minutes.isEmpty() && table.guess().has(Field.START) && table.guess().has(Field.END)) {
      minutes = reader.span(Field.START, Field.END);
    }
    return minutes.isPresent() ? once(OptionalDouble.of(minutes.get())) : OptionalDouble.empty();
  }

  /** Numbers under "Fish" are fish landed, not what was fished for. */
  private boolean countsFish() {
    List<String> told =
        table.rows().stream()
            .map(row -> row.text(Field.SPECIES))
            .filter(text -> !text.isEmpty())
            .toList();
    return !table.guess().has(Field.LANDED)
        && !told.isEmpty()
        && told.stream().allMatch(text -> text.matches("\\d{1,3}"));
  }

  private Field landedField() {
    return fishCounted ? Field.SPECIES : Field.LANDED;
  }

  private Fish fish() {
    int follows = reader.count(Field.FOLLOWS, MOST_FISH).orElse(0);
    int landed = reader.count(landedField(), MOST_FISH).orElse(0);
    OptionalInt hookedSaid = reader.count(Field.HOOKED, MOST_FISH);
    OptionalInt takesSaid = reader.count(Field.TAKES, MOST_FISH);
    int hooked = hookedSaid.orElse(landed);
    int takes = takesSaid.orElse(hooked);
    if (hookedSaid.isEmpty() && landed > 0) {
      table.assume("Where hooked fish are not told, as many were taken as hooked as were landed.");
    }
    if (takesSaid.isEmpty() && hooked > 0) {
      table.assume("Where takes are not told, as many were taken as there were hooked fish.");
    }
    if (landed > hooked) {
      reader.problem(
          Field.LANDED, "is more than were hooked (" + hooked + "). Check both numbers.");
      return Fish.NONE;
    }
    if (hooked > takes) {
      reader.problem(
          Field.HOOKED, "is more than there were takes (" + takes + "). Check both numbers.");
      return Fish.NONE;
    }
    return once(new Fish(follows, takes, hooked, landed));
  }

  private record Loss(int pieces, Optional<LossCause> how) {}

  private Loss loss() {
    String cause = reader.text(Field.LOST_HOW);
    Optional<LossCause> how = cause.isEmpty() ? Optional.empty() : Words.lossCause(cause);
    if (how.isEmpty() && !cause.isEmpty()) {
      reader.note(
          Field.LOST_HOW,
          "is no cause known here (snagged, bitten off, torn, cast off). The rest of the row was"
              + " taken.");
    }
    String lost = reader.text(Field.LOST);
    if (lost.isEmpty() || lost.chars().allMatch(Character::isDigit)) {
      int plain = reader.pieces(Field.LOST, OptionalInt.empty()).orElse(0);
      return new Loss(plain, plain > 0 ? how : Optional.empty());
    }
    Optional<Loss> told = told(lost);
    if (told.isPresent()) {
      return new Loss(told.get().pieces(), how.or(() -> told.get().how()));
    }
    int pieces = reader.pieces(Field.LOST, OptionalInt.empty()).orElse(0);
    return new Loss(pieces, pieces > 0 ? how : Optional.empty());
  }

  /** Causes of loss with their numbers in one cell: "2 (snag)", "1 snagged, 1 bitten off". */
  private Optional<Loss> told(String lost) {
    int pieces = 0;
    int most = 0;
    Optional<LossCause> how = Optional.empty();
    for (String part : lost.split("\\s*(?:[,;+&/]|\\band\\b)\\s*", -1)) {
      Matcher counted = LOST_PART.matcher(part);
      Optional<LossCause> cause =
          counted.matches() ? Words.lossCause(counted.group(2)) : Optional.empty();
      if (cause.isEmpty()) {
        return Optional.empty();
      }
      boolean bare = counted.group(1).isEmpty();
      int here = bare ? 1 : Integer.parseInt(counted.group(1));
      if (bare) {
        table.assume("A cause of loss without a number was taken as one piece lost.");
      }
      pieces += here;
      if (here > most) {
        most = here;
        how = cause;
      }
    }
    return Optional.of(new Loss(pieces, pieces > 0 ? how : Optional.empty()));
  }

  /** Makes every plastic of the log known, those in full words first. */
  private void welcome(List<Stint> lines) {
    Comparator<Plastic> fullFirst =
        Comparator.comparing((Plastic p) -> !p.hasLength()).thenComparing(p -> p.maker().isBlank());
    lines.stream()
        .map(Stint::plastic)
        .distinct()
        .sorted(fullFirst)
        .filter(words -> known.fittingRoughly(words).isEmpty())
        .forEach(known::add);
  }

  private Optional<Plastic> plastic(Plastic words, Strangers strangers) {
    List<Plastic> fitting = known.fittingRoughly(words);
    if (fitting.size() == 1) {
      if (!fitting.get(0).equals(words)
          && words.hasLength()
          && fitting.get(0).hasLength()
          && words.lengthMm() != fitting.get(0).lengthMm()) {
        table.assume(
            words.lengthMm()
                + " mm was taken for the "
                + fitting.get(0).lengthMm()
                + " mm of the box list.");
      }
      return Optional.of(fitting.get(0));
    }
    if (fitting.size() > 1) {
      reader.problem(
          Field.BODY,
          "may be any of "
              + RowReader.several(fitting)
              + ". Write the "
              + (words.hasLength() ? "maker." : "length and the maker."));
      return Optional.empty();
    }
    return stranger(words, strangers);
  }

  private Optional<Plastic> stranger(Plastic words, Strangers strangers) {
    Optional<String> slip = known.didYouMean(words);
    if (slip.isEmpty() && strangers != Strangers.REFUSED) {
      known.add(words);
      table.assume("Plastics the box list does not hold were taken as used up.");
      return Optional.of(words);
    }
    String question = slip.or(() -> known.perhaps(words)).map(q -> " " + q + ".").orElse("");
    reader.problem(
        Field.COLOUR,
        "("
            + words
            + ") is not in the box list."
            + question
            + " Otherwise add it there, with 0 pieces if it is used up, or pass --once-owned to"
            + " take such plastics as used up.");
    return Optional.empty();
  }
}

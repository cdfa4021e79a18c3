package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import traytally.intake.KnownPlastics.Slip;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** A log of trips: its rows read as stints, in the order fished. */
final class TripLog {
  /** More casts or rods than a stint can have are slips (assumptions). */
  private static final int MOST_CASTS = 5000;

  private static final int MOST_RODS = 20;

  /**
   * The rows as read, before their plastics are looked up: row and stint stand at the same place.
   * Two lists, because a record for each of a million rows is memory that the stints need.
   */
  private record Lines(List<ListRow> rows, List<Stint> stints) {}

  /** Stands in a row that failed. */
  private static final Plastic ANY = Plastic.of("", "none", "none", 0);

  private final Table table;
  private final LocalDate today;
  private final KnownPlastics known;
  private final RowReader reader;
  private final StintMinutes stintMinutes;
  private final List<Stint> stints = new ArrayList<>();
  private final Map<String, Boolean> several = new HashMap<>();
  private final Repeats met = new Repeats();
  private final Doubts doubts = new Doubts();
  private final FishRead fishRead;
  private final ShortNames shortNames;

  TripLog(Table table, ImportOptions options, KnownPlastics known, LocalDate today) {
    this.table = table;
    this.today = today;
    this.known = known;
    this.reader = new RowReader(table, ColumnHabits.of(table, options, today), today);
    this.stintMinutes = new StintMinutes(table, options, reader);
    if (options.shareOut()) {
      new SharedOut(table).run();
    }
    this.fishRead = new FishRead(table, reader);
    this.shortNames = new ShortNames(table, reader, known);
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
      Optional<Stint> stint = stint(row, date.orElse(today));
      if (stint.isPresent()) {
        lines.rows().add(row);
        lines.stints().add(stint.get());
      } else {
        doubts.add(date);
      }
    }
    if (strangers == Strangers.WELCOME) {
      welcome(lines.stints());
    }
    take(lines, strangers);
  }

  private void take(Lines lines, Strangers strangers) {
    for (int i = 0; i < lines.rows().size(); i++) {
      reader.begin(lines.rows().get(i));
      Stint stint = lines.stints().get(i);
      Optional<Plastic> plastic = plastic(stint.plastic(), strangers);
      if (plastic.isPresent()) {
        if (stint.minutes().isEmpty()) {
          stintMinutes.sayUntold(stint.casts().isPresent());
        }
        stints.add(with(stint, plastic.get()));
      } else {
        missed(stint.use());
        doubts.add(Optional.of(stint.trip().date()));
      }
    }
  }

  /** The stints taken, in the list's order. */
  List<Stint> stints() {
    return stints;
  }

  /** The rows taken. */
  int taken() {
    return stints.size();
  }

  /** Whether a row that could not be taken may belong to {@code trip}. */
  boolean mayHold(Trip trip) {
    return doubts.mayTouch(trip.date());
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

  private Optional<Stint> stint(ListRow row, LocalDate date) {
    Plastic words = words();
    Trip trip = met.once(new Trip(date, known.agreed(reader.name(Field.WATER))));
    Optional<Clarity> clarity = reader.word(Field.CLARITY, Words::clarity);
    int rods = reader.count(Field.RODS, MOST_RODS).orElse(1);
    OptionalDouble minutes = minutes(row, Math.max(1, rods));
    OptionalInt casts = met.once(reader.count(Field.CASTS, MOST_CASTS));
    Fish fish = met.once(fishRead.fish());
    Loss loss = Loss.of(reader);
    int worn = reader.pieces(Field.WORN, OptionalInt.empty()).orElse(0);
    if (rods < 1) {
      reader.problem(Field.RODS, "is no rod at all. Write at least 1.");
    }
    if (reader.failed()) {
      missed(loss.pieces() + worn);
      return Optional.empty();
    }
    return Optional.of(
        new Stint(
            trip,
            known.agreed(fishRead.species()),
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

  /** Says that pieces used in a row that was not taken are still in the book. */
  private void missed(int used) {
    if (used > 0) {
      reader.note(
          reader.text(Field.LOST).isEmpty() ? Field.WORN : Field.LOST,
          "is not taken off your tray, because the row was not taken. Mend the row and import the"
              + " list again.");
    }
  }

  /** The plastic in the row's own words; any plastic if the row has failed. */
  private Plastic words() {
    Optional<Plastic> meant = shortNames.plastic();
    if (meant.isPresent() || reader.failed()) {
      return meant.orElse(ANY);
    }
    Name written = reader.nameNeeded(Field.BODY);
    Name body = known.agreed(written);
    if (several.computeIfAbsent(written.text(), SeveralInOne::namesSeveral)
        && !known.hasBody(body)) {
      reader.problem(
          Field.BODY,
          "names several plastics. Write a row for each, with its own minutes, fish and losses.");
    }
    Name colour = known.agreed(reader.nameNeeded(Field.COLOUR));
    Name maker = known.agreed(reader.name(Field.MAKER));
    int lengthMm = reader.lengthMm();
    return body.isBlank() || colour.isBlank()
        ? ANY
        : met.once(new Plastic(maker, body, colour, lengthMm));
  }

  private OptionalDouble minutes(ListRow row, int rods) {
    Optional<Double> minutes = stintMinutes.of(row, rods);
    return minutes.isPresent()
        ? met.once(OptionalDouble.of(minutes.get()))
        : OptionalDouble.empty();
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
              + KnownPlastics.several(fitting)
              + ". Write the "
              + (words.hasLength() ? "maker." : "length and the maker."));
      return Optional.empty();
    }
    return stranger(words, strangers);
  }

  private Optional<Plastic> stranger(Plastic words, Strangers strangers) {
    Optional<Slip> slip = known.slip(words);
    if (slip.isEmpty() && strangers != Strangers.REFUSED) {
      known.add(words);
      table.assume("Plastics the box list does not hold were taken as used up.");
      return Optional.of(words);
    }
    Optional<Slip> meant = slip.or(() -> known.part(words));
    String question = meant.map(m -> " " + m.question() + ".").orElse("");
    reader.problem(
        meant.map(Slip::field).orElseGet(() -> known.stranger(words)),
        "("
            + words
            + ") is not in the box list."
            + question
            + " Otherwise add it there, with 0 pieces if it is used up, or pass --once-owned to"
            + " take such plastics as used up.");
    return Optional.empty();
  }
}

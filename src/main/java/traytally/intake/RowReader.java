package traytally.intake;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import traytally.intake.Problem.Severity;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.sheet.Cell;

/** Reads the typed values of one row after another, and collects what is wrong with each. */
final class RowReader {
  /** Dates before this are slips: the oldest log a person types in (an assumption). */
  private static final LocalDate FIRST_DATE = LocalDate.of(1950, 1, 1);

  private static final Set<String> UNKNOWN = Set.of("-", "?");

  private final Table table;
  private final ColumnHabits habits;
  // A list says the same few things over and over: each is worked out once.
  private final Map<String, Name> names = new HashMap<>();
  private final CellDates dates;
  private final Map<Cell, Optional<Lengths.Written>> lengths = new HashMap<>();
  private final IdentityHashMap<Cell, Told<Integer>> numbers = new IdentityHashMap<>();
  private final Map<String, Told<Integer>> quantities = new HashMap<>();
  private final Map<String, Told<Double>> times = new HashMap<>();
  private ListRow row = ListRow.empty();
  private boolean failed;

  RowReader(Table table, ColumnHabits habits, LocalDate today) {
    this.table = table;
    this.habits = habits;
    this.dates = new CellDates(table, habits, today);
  }

  /** Goes on to {@code next}. */
  void begin(ListRow next) {
    row = next;
    failed = false;
  }

  /** The list whose rows it reads. */
  Table table() {
    return table;
  }

  /** Whether the row has a problem and cannot be taken. */
  boolean failed() {
    return failed;
  }

  void problem(Field field, String what) {
    failed = true;
    say(field, what, Severity.PROBLEM);
  }

  void note(Field field, String what) {
    say(field, what, Severity.NOTE);
  }

  private void say(Field field, String what, Severity severity) {
    ListRow.Place place = row.place(field);
    String value = place.cell().shown().strip();
    table.say(Problem.of(table.sheet(), row.number(), place.column(), value, what, severity));
  }

  private <T> Optional<T> heard(Field field, Told<T> told) {
    if (told.isWrong()) {
      problem(field, told.wrong());
    } else if (told.approximate()) {
      say(field, "is a guess: " + told.assumed() + ".", Severity.APPROXIMATE);
    } else if (!told.assumed().isEmpty()) {
      table.assume(told.assumed() + ".");
    }
    return told.value();
  }

  /** Something that is no reason to leave the row out: what cannot be read is said and dropped. */
  private <T> Optional<T> heardLightly(Field field, Told<T> told) {
    if (told.isWrong()) {
      note(field, told.wrong() + " The rest of the row was taken.");
      return Optional.empty();
    }
    return heard(field, told);
  }

  /** Whether what {@code field} tells may be of another row. */
  boolean isDoubted(Field field) {
    return row.doubted(field).isPresent();
  }

  String text(Field field) {
    return tells(field) ? row.cell(field).shown().strip() : "";
  }

  /** Whether something stands in {@code field}; to put a number into words costs more than this. */
  private boolean tells(Field field) {
    Cell cell = row.cell(field);
    if (cell instanceof Cell.ErrorValue) {
      problem(field, "is the error of a formula. Write the value instead.");
      return false;
    }
    return !ListRow.isBlank(cell);
  }

  Name name(Field field) {
    return names.computeIfAbsent(text(field), text -> Name.of(NoteLines.withoutBullet(text)));
  }

  /** The name in {@code field}; its lack is a problem. */
  Name nameNeeded(Field field) {
    Name name = name(field);
    if (name.isBlank() && !failed) {
      problem(field, "The " + field.word() + " is missing. Write it in this row.");
    }
    return name;
  }

  /** The length in millimetres, 0 if not said. */
  int lengthMm() {
    if (!tells(Field.LENGTH)) {
      return 0;
    }
    Cell cell = row.cell(Field.LENGTH);
    if (cell instanceof Cell.Text text && UNKNOWN.contains(text.text().strip())) {
      return 0;
    }
    Optional<Lengths.Written> written = lengths.computeIfAbsent(cell, RowReader::writtenLength);
    if (written.isEmpty()) {
      problem(Field.LENGTH, "is not a length. Write it as 75 mm or 3 in.");
      return 0;
    }
    Lengths.Unit bare = Lengths.unit(habits.bare(), written.get().number());
    return heard(Field.LENGTH, Lengths.mm(written.get(), bare)).orElse(0);
  }

  /** A length as it stands in a cell; a number's format may state the unit. */
  static Optional<Lengths.Written> writtenLength(Cell cell) {
    if (cell instanceof Cell.Numeric number) {
      String format = number.format().toLowerCase(Locale.ROOT);
      Optional<Lengths.Unit> unit = Optional.empty();
      if (format.contains("mm")) {
        unit = Optional.of(Lengths.Unit.MM);
      } else if (format.contains("cm")) {
        unit = Optional.of(Lengths.Unit.CM);
      } else if (format.contains("in") || format.contains("\\\"")) {
        unit = Optional.of(Lengths.Unit.INCH);
      }
      return Optional.of(new Lengths.Written(decimal(number), unit));
    }
    return cell instanceof Cell.Text text ? Lengths.parse(text.text()) : Optional.empty();
  }

  /** The number without the dust of binary fractions: 4.95 and not 4.9500000000000002. */
  private static BigDecimal decimal(Cell.Numeric number) {
    return new BigDecimal(number.value()).round(new MathContext(12));
  }

  /** Pieces in {@code field}; empty if blank. */
  OptionalInt pieces(Field field, OptionalInt packSize) {
    return counted(field, quantity(field, packSize), Quantities.MOST_PIECES);
  }

  /** A count of at most {@code most} in {@code field}; empty if blank. */
  OptionalInt count(Field field, int most) {
    return counted(field, quantity(field, OptionalInt.empty()), most);
  }

  private OptionalInt counted(Field field, Told<Integer> told, int most) {
    Optional<Integer> count =
        told.isWrong() && table.kind() == ListKind.TRIPS
            ? heard(field, Told.wrong(CountWords.of(field, told.wrong())))
            : heard(field, told);
    if (count.isPresent() && count.get() > most) {
      problem(field, "is too many to be true. Write at most " + most + ".");
    }
    return count.isPresent() ? OptionalInt.of(count.get()) : OptionalInt.empty();
  }

  /** A count in {@code field} that the row can do without: what is unreadable is said. */
  OptionalInt countLightly(Field field, int most) {
    Optional<Integer> count =
        heardLightly(field, quantity(field, OptionalInt.empty())).filter(n -> n <= most);
    return count.isPresent() ? OptionalInt.of(count.get()) : OptionalInt.empty();
  }

  private Told<Integer> quantity(Field field, OptionalInt packSize) {
    if (!tells(field)) {
      return Told.nothing();
    }
    if (isDoubted(field)) {
      return Told.wrong(
          "stands for several plastics and may be any one's. Write a row for each plastic,"
              + " or behind each name what was its own, such as \"2 landed\" or \"lost 1\"; or pass"
              + " --share-out to share it out.");
    }
    Cell cell = row.cell(field);
    if (cell instanceof Cell.Numeric number) {
      return numbers.computeIfAbsent(cell, c -> Quantities.whole(decimal(number)));
    }
    if (cell instanceof Cell.DateTime || cell instanceof Cell.Time) {
      return Told.wrong(
          "is a date or a time, not a count: the spreadsheet may have made one of what you typed."
              + " Write the number.");
    }
    String text = text(field);
    Told<Integer> told =
        quantities.computeIfAbsent(
            text + "/" + packSize.orElse(0), key -> Quantities.parse(text, packSize));
    return told.isWrong() ? ofItsOwn(field, text).orElse(told) : told;
  }

  /** A number with the word of its column behind it: {@code 4 takes} under Takes. */
  private Optional<Told<Integer>> ofItsOwn(Field field, String text) {
    int blank = text.indexOf(' ');
    return blank > 0
            && HeaderWords.isUsual(WordList.fold(text.substring(blank)), field, table.kind())
        ? Optional.of(Quantities.parse(text.substring(0, blank), OptionalInt.empty()))
        : Optional.empty();
  }

  Optional<LocalDate> date(Field field) {
    if (!tells(field)) {
      if (!failed) {
        problem(field, "The date is missing. Write it in this row.");
      }
      return Optional.empty();
    }
    Optional<LocalDate> date = heard(field, dates.of(row.cell(field)));
    if (date.filter(d -> d.isBefore(FIRST_DATE)).isPresent()) {
      problem(field, "is too long ago to be true. Check the year.");
      return Optional.empty();
    }
    return date;
  }

  /** Minutes in {@code field}; empty if blank. */
  Optional<Double> minutes(Field field) {
    Cell cell = row.cell(field);
    if (cell instanceof Cell.Time time) {
      return heard(field, Durations.checked(time.length().toSeconds() / 60.0));
    }
    if (cell instanceof Cell.Numeric number) {
      return heard(
          field, Durations.checked(habits.bareTime().minutes(decimal(number)).doubleValue()));
    }
    return heard(
        field,
        times.computeIfAbsent(text(field), key -> Durations.minutes(key, habits.bareTime())));
  }

  /** Minutes that may be more than a day's, up to {@code mostHours}; empty if blank. */
  Optional<Double> minutesOfDays(Field field, double mostHours) {
    Cell cell = row.cell(field);
    if (cell instanceof Cell.Numeric number && habits.bareTime() != Durations.Bare.MINUTES) {
      double minutes = habits.bareTime().minutes(decimal(number)).doubleValue();
      if (minutes < 0 || minutes > mostHours * 60) {
        problem(field, "is no number of hours for a trip. Write up to " + (int) mostHours + ".");
        return Optional.empty();
      }
      return Optional.of(minutes);
    }
    return minutes(field);
  }

  /** Minutes from one time of day to another; empty if either is blank. */
  Optional<Double> span(Field from, Field to) {
    String first = text(from);
    String last = text(to);
    if (first.isEmpty() || last.isEmpty()) {
      return Optional.empty();
    }
    Told<Double> told = Durations.between(first, last);
    if (told.isWrong()) {
      problem(
          to,
          "does not end a length of time from "
              + first
              + ". Write both as 09:10; over midnight at most 14 hours are believed.");
      return Optional.empty();
    }
    return heard(to, told);
  }

  /** Money in {@code field}; empty if blank. */
  Optional<Amounts.Written> amount(Field field, java.util.Currency own) {
    return heard(field, amountTold(field, own));
  }

  /** Money the row can do without. */
  Optional<Money> amountLightly(Field field, java.util.Currency own) {
    return heardLightly(field, amountTold(field, own))
        .map(sum -> Money.of(sum.units(), sum.currency().orElse(own)));
  }

  /** A sum the row can do without, in whatever currency. */
  Optional<Amounts.Written> amountWritten(Field field, java.util.Currency own) {
    return heardLightly(field, amountTold(field, own));
  }

  private Told<Amounts.Written> amountTold(Field field, java.util.Currency own) {
    String text = text(field);
    Cell cell = row.cell(field);
    if (cell instanceof Cell.Numeric number) {
      Told<Amounts.Written> bare = Amounts.parse(decimal(number).toPlainString(), own);
      return bare.map(
          sum -> new Amounts.Written(sum.units(), Amounts.ofFormat(number.format(), own)));
    }
    if (cell instanceof Cell.DateTime || cell instanceof Cell.Time) {
      return Told.wrong("is a date or a time, not a price. Write a number such as 4.95.");
    }
    return Amounts.parse(text, own);
  }

  <T> Optional<T> word(Field field, java.util.function.Function<String, Told<T>> reading) {
    String text = text(field);
    return text.isEmpty() ? Optional.empty() : heardLightly(field, reading.apply(text));
  }
}

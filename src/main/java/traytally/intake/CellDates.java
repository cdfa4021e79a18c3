package traytally.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Cell;

/** The days that the cells of one list tell, each cell worked out once. */
final class CellDates {
  /** The serial of 1950-01-01 and of 2100-01-01 in the 1900 system (ECMA-376 part 1, 18.17.4). */
  private static final double FIRST_SERIAL = 18264;

  private static final double LAST_SERIAL = 73051;

  private static final LocalDate SERIAL_ZERO = LocalDate.of(1899, 12, 30);

  /** A spreadsheet's day number, copied as text: from 1954 to 2119. */
  private static final Pattern DAY_NUMBER = Pattern.compile("[2-7]\\d{4}");

  /** A day of the month and nothing more, perhaps with the day of the week. */
  private static final Pattern DAY_ALONE =
      Pattern.compile("(?:[a-z]{3,9}\\.?,? )?(\\d{1,2})(?:st|nd|rd|th)?(?:,? [a-z]{3,9})?");

  /** Whether a cell tells the day of the month and nothing more. */
  static boolean isDayAlone(Cell cell) {
    return DAY_ALONE.matcher(Numbers.plain(cell.shown()).toLowerCase(Locale.ROOT)).matches();
  }

  private final Table table;
  private final ColumnHabits habits;
  private final LocalDate today;
  private final Map<Cell, Told<LocalDate>> told = new HashMap<>();

  CellDates(Table table, ColumnHabits habits, LocalDate today) {
    this.table = table;
    this.habits = habits;
    this.today = today;
  }

  /** The day a cell tells. */
  Told<LocalDate> of(Cell cell) {
    return told.computeIfAbsent(cell, this::read);
  }

  private Told<LocalDate> read(Cell cell) {
    if (cell instanceof Cell.DateTime moment) {
      return Told.of(moment.when().toLocalDate());
    }
    double number = number(cell);
    if (number >= FIRST_SERIAL && number < LAST_SERIAL) {
      return Told.assuming(SERIAL_ZERO.plusDays((long) number), "Day numbers were read as dates");
    }
    Matcher day = DAY_ALONE.matcher(Numbers.plain(cell.shown()).toLowerCase(Locale.ROOT));
    if (table.month().isPresent() && day.matches()) {
      return dayOf(table.month().get(), Integer.parseInt(day.group(1)));
    }
    Told<Dates.Written> told = Dates.parse(cell.shown(), today, OptionalInt.empty());
    if (told.isWrong() && table.kind() == ListKind.PLAN && table.year().isEmpty()) {
      return toCome(cell).orElse(told.map(w -> today));
    }
    if (told.isWrong() && table.year().isPresent()) {
      Told<Dates.Written> that = Dates.parse(cell.shown(), today, table.year());
      if (that.value().isPresent()) {
        table.assume("Dates without a year were read as of " + table.year().getAsInt() + ".");
      }
      told = that;
    }
    Optional<Dates.Written> written = told.value();
    if (written.isEmpty()) {
      return told.map(w -> today);
    }
    Optional<LocalDate> date =
        written.get().certain().or(() -> habits.order().flatMap(written.get()::in));
    if (habits.order().filter(o -> written.get().in(o).isEmpty()).isPresent()) {
      return Told.wrong(
          "cannot be read in the order of day and month of this column. Write it as 2026-06-03.");
    }
    return date.map(Told::of)
        .orElseGet(() -> Told.wrong("may be either of two dates. Write it as 2026-06-03."));
  }

  /** The number in a cell that may be a spreadsheet's day, 0 if there is none. */
  private static double number(Cell cell) {
    if (cell instanceof Cell.Text text && DAY_NUMBER.matcher(text.text().strip()).matches()) {
      return Double.parseDouble(text.text().strip());
    }
    return cell instanceof Cell.Numeric number ? number.value() : 0;
  }

  /** The next such day, where the date of a plan has no year. */
  private Optional<Told<LocalDate>> toCome(Cell cell) {
    String day = Dates.dayFirst(Numbers.plain(cell.shown()));
    return Dates.parse(day, today, OptionalInt.of(today.getYear()))
        .value()
        .flatMap(written -> written.certain().or(() -> habits.order().flatMap(written::in)))
        .map(date -> date.isBefore(today) ? date.plusYears(1) : date)
        .map(date -> Told.assuming(date, "Dates without a year were read as the next such day"));
  }

  private Told<LocalDate> dayOf(YearMonth month, int day) {
    if (!month.isValidDay(day)) {
      return Told.wrong("is no day of " + month + ". Write the date as 2026-06-03.");
    }
    table.assumeOnce("Days without a month were read as of " + month + ".");
    return Told.of(month.atDay(day));
  }
}

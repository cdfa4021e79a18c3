package traytally.intake;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import traytally.sheet.Cell;

/** Days whose number, month and year stand in columns of their own. */
final class DayMonthYear {
  private static final Set<String> DAY = Set.of("day", "d", "dd");
  private static final Set<String> MONTH = Set.of("month", "m", "mon", "mth");
  private static final Set<String> YEAR = Set.of("year", "y", "yr", "yy", "yyyy");

  private final Table table;
  private final int day;
  private final int month;
  private final OptionalInt year;
  private String lastMonth = "";
  private String lastYear = "";

  private DayMonthYear(Table table, int day, int month, OptionalInt year) {
    this.table = table;
    this.day = day;
    this.month = month;
    this.year = year;
    this.lastYear = table.year().isPresent() ? Integer.toString(table.year().getAsInt()) : "";
  }

  /** Those of {@code table}, if it is of days and tells them so. */
  static Optional<DayMonthYear> of(Table table) {
    OptionalInt day = column(table, DAY);
    OptionalInt month = column(table, MONTH);
    boolean days = table.kind() == ListKind.TRIPS || table.kind() == ListKind.PLAN;
    if (!days || day.isEmpty() || month.isEmpty()) {
      return Optional.empty();
    }
    Map<Field, Integer> columns = table.guess().columns();
    boolean otherwise = columns.getOrDefault(Field.DATE, day.getAsInt()) != day.getAsInt();
    return otherwise
        ? Optional.empty()
        : Optional.of(
            new DayMonthYear(table, day.getAsInt(), month.getAsInt(), column(table, YEAR)));
  }

  private static OptionalInt column(Table table, Set<String> words) {
    return IntStream.range(0, table.headers().size())
        .filter(column -> words.contains(table.headers().get(column).folded()))
        .findFirst();
  }

  /** Puts the whole day into {@code row}; a month or a year is told once for the rows below it. */
  void put(ListRow row) {
    String number = row.at(day).shown().strip();
    lastMonth = row.at(month).isBlank() ? lastMonth : row.at(month).shown().strip();
    if (year.isPresent() && !row.at(year.getAsInt()).isBlank()) {
      lastYear = row.at(year.getAsInt()).shown().strip();
    }
    if (!number.matches("\\d{1,2}(?:st|nd|rd|th)?") || lastMonth.isEmpty() || lastYear.isEmpty()) {
      return;
    }
    String digits = number.replaceAll("\\D", "");
    String whole =
        lastMonth.matches("\\d{1,2}") && lastYear.matches("\\d{4}")
            ? String.format(
                Locale.ROOT,
                "%s-%02d-%02d",
                lastYear,
                Integer.parseInt(lastMonth),
                Integer.parseInt(digits))
            : digits + " " + lastMonth + " " + lastYear;
    row.put(Field.DATE, Cell.text(whole), day);
    table.assumeOnce("The date was put together from its day, month and year.");
  }
}

package traytally.intake;

import java.time.YearMonth;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/** Months and years on rows of their own, over days that tell none. */
final class CalendarHeadings {
  private static final Pattern MONTH = Pattern.compile("\\p{L}{3,9}\\.?,?(?: '?\\d{2,4})?:?");

  private static final Pattern YEAR =
      Pattern.compile(
          "(?:season|year)?\\s*(?:19|20)\\d\\d(?:\\s*season)?:?", Pattern.CASE_INSENSITIVE);

  private final Table table;
  private final boolean ofDays;
  private Optional<YearMonth> month = Optional.empty();
  private Optional<String> year = Optional.empty();

  /** Those of {@code table}, if its rows tell their days. */
  CalendarHeadings(Table table) {
    this.table = table;
    this.ofDays =
        table.guess().has(Field.DATE)
            && (table.kind() == ListKind.TRIPS || table.kind() == ListKind.PLAN);
  }

  /**
   * Whether a row that holds {@code first} and no more is such a heading, which is kept in mind.
   */
  boolean take(List<Integer> filled, String first) {
    if (!ofDays || filled.size() != 1) {
      return false;
    }
    if (YEAR.matcher(first).matches()) {
      year = Optional.of(first.replaceAll("\\D", ""));
      return true;
    }
    Optional<YearMonth> told =
        MONTH.matcher(first).matches() ? Dates.monthWithin(first, table.year()) : Optional.empty();
    month = told.or(() -> month);
    return told.isPresent();
  }

  /** Gives the day of {@code row} what the headings over it tell. */
  void tell(ListRow row) {
    if (month.isPresent()) {
      dayOfMonth(row, row.place(Field.DATE));
    }
    if (year.isPresent()) {
      dayOfYear(row, row.place(Field.DATE));
    }
  }

  private void dayOfMonth(ListRow row, Place date) {
    if (CellDates.isDayAlone(date.cell())) {
      String day = date.cell().shown().replaceAll("\\D", "");
      String whole =
          String.format(Locale.ROOT, "%s-%02d", month.orElseThrow(), Integer.parseInt(day));
      row.put(Field.DATE, Cell.text(whole), date.column());
      table.assume("Months on rows of their own tell the month of the days below.");
    }
  }

  private void dayOfYear(ListRow row, Place date) {
    if (date.cell() instanceof Cell.Text text) {
      String whole = text.text().strip() + " " + year.orElseThrow();
      if (Dates.lacksYear(text.text()) && Dates.isDate(whole)) {
        row.put(Field.DATE, Cell.text(whole), date.column());
        table.assume("Years on rows of their own tell the year of the days below.");
      }
    }
  }
}

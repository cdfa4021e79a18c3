package traytally.intake;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import traytally.intake.Problem.Severity;
import traytally.sheet.Address;
import traytally.sheet.Cell;

/** One list found in a sheet: its columns, its rows, and what was assumed on the way. */
final class Table {
  private static final Pattern YEAR = Pattern.compile("(?<!\\d)(?:19[5-9]\\d|20\\d\\d)(?!\\d)");
  private final GivenSheet sheet;
  private final ListKind kind;
  private final List<ColumnHeader> headers;
  private final ColumnGuess guess;
  private final List<ListRow> rows = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();

  /** What was said of the last row. */
  private final Set<Problem> ofRow = new HashSet<>();

  private final Map<String, Integer> assumptions = new LinkedHashMap<>();
  private final Map<Field, String> passed = new EnumMap<>(Field.class);
  private OptionalInt year = OptionalInt.empty();
  private Optional<YearMonth> month = Optional.empty();
  private List<String> names = List.of();
  private List<String> titles = List.of();
  private int firstRow;
  private int gone;

  Table(GivenSheet sheet, List<ColumnHeader> headers, ColumnGuess guess) {
    this.sheet = sheet;
    this.kind = guess.kind();
    this.headers = List.copyOf(headers);
    this.guess = guess;
  }

  /** The one year that the titles, the tab or the file's name speak of, if they do. */
  OptionalInt year() {
    return year;
  }

  /** The month that the title, the tab or the file's name speaks of, if it does. */
  Optional<YearMonth> month() {
    return month;
  }

  /** The titles over the list, the nearest first. */
  List<String> titles() {
    return titles;
  }

  /** What the list may be called: the title over it, and the tab. */
  List<String> names() {
    return names;
  }

  /** Notes what stands over the list. */
  void under(List<String> above) {
    titles = List.copyOf(above);
    names = Stream.concat(titles.stream().limit(1), Stream.of(sheet.name())).toList();
    List<String> texts = new ArrayList<>(titles);
    texts.add(sheet.name());
    texts.add(sheet.file());
    for (String text : texts) {
      List<Integer> years =
          YEAR.matcher(text).results().map(y -> Integer.parseInt(y.group())).distinct().toList();
      if (years.size() == 1 && year.isEmpty()) {
        year = OptionalInt.of(years.get(0));
      }
    }
    month = texts.stream().flatMap(text -> Dates.monthWithin(text, year).stream()).findFirst();
  }

  /** The headers of the columns that were taken for nothing. */
  List<String> passedOver() {
    return columnsTaken().stream()
        .filter(column -> column.field().isEmpty())
        .map(SheetReading.ColumnTaken::header)
        .toList();
  }

  /** The place in the sheet of the first row under the header. */
  int firstRow() {
    return firstRow;
  }

  /** Notes the place in the sheet of the first row under the header. */
  void beginAt(int row) {
    firstRow = row;
  }

  GivenSheet sheet() {
    return sheet;
  }

  ListKind kind() {
    return kind;
  }

  ColumnGuess guess() {
    return guess;
  }

  List<ColumnHeader> headers() {
    return headers;
  }

  List<ListRow> rows() {
    return rows;
  }

  /** The number of rows, gone or not. */
  int rowsRead() {
    return Math.max(gone, rows.size());
  }

  /** Lets go of the rows once they are read: those of a long log take the memory of its stints. */
  void letGo() {
    gone = rows.size();
    rows.clear();
  }

  List<Problem> problems() {
    return problems;
  }

  /** The header over {@code field}, if it has a column. */
  Optional<ColumnHeader> header(Field field) {
    return Optional.ofNullable(guess.columns().get(field)).map(headers::get);
  }

  /** Whether a column or anything else in the list tells {@code field}. */
  boolean tells(Field field) {
    return guess.has(field) || rows.stream().anyMatch(row -> !row.isBlank(field));
  }

  /** Passes over the column taken for {@code field} after all, and says why. */
  void passOver(Field field, String why) {
    passed.put(field, why);
  }

  /** Notes an assumption; one made of many rows is said once, with their number. */
  void assume(String sentence) {
    assumptions.merge(sentence, 1, Integer::sum);
  }

  /**
   * Gives each of {@code of} its rows what a title tells, and says so.
   *
   * @param what was taken, as the sentence begins: {@code The water}
   */
  void inherit(Field field, String value, String title, String what, List<ListRow> of) {
    ListRow.Place place = new ListRow.Place(Cell.text(value), -1, true);
    of.forEach(row -> row.fill(field, place));
    assume(what + " was taken from the title \"" + title + "\".");
  }

  /** Notes an assumption on a whole column, which may be come upon twice. */
  void assumeOnce(String sentence) {
    assumptions.putIfAbsent(sentence, 1);
  }

  /** Notes {@code problem}, once where several plastics of one row share the cell. */
  void say(Problem problem) {
    if (problems.isEmpty() || problems.get(problems.size() - 1).row() != problem.row()) {
      ofRow.clear();
    }
    if (ofRow.add(problem)) {
      problems.add(problem);
    }
  }

  /** Reports the time in {@code words} of a line that was taken as the least it may be. */
  void guess(int row, String words, String minutes) {
    String what = "is a guess: taken as " + minutes + " minutes.";
    say(Problem.of(sheet, row, 0, words, what, Severity.APPROXIMATE));
  }

  void note(int row, int column, String value, String what) {
    problems.add(Problem.of(sheet, row, column, value, what, Severity.NOTE));
  }

  /** How it was read, when {@code taken} of its rows were. */
  SheetReading reading(int taken) {
    List<String> said = new ArrayList<>();
    assumptions.forEach(
        (sentence, times) -> said.add(times == 1 ? sentence : sentence + " (" + times + " rows)"));
    return new SheetReading(
        sheet.file(),
        sheet.name(),
        Optional.of(kind),
        columnsTaken(),
        said,
        rowsRead(),
        taken,
        rowsRead() - taken);
  }

  private List<SheetReading.ColumnTaken> columnsTaken() {
    List<SheetReading.ColumnTaken> taken = new ArrayList<>();
    for (int column = 0; column < headers.size(); column++) {
      int here = column;
      Optional<Field> field =
          guess.columns().entrySet().stream()
              .filter(entry -> entry.getValue() == here)
              .map(Map.Entry::getKey)
              .min(Comparator.naturalOrder())
              .or(() -> Optional.ofNullable(guess.across().get(here)));
      if (field.isPresent() || !headers.get(column).text().isEmpty()) {
        taken.add(
            new SheetReading.ColumnTaken(
                Address.columnLetters(column),
                headers.get(column).text(),
                field.filter(f -> !passed.containsKey(f)),
                field.map(passed::get).orElse(guess.why().getOrDefault(column, "passed over"))));
      }
    }
    return taken;
  }
}

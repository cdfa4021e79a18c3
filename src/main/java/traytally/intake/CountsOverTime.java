package traytally.intake;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import traytally.intake.ListRow.Place;

/**
 * Counts with a column for each day or month, perhaps filled only where one had changed: the count
 * of a row is its newest one.
 */
final class CountsOverTime {
  private static final String MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec";

  /** What was counted again, beside what was counted. */
  private static final Pattern RECOUNT =
      Pattern.compile(
          "(?:.* )?(?:re ?counts?|re ?counted|count(?:ed)? again|(?:second|2nd|new|newest) count"
              + "|count 2|corrected(?: count)?|correction|checked|now)");

  /** Counts that one made again stands beside. */
  private static final Set<String> COUNTED =
      Set.of("counted", "count", "first count", "1st count", "count 1", "old count", "tally");

  /** A day, a month or a year, perhaps beside a word that says what was done then. */
  private static final Pattern DATED =
      Pattern.compile(
          "(?:(?:re)?count(?:ed)?(?: on| in| of)? |stock(?: on| at| in)? |(?:left|pieces|qty|tally)"
              + "(?: on| at)? |(?:at|on) )?"
              + "(?:(?<day>\\d{1,2})(?:st|nd|rd|th)? )?(?:"
              + "(?<month>jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?"
              + "|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)"
              + "(?: (?<year>\\d{2,4}))?"
              + "|(?<iso>20\\d\\d)(?: (?<isoMonth>\\d\\d)(?: (?<isoDay>\\d\\d))?)?"
              + "|(?<number>\\d{1,2}) (?<end>\\d{2,4}))(?: (?:re)?count)?");

  /** Two months may stand either way about; three that fall stand newest first (an assumption). */
  private static final int MANY = 3;

  /** What a year weighs in a day's number. */
  private static final int YEAR = 10_000;

  private final Table table;

  CountsOverTime(Table table) {
    this.table = table;
  }

  /** Takes a blank newest count from the next older column that holds one. */
  void run() {
    int last = table.guess().columns().getOrDefault(Field.PIECES, -1);
    if (last < 0) {
      return;
    }
    List<Integer> earlier =
        isDated(last)
            ? newestFirst(table.headers()).stream().skip(1).toList()
            : countedBefore(last);
    for (ListRow row : table.rows()) {
      Optional<Integer> filled =
          row.isBlank(Field.PIECES)
              ? earlier.stream().filter(column -> !ListRow.isBlank(row.at(column))).findFirst()
              : Optional.empty();
      if (filled.isPresent()) {
        row.fill(Field.PIECES, new Place(row.at(filled.get()), filled.get(), true));
        table.assume("Where the newest count is blank, the one before it was taken.");
      }
    }
  }

  /** The counts to the left of one that was made again, the nearest first. */
  private List<Integer> countedBefore(int last) {
    return isRecount(table.headers().get(last).folded())
        ? IntStream.iterate(last - 1, column -> column >= 0, column -> column - 1)
            .filter(table.guess()::leaves)
            .filter(c -> isFirstOf(table.headers().get(c).folded(), last))
            .boxed()
            .toList()
        : List.of();
  }

  /** What there is now may stand beside what was bought, and a recount only beside a count. */
  private boolean isFirstOf(String header, int last) {
    return COUNTED.contains(header)
        || (!table.headers().get(last).folded().endsWith("now")
            && HeaderWords.isUsual(header, Field.PIECES, ListKind.BOX));
  }

  /** Whether {@code header}, folded, stands over what was counted again. */
  static boolean isRecount(String header) {
    return RECOUNT.matcher(header).matches();
  }

  private boolean isDated(int column) {
    return isDated(table.headers().get(column).folded());
  }

  /** Whether {@code header}, folded, is a day, a month or a year, over what was counted then. */
  static boolean isDated(String header) {
    return when(header).isPresent();
  }

  /**
   * The columns of counts under their days, the newest first: by the days where each tells its
   * year, else by the months where they fall from column to column, else from the last on.
   */
  static List<Integer> newestFirst(List<ColumnHeader> headers) {
    List<Integer> columns =
        IntStream.range(0, headers.size())
            .filter(column -> isDated(headers.get(column).folded()))
            .boxed()
            .toList();
    List<Integer> days =
        columns.stream().map(c -> when(headers.get(c).folded()).orElseThrow()).toList();
    boolean years = days.stream().allMatch(day -> day >= YEAR);
    boolean falling =
        days.size() >= MANY
            && IntStream.range(1, days.size()).allMatch(i -> days.get(i) < days.get(i - 1));
    Comparator<Integer> byAge =
        years
            ? Comparator.comparing((Integer c) -> when(headers.get(c).folded()).orElseThrow())
                .thenComparing(c -> c)
                .reversed()
            : falling ? Comparator.naturalOrder() : Comparator.reverseOrder();
    return columns.stream().sorted(byAge).toList();
  }

  /** A day as the number yyyymmdd, 0 for what is not told; empty if {@code header} is no day. */
  private static Optional<Integer> when(String header) {
    Matcher dated = DATED.matcher(header);
    if (!dated.matches()) {
      return Optional.empty();
    }
    if (dated.group("iso") != null) {
      return Optional.of(
          day(dated.group("iso"), number(dated.group("isoMonth")), dated.group("isoDay")));
    }
    if (dated.group("number") != null) {
      return dated.group("day") == null
          ? Optional.empty()
          : Optional.of(day(dated.group("end"), number(dated.group("number")), dated.group("day")));
    }
    int month = MONTHS.indexOf(dated.group("month").substring(0, 3)) / 3 + 1;
    return Optional.of(day(dated.group("year"), month, dated.group("day")));
  }

  private static int day(String year, int month, String day) {
    int full = number(year) > 0 && number(year) < 100 ? 2000 + number(year) : number(year);
    return full * YEAR + month * 100 + number(day);
  }

  private static int number(String digits) {
    return digits == null ? 0 : Integer.parseInt(digits);
  }
}

package traytally.report;

import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Function;
import traytally.ledger.Book;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Setting;
import traytally.plastic.Name;
import traytally.report.Column.Kind;
import traytally.restock.Outlook;
import traytally.restock.Prospect;
import traytally.trip.FishingTime;
import traytally.trip.Stint;

/** What the log comes to by month and by water, and what the trays hold against it. */
public final class Season {
  /** Bars that can be told apart on one page (an assumption). */
  private static final int MOST_BARS = 12;

  private static final int VALUE = 1;
  private static final double MINUTES_AN_HOUR = 60;

  private static final List<Column> BY_MONTH =
      List.of(
          new Column("month", "Month", Kind.TEXT),
          new Column("takes_per_hour", "Takes an hour", Kind.DECIMAL),
          new Column("takes", "Takes", Kind.WHOLE),
          new Column("rod_hours", "Rod-hours", Kind.DECIMAL));

  private static final List<Column> BY_WATER =
      List.of(
          new Column("water", "Water", Kind.TEXT),
          new Column("lost", "Pieces lost", Kind.WHOLE),
          new Column("lost_per_hour", "Lost an hour", Kind.DECIMAL),
          new Column("rod_hours", "Rod-hours", Kind.DECIMAL));

  private static final List<Column> STOCK =
      List.of(
          new Column("plastic", "Plastic", Kind.TEXT),
          new Column("pieces", "Pieces", Kind.WHOLE),
          new Column("expected_use", "Use to come", Kind.DECIMAL),
          new Column("use_p90", "Nine times in ten at most", Kind.WHOLE),
          new Column("run_out_chance", "Run-out chance", Kind.CHANCE));

  /** Sums over some stints. */
  private record Sum(long takes, long lost, double hours) {
    static final Sum NONE = new Sum(0, 0, 0);

    Sum plus(Stint stint, FishingTime time) {
      return new Sum(
          takes + stint.fish().takes(),
          lost + stint.lost(),
          hours + time.minutes() * stint.rods() / MINUTES_AN_HOUR);
    }

    Value perHour(long count) {
      return Value.of(hours > 0 ? OptionalDouble.of(count / hours) : OptionalDouble.empty());
    }
  }

  private Season() {}

  /** Takes an hour in each month of the year, all years together. */
  public static Report months(Book book, LocalDate asOf) {
    Map<Month, Sum> sums = sums(book, asOf, stint -> stint.trip().date().getMonth());
    List<List<Value>> rows = new ArrayList<>();
    sums.forEach(
        (month, sum) ->
            rows.add(
                List.of(
                    Value.of(month.getDisplayName(TextStyle.SHORT_STANDALONE, Locale.ENGLISH)),
                    sum.perHour(sum.takes()),
                    Value.of(sum.takes()),
                    Value.of(sum.hours()))));
    return table("months", "Months", asOf, BY_MONTH, rows);
  }

  public static Chart monthsChart() {
    return chart(
        "Takes an hour by month",
        "Columns: for each month in which you fished, the takes in a rod-hour, all years together.",
        "takes in a rod-hour",
        List.of(VALUE),
        false);
  }

  /** Pieces lost on each water, the most first. */
  public static Report waters(Book book, LocalDate asOf) {
    Map<Name, Sum> sums = sums(book, asOf, stint -> stint.trip().water());
    List<List<Value>> rows = new ArrayList<>();
    sums.entrySet().stream()
        .sorted(Comparator.comparing(entry -> -entry.getValue().lost()))
        .forEach(
            entry ->
                rows.add(
                    List.of(
                        Words.orUnknown(entry.getKey()),
                        Value.of(entry.getValue().lost()),
                        entry.getValue().perHour(entry.getValue().lost()),
                        Value.of(entry.getValue().hours()))));
    return table("waters", "Waters", asOf, BY_WATER, rows);
  }

  public static Chart watersChart() {
    return chart(
        "Pieces lost by water",
        "Bars: for each water in your log, the pieces that did not come home.",
        "pieces lost",
        List.of(VALUE),
        true);
  }

  /** Pieces in the tray against the use to come, the most used first. */
  public static Report stock(Outlook outlook, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    outlook.prospects().values().stream()
        .sorted(Comparator.comparingDouble(Prospect::expectedUse).reversed())
        .forEach(
            prospect ->
                rows.add(
                    List.of(
                        Value.of(prospect.plastic().toString()),
                        Value.of(prospect.pieces().count()),
                        Value.of(prospect.expectedUse()),
                        Value.of(prospect.useP90()),
                        Value.of(prospect.runOutChance()))));
    return new Report(
        "stock",
        "Stock and use",
        asOf,
        List.of(),
        STOCK,
        rows,
        List.of(),
        List.of("Use to come: " + outlook.horizon().words() + "."));
  }

  public static Chart stockChart() {
    return chart(
        "Pieces in the tray and use to come",
        "Pairs of bars: for the "
            + MOST_BARS
            + " plastics that the coming trips use most, the pieces in the tray and the pieces"
            + " expected to be used.",
        "pieces",
        List.of(VALUE, VALUE + 1),
        true);
  }

  /** The chart of {@link TrustReport}: times the mean, with its 90 % interval. */
  public static Chart trustChart(Report trust) {
    return new Chart(
        "Times the mean of the same days, with 90 % intervals",
        "Bars with intervals: how many times the mean of the same days' colours each colour"
            + " takes. An interval that lies above 1 is evidence for it, one below 1 against it.",
        "times the mean",
        place(trust, "colour"),
        List.of(place(trust, "rate_ratio")),
        OptionalInt.of(place(trust, "low")),
        OptionalInt.of(place(trust, "high")),
        MOST_BARS,
        true);
  }

  private static int place(Report report, String key) {
    return report.columns().stream().map(Column::key).toList().indexOf(key);
  }

  private static Chart chart(
      String title, String words, String scale, List<Integer> values, boolean lying) {
    return new Chart(
        title, words, scale, 0, values, OptionalInt.empty(), OptionalInt.empty(), MOST_BARS, lying);
  }

  private static Report table(
      String command, String title, LocalDate asOf, List<Column> columns, List<List<Value>> rows) {
    List<String> notes = rows.isEmpty() ? List.of("No trips are logged yet.") : List.of();
    return new Report(command, title, asOf, List.of(), columns, rows, List.of(), notes);
  }

  private static <K extends Comparable<K>> Map<K, Sum> sums(
      Book book, LocalDate asOf, Function<Stint, K> key) {
    List<Stint> log = book.fished(asOf).stream().map(Fished::stint).toList();
    List<FishingTime> times = FishingTime.of(log, book.settings().number(Setting.MINUTES_PER_CAST));
    Map<K, Sum> sums = new TreeMap<>();
    for (int i = 0; i < log.size(); i++) {
      K of = key.apply(log.get(i));
      sums.put(of, sums.getOrDefault(of, Sum.NONE).plus(log.get(i), times.get(i)));
    }
    return sums;
  }
}

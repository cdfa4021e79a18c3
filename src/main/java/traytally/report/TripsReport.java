package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.trip.Clarity;
import traytally.trip.FishingTime;
import traytally.trip.LossCause;
import traytally.trip.Stint;

/** The trip log, a row a stint. */
public final class TripsReport {
  private static final List<Column> COLUMNS = columns();

  private TripsReport() {}

  /** The {@code stints} up to the end of {@code asOf}, oldest first. */
  public static Report of(List<Fished> stints, Settings settings, LocalDate asOf) {
    List<Stint> log =
        stints.stream()
            .filter(fished -> !fished.stint().trip().date().isAfter(asOf))
            .sorted(
                Comparator.comparing((Fished fished) -> fished.stint().trip())
                    .thenComparingInt(Fished::ordinal)
                    .thenComparingLong(Fished::number))
            .map(Fished::stint)
            .toList();
    List<FishingTime> times = FishingTime.of(log, settings.number(Setting.MINUTES_PER_CAST));
    List<Integer> numbers = IntStream.range(0, log.size()).boxed().toList();
    List<List<Value>> rows = new Mapped<>(numbers, i -> row(log.get(i), times.get(i)));
    return new Report(
        "trips", "Trips", asOf, List.of(), COLUMNS, rows, List.of(), notes(log, times));
  }

  private static List<String> notes(List<Stint> log, List<FishingTime> times) {
    if (log.isEmpty()) {
      return List.of("No trips are logged yet: import your trip log.");
    }
    long trips = log.stream().map(Stint::trip).distinct().count();
    long assumed = times.stream().filter(FishingTime::assumed).count();
    List<String> notes = new ArrayList<>();
    notes.add(Words.count(trips, "trip") + ", " + Words.count(log.size(), "stint") + ".");
    if (assumed > 0) {
      notes.add(
          "The minutes of "
              + Words.count(assumed, "stint")
              + " are assumed, from casts or from the trip's other stints.");
    }
    return notes;
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(new Column("date", "Date", Kind.DATE));
    columns.add(new Column("water", "Water", Kind.TEXT));
    columns.add(new Column("species", "Species", Kind.TEXT, Room.SPARE));
    columns.add(new Column("clarity", "Clarity", Kind.TEXT, Room.SPARE));
    columns.addAll(PlasticColumns.COLUMNS);
    columns.add(new Column("minutes", "Minutes", Kind.WHOLE));
    columns.add(new Column("minutes_assumed", "", Kind.YES_NO));
    columns.add(new Column("follows", "Follows", Kind.WHOLE, Room.SPARE));
    columns.add(new Column("takes", "Takes", Kind.WHOLE));
    columns.add(new Column("hooked", "Hooked", Kind.WHOLE, Room.SPARE));
    columns.add(new Column("landed", "Landed", Kind.WHOLE));
    columns.add(new Column("lost", "Lost", Kind.WHOLE));
    columns.add(new Column("lost_how", "Lost how", Kind.TEXT, Room.SPARE));
    columns.add(new Column("worn", "Worn", Kind.WHOLE, Room.SPARE));
    columns.add(new Column("rods", "", Kind.WHOLE));
    return List.copyOf(columns);
  }

  private static List<Value> row(Stint stint, FishingTime time) {
    List<Value> row = new ArrayList<>();
    row.add(Value.of(stint.trip().date()));
    row.add(Words.orUnknown(stint.trip().water()));
    row.add(Words.orUnknown(stint.species()));
    row.add(stint.clarity().map(Clarity::word).map(Value::of).orElse(Value.UNKNOWN));
    row.addAll(PlasticColumns.cells(stint.plastic()));
    row.add(Value.of(time.minutes()));
    row.add(Value.of(time.assumed()));
    row.add(Value.of(stint.fish().follows()));
    row.add(Value.of(stint.fish().takes()));
    row.add(Value.of(stint.fish().hooked()));
    row.add(Value.of(stint.fish().landed()));
    row.add(Value.of(stint.lost()));
    row.add(stint.lostHow().map(LossCause::word).map(Value::of).orElse(Value.UNKNOWN));
    row.add(Value.of(stint.worn()));
    row.add(Value.of(stint.rods()));
    return row;
  }
}

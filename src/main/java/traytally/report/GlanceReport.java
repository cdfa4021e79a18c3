package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.performance.Standing;
import traytally.report.Column.Kind;
import traytally.report.Report.Single;
import traytally.restock.LowRule;
import traytally.restock.Outlook;
import traytally.restock.Prospect;
import traytally.trip.PlannedTrip;
import traytally.trip.Trip;

/** The box at a glance. */
public final class GlanceReport {
  private static final List<Column> COLUMNS = columns();

  private GlanceReport() {}

  /** Sums, the trusted and kept plastics that are low, the next trip and the last one. */
  public static Report of(Book book, Outlook outlook, LocalDate asOf) {
    LowRule rule = LowRule.of(book.settings());
    List<Prospect> low =
        outlook.prospects().values().stream()
            .filter(p -> p.kept() || p.standing() == Standing.TRUSTED)
            .filter(rule::isLow)
            .sorted(Comparator.comparingDouble(Prospect::runOutChance).reversed())
            .toList();
    List<List<Value>> rows = new ArrayList<>();
    low.forEach(prospect -> rows.add(row(prospect)));
    return new Report(
        "glance",
        "At a glance",
        asOf,
        facts(book, outlook, asOf),
        COLUMNS,
        rows,
        List.of(),
        notes(book, outlook, low, asOf));
  }

  private static List<String> notes(
      Book book, Outlook outlook, List<Prospect> low, LocalDate asOf) {
    List<String> notes = new ArrayList<>();
    notes.add(
        low.isEmpty()
            ? nothingLow(outlook)
            : "Above: what you trust and may run out of. traytally restock prints what to buy.");
    next(book, asOf).ifPresent(trip -> notes.addAll(ClosedWaters.of(book).notes(List.of(trip))));
    return notes;
  }

  private static Optional<PlannedTrip> next(Book book, LocalDate asOf) {
    return PlanReport.coming(book, asOf).stream().findFirst();
  }

  private static String nothingLow(Outlook outlook) {
    boolean trusted =
        outlook.prospects().values().stream()
            .anyMatch(p -> p.kept() || p.standing() == Standing.TRUSTED);
    return trusted
        ? "Nothing you trust is running low."
        : "Nothing is trusted yet: trust takes fish on several days of your log. Mark what you will"
            + " not be without as Kept in your list, or with traytally keep.";
  }

  private static List<Single> facts(Book book, Outlook outlook, LocalDate asOf) {
    int pieces = outlook.prospects().values().stream().mapToInt(p -> p.pieces().count()).sum();
    Optional<PlannedTrip> next = next(book, asOf);
    Optional<Trip> last =
        book.fished(asOf).stream()
            .map(fished -> fished.stint().trip())
            .max(Comparator.naturalOrder());
    return List.of(
        new Single(new Column("pieces", "Pieces", Kind.WHOLE), Value.of(pieces)),
        new Single(
            new Column("plastics", "Plastics", Kind.WHOLE), Value.of(book.plastics().size())),
        new Single(
            new Column("next_trip", "Next trip", Kind.DATE),
            next.map(trip -> Value.of(trip.date())).orElse(Value.UNKNOWN)),
        new Single(
            new Column("next_water", "Where to", Kind.TEXT),
            next.map(trip -> Words.orUnknown(trip.water())).orElse(Value.UNKNOWN)),
        new Single(
            new Column("last_logged", "Last logged trip", Kind.DATE),
            last.map(trip -> Value.of(trip.date())).orElse(Value.UNKNOWN)));
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>(PlasticColumns.COLUMNS);
    columns.add(new Column("pieces", "Left", Kind.WHOLE));
    columns.add(new Column("standing", "Standing", Kind.TEXT));
    columns.add(new Column("expected_use", "Use to come", Kind.DECIMAL));
    columns.add(new Column("run_out_chance", "Run-out chance", Kind.CHANCE));
    return List.copyOf(columns);
  }

  private static List<Value> row(Prospect prospect) {
    List<Value> row = new ArrayList<>(PlasticColumns.cells(prospect.plastic()));
    row.add(Value.of(prospect.pieces().count()));
    row.add(Value.of(prospect.kept() ? "kept" : prospect.standing().word()));
    row.add(Value.of(prospect.expectedUse()));
    row.add(Value.of(prospect.runOutChance()));
    return row;
  }
}

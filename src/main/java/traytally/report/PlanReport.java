package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.ledger.Fact.Planned;
import traytally.report.Column.Kind;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;

/** The trips to come. */
public final class PlanReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("date", "Date", Kind.DATE),
          new Column("water", "Water", Kind.TEXT),
          new Column("species", "Species", Kind.TEXT),
          new Column("clarity", "Clarity", Kind.TEXT),
          new Column("hours", "Hours", Kind.DECIMAL),
          new Column("rods", "Rods", Kind.WHOLE),
          new Column("closed", "", Kind.YES_NO),
          new Column("", "Note", Kind.TEXT));

  private PlanReport() {}

  /** The planned trips of {@code book} on {@code asOf} or later, next one first. */
  public static Report of(Book book, LocalDate asOf) {
    List<PlannedTrip> coming = coming(book, asOf);
    ClosedWaters closed = ClosedWaters.of(book);
    List<List<Value>> rows = new ArrayList<>();
    for (PlannedTrip trip : coming) {
      rows.add(
          List.of(
              Value.of(trip.date()),
              Words.orUnknown(trip.water()),
              Words.orUnknown(trip.species()),
              trip.clarity().map(Clarity::word).map(Value::of).orElse(Value.UNKNOWN),
              Value.of(trip.hours()),
              Value.of(trip.rods()),
              Value.of(closed.on(trip).isPresent()),
              Value.of(trip.note())));
    }
    List<String> notes = new ArrayList<>(closed.notes(coming));
    notes.add(
        rows.isEmpty()
            ? "No trip is planned: import your plan, or traytally plan add."
            : Words.RULES);
    return new Report("plan", "Planned trips", asOf, List.of(), COLUMNS, rows, List.of(), notes);
  }

  /** The planned trips of {@code book} on {@code asOf} or later, next one first. */
  static List<PlannedTrip> coming(Book book, LocalDate asOf) {
    return book.facts(Planned.class).stream()
        .map(Planned::trip)
        .filter(trip -> !trip.date().isBefore(asOf))
        .sorted()
        .toList();
  }
}

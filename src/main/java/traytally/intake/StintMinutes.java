package traytally.intake;

import java.util.Optional;

/** How long the stints of a log were fished, as their rows tell it. */
final class StintMinutes {
  private final Table table;
  private final RowReader reader;
  private final SharedCells shared;
  private final boolean fromTo;
  private final boolean timesOfDay;
  private final boolean ofAllRods;

  StintMinutes(Table table, ImportOptions options, RowReader reader) {
    this.table = table;
    this.reader = reader;
    this.shared = new SharedCells(table);
    this.fromTo = table.guess().has(Field.START) && table.guess().has(Field.END);
    this.timesOfDay = TimesOfDay.stand(table, Field.MINUTES, options);
    this.ofAllRods =
        table.header(Field.MINUTES).filter(h -> h.folded().startsWith("rod ")).isPresent();
  }

  /** The minutes of {@code row}, which the reader has begun; empty if it tells none. */
  Optional<Double> of(ListRow row, int rods) {
    Optional<Double> minutes =
        timesOfDay && TimesOfDay.isOne(row.cell(Field.MINUTES))
            ? Optional.empty()
            : reader.minutes(Field.MINUTES).map(m -> m / shared.sharers(row));
    if (ofAllRods && rods > 1 && minutes.isPresent()) {
      table.assume("The hours of all rods together were divided by the rods.");
      return minutes.map(m -> m / rods);
    }
    return minutes.isEmpty() && fromTo ? reader.span(Field.START, Field.END) : minutes;
  }

  /** Says how the minutes of a stint taken come about that tells none. */
  void sayUntold(boolean casts) {
    table.assume(
        casts
            ? "Where minutes are not told, they are worked out from the casts."
            : "Where neither minutes nor casts are told, the usual time of the log's other stints"
                + " stands in.");
  }
}

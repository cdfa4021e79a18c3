package traytally.intake;

import java.util.Optional;

/** How long the stints of a log were fished, as their rows tell it. */
final class StintMinutes {
  private final RowReader reader;
  private final boolean fromTo;
  private final boolean timesOfDay;

  StintMinutes(Table table, ImportOptions options, RowReader reader) {
    this.reader = reader;
    this.fromTo = table.guess().has(Field.START) && table.guess().has(Field.END);
    this.timesOfDay = TimesOfDay.stand(table, Field.MINUTES, options);
  }

  /** The minutes of {@code row}, which the reader has begun; empty if it tells none. */
  Optional<Double> of(ListRow row) {
    Optional<Double> minutes =
        timesOfDay && TimesOfDay.isOne(row.cell(Field.MINUTES))
            ? Optional.empty()
            : reader.minutes(Field.MINUTES);
    return minutes.isEmpty() && fromTo ? reader.span(Field.START, Field.END) : minutes;
  }
}

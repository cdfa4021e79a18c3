package traytally.intake;

import java.util.List;
import java.util.Optional;

/** The day in a title over a log without days, perhaps beside its water. */
final class DayInTitle {
  private DayInTitle() {}

  /** Gives the rows of {@code table} over the first day between them the day of its title. */
  static void fill(Table table) {
    List<ListRow> untold = table.rows().stream().takeWhile(row -> row.isBlank(Field.DATE)).toList();
    if (table.kind() != ListKind.TRIPS || untold.isEmpty() || table.guess().has(Field.DATE)) {
      return;
    }
    Optional<String> title =
        table.titles().stream().filter(t -> Dates.isDate(DayHeading.of(t).date())).findFirst();
    if (title.isEmpty()) {
      return;
    }
    DayHeading day = DayHeading.of(title.get());
    table.inherit(Field.DATE, day.date(), title.get(), "The date", untold);
    List<ListRow> dry = untold.stream().filter(row -> row.isBlank(Field.WATER)).toList();
    if (day.water().isPresent() && !dry.isEmpty()) {
      table.inherit(Field.WATER, day.water().get(), title.get(), "The water", dry);
    }
    if (!day.remarks().isEmpty()) {
      String rest = String.join(", ", day.remarks());
      table.assume("\"" + rest + "\" in the title was passed over.");
    }
  }
}

package traytally.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/**
 * What stands in the headings of days behind the date and the water: how clear it was, the fish, or
 * the weather. The sky is clear or cloudy too, so that only a word that no sky has, somewhere in
 * the list, makes it the water.
 */
final class DayRemarks {
  private static final Set<String> SKY =
      Set.of(
          "clear",
          "cloudy",
          "cloud",
          "fair",
          "grey",
          "misty",
          "hazy",
          "good",
          "poor",
          "moderate",
          "good vis",
          "good visibility");

  /** The remarks of one heading and the rows below it. */
  private record Day(List<String> remarks, int column, List<ListRow> rows) {}

  private final Table table;
  private final List<Day> days = new ArrayList<>();

  DayRemarks(Table table) {
    this.table = table;
  }

  /** Begins a day, whose heading stands in {@code column}. */
  void head(List<String> remarks, int column) {
    days.add(new Day(remarks, column, new ArrayList<>()));
  }

  /** Adds a row to the day last begun, if any was. */
  void add(ListRow row) {
    if (!days.isEmpty()) {
      days.get(days.size() - 1).rows().add(row);
    }
  }

  /** Tells the rows what the headings say, and the person what was passed over. */
  void tell() {
    boolean clarity =
        !table.guess().has(Field.CLARITY)
            && days.stream().flatMap(day -> day.remarks().stream()).anyMatch(DayRemarks::isOfWater);
    boolean species = !table.guess().has(Field.SPECIES);
    for (Day day : days) {
      Set<Field> told = new HashSet<>();
      for (String remark : day.remarks()) {
        Optional<Field> field =
            clarity && Words.clarity(remark).value().isPresent()
                ? Optional.of(Field.CLARITY)
                : species && FishByKind.namesKind(WordList.fold(remark))
                    ? Optional.of(Field.SPECIES)
                    : Optional.empty();
        if (field.isPresent() && told.add(field.get())) {
          Place place = new Place(Cell.text(remark), day.column(), true);
          day.rows().forEach(row -> fill(row, field.get(), place));
          table.assume("Headings between the rows tell the " + field.get().word() + ", too.");
        } else {
          table.assume(
              "Behind the date and the water of a heading \"" + remark + "\" was passed over.");
        }
      }
    }
  }

  private static void fill(ListRow row, Field field, Place place) {
    if (row.isBlank(field)) {
      row.fill(field, place);
    }
  }

  /** Whether a word of clarity is none of the sky's, which clears after rain as well. */
  static boolean isOfWater(String text) {
    return Words.clarity(text).value().isPresent()
        && !SKY.contains(WordList.fold(text))
        && !SKY.contains(WordList.fold(Words.beforeReason(text)));
  }
}

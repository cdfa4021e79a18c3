package traytally.report;

import java.util.ArrayList;
import java.util.List;
import traytally.plastic.Plastic;

/** The four columns that name a plastic, the same in every report. */
final class PlasticColumns {
  static final List<Column> COLUMNS =
      List.of(
          new Column("maker", "Maker", Column.Kind.TEXT, Column.Room.SPARE),
          new Column("body", "Body style", Column.Kind.TEXT),
          new Column("colour", "Colour", Column.Kind.TEXT),
          new Column("length_mm", "Length", Column.Kind.LENGTH));

  /** The same, the colour's swatches before its name. */
  static final List<Column> WITH_SWATCHES = withSwatches(COLUMNS, Swatches.COLUMNS);

  private static final int COLOUR = 2;

  private PlasticColumns() {}

  static List<Value> cells(Plastic plastic) {
    return List.of(
        Words.orUnknown(plastic.maker()),
        Value.of(plastic.body().text()),
        Value.of(plastic.colour().text()),
        Value.ofLength(plastic.lengthMm()));
  }

  /** The cells of {@link #WITH_SWATCHES}. */
  static List<Value> cells(Plastic plastic, Swatches swatches) {
    return withSwatches(cells(plastic), swatches.cells(plastic.colour()));
  }

  /** The plastic that each row of {@code report} names. */
  static List<Plastic> plastics(Report report) {
    List<String> keys = report.columns().stream().map(Column::key).toList();
    int[] at = COLUMNS.stream().mapToInt(column -> keys.indexOf(column.key())).toArray();
    return report.rows().stream()
        .map(
            row ->
                Plastic.of(
                    text(row.get(at[0])),
                    text(row.get(at[1])),
                    text(row.get(at[2])),
                    row.get(at[3]) instanceof Value.Whole mm ? Math.toIntExact(mm.number()) : 0))
        .toList();
  }

  private static String text(Value value) {
    return value instanceof Value.Text text ? text.text() : "";
  }

  private static <T> List<T> withSwatches(List<T> plastic, List<T> swatches) {
    List<T> all = new ArrayList<>(plastic);
    all.addAll(COLOUR, swatches);
    return List.copyOf(all);
  }
}

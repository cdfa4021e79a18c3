package traytally.report;

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

  private PlasticColumns() {}

  static List<Value> cells(Plastic plastic) {
    return List.of(
        Words.orUnknown(plastic.maker()),
        Value.of(plastic.body().text()),
        Value.of(plastic.colour().text()),
        Value.ofLength(plastic.lengthMm()));
  }
}

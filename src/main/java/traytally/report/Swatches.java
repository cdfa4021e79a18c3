package traytally.report;

import java.util.List;
import java.util.Optional;
import traytally.ledger.Book;
import traytally.ledger.Palette;
import traytally.plastic.Colour;
import traytally.plastic.Name;
import traytally.report.Column.Kind;

/** The two columns that show what a colour looks like, for people. */
public final class Swatches {
  static final List<Column> COLUMNS =
      List.of(new Column("", "Base", Kind.SWATCH), new Column("", "Flake", Kind.SWATCH));

  private final Palette palette;

  Swatches(Palette palette) {
    this.palette = palette;
  }

  /** What the angler said of the colours of {@code book}, or else what their names suggest. */
  public static Swatches of(Book book) {
    return new Swatches(Palette.of(book));
  }

  List<Value> cells(Name colour) {
    Optional<Colour> known =
        Optional.ofNullable(palette.entries().get(colour)).map(Palette.Entry::colour);
    boolean assumed = palette.assumed(colour);
    return List.of(
        Value.ofSwatch(known.flatMap(Colour::base), assumed),
        Value.ofSwatch(known.flatMap(Colour::flake), assumed));
  }
}

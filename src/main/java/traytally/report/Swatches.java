package traytally.report;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import traytally.ledger.Book;
import traytally.ledger.Fact.Coloured;
import traytally.plastic.Colour;
import traytally.plastic.Name;
import traytally.report.Column.Kind;

/** The two columns that show what a colour looks like, for people. */
public final class Swatches {
  static final List<Column> COLUMNS =
      List.of(new Column("", "Base", Kind.SWATCH), new Column("", "Flake", Kind.SWATCH));

  private final Map<Name, Colour> colours = new TreeMap<>();

  private Swatches() {}

  /** What the angler said of the colours of {@code book}. */
  public static Swatches of(Book book) {
    Swatches swatches = new Swatches();
    for (Coloured coloured : book.facts(Coloured.class)) {
      swatches.colours.put(coloured.colour().name(), coloured.colour());
    }
    return swatches;
  }

  List<Value> cells(Name colour) {
    Optional<Colour> known = Optional.ofNullable(colours.get(colour));
    return List.of(
        Value.ofSwatch(known.flatMap(Colour::base)), Value.ofSwatch(known.flatMap(Colour::flake)));
  }
}

package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.SortedSet;
import traytally.ledger.Book;
import traytally.ledger.Fact.Coloured;
import traytally.ledger.Fact.Described;
import traytally.plastic.Colour;
import traytally.plastic.Finish;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;

/** The rows of the box sheet as the book has them, to be edited and read back. */
public final class TrayRows {
  private TrayRows() {}

  /**
   * A row for each plastic, in the order of the box sheet's headings: maker, body style, colour,
   * length, pieces, pack size, pack price, tray, base swatch, flake swatch, finish, kept, note; and
   * then the pieces once more, which tell an edited count from one left alone.
   */
  public static List<List<Value>> of(Book book, LocalDate asOf) {
    SortedMap<Plastic, Described> described = book.described();
    SortedSet<Plastic> kept = book.kept();
    Map<Name, Colour> colours = new HashMap<>();
    book.facts(Coloured.class).forEach(c -> colours.put(c.colour().name(), c.colour()));
    List<List<Value>> rows = new ArrayList<>();
    for (Plastic plastic : book.plastics()) {
      Optional<Described> said = Optional.ofNullable(described.get(plastic));
      Optional<Colour> colour = Optional.ofNullable(colours.get(plastic.colour()));
      int pieces = book.ledger().stock(plastic, asOf).count();
      List<Value> row = new ArrayList<>(PlasticColumns.cells(plastic));
      row.add(Value.of(pieces));
      row.add(Value.of(said.map(Described::packSize).orElse(OptionalInt.empty())));
      row.add(Value.ofMoney(said.flatMap(Described::packPrice)));
      row.add(text(said.map(Described::tray)));
      row.add(text(colour.flatMap(Colour::base).map(Swatch::toString)));
      row.add(text(colour.flatMap(Colour::flake).map(Swatch::toString)));
      row.add(text(colour.flatMap(Colour::finish).map(Finish::word)));
      row.add(kept.contains(plastic) ? Value.of(true) : Value.UNKNOWN);
      row.add(text(said.map(Described::note)));
      row.add(Value.of(pieces));
      rows.add(row);
    }
    return rows;
  }

  private static Value text(Optional<String> text) {
    return text.filter(t -> !t.isEmpty()).map(Value::of).orElse(Value.UNKNOWN);
  }
}

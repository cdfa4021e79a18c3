package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.function.Predicate;
import traytally.ledger.Book;
import traytally.ledger.Fact.Described;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.restock.LowRule;
import traytally.restock.Outlook;
import traytally.restock.Prospect;

/** What is in the box. */
public final class BoxReport {
  private static final List<Column> COLUMNS = columns();

  private BoxReport() {}

  /**
   * The plastics of {@code book} that {@code wanted} lets through, by body, colour and length, each
   * under the number of its row.
   */
  public static Report of(Book book, Outlook outlook, Predicate<Prospect> wanted, LocalDate asOf) {
    SortedSet<Plastic> inBox = book.plastics();
    List<Prospect> listed =
        outlook.prospects().values().stream()
            .filter(prospect -> inBox.contains(prospect.plastic()) && wanted.test(prospect))
            .toList();
    SortedMap<Plastic, Described> described = book.described();
    List<List<Value>> rows = new ArrayList<>();
    int pieces = 0;
    int low = 0;
    LowRule rule = LowRule.of(book.settings());
    Swatches swatches = Swatches.of(book);
    for (Prospect prospect : listed) {
      Optional<Described> said = Optional.ofNullable(described.get(prospect.plastic()));
      List<Value> cells = new ArrayList<>(List.of(Value.of(rows.size() + 1)));
      cells.addAll(PlasticColumns.cells(prospect.plastic(), swatches));
      cells.addAll(row(prospect, said));
      rows.add(cells);
      pieces += prospect.pieces().count();
      low += rule.isLow(prospect) ? 1 : 0;
    }
    List<String> notes =
        List.of(
            Words.count(pieces, "piece")
                + " of "
                + Words.count(rows.size(), "plastic")
                + (low == 0 ? "." : "; " + low + " low: see traytally restock."),
            "Run-out chance: " + outlook.horizon().words() + ".");
    return new Report("box", "Box", asOf, List.of(), COLUMNS, rows, List.of(), notes);
  }

  /** The plastics that {@code box} lists, row by row. */
  public static List<Plastic> plastics(Report box) {
    return PlasticColumns.plastics(box);
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(new Column("", "Row", Kind.WHOLE));
    columns.addAll(PlasticColumns.WITH_SWATCHES);
    columns.add(new Column("pieces", "Pieces", Kind.WHOLE));
    columns.add(new Column("packs", "", Kind.DECIMAL));
    columns.add(new Column("pack_size", "", Kind.WHOLE));
    columns.add(new Column("tray", "Tray", Kind.TEXT, Room.SPARE));
    columns.add(new Column("standing", "Standing", Kind.TEXT));
    columns.add(new Column("kept", "Kept", Kind.YES_NO, Room.SPARE));
    columns.add(new Column("trust", "Trust", Kind.CHANCE, Room.SPARE));
    columns.add(new Column("run_out_chance", "Run-out chance", Kind.CHANCE));
    return List.copyOf(columns);
  }

  /** What is said of a plastic behind its name. */
  private static List<Value> row(Prospect prospect, Optional<Described> described) {
    OptionalInt packSize = described.map(Described::packSize).orElse(OptionalInt.empty());
    List<Value> row = new ArrayList<>();
    row.add(Value.of(prospect.pieces().count()));
    row.add(
        packSize.isPresent()
            ? Value.of(prospect.pieces().count() / (double) packSize.getAsInt())
            : Value.UNKNOWN);
    row.add(Value.of(packSize));
    row.add(Words.orUnknown(Name.of(described.map(Described::tray).orElse(""))));
    row.add(Value.of(prospect.standing().word()));
    row.add(Value.of(prospect.kept()));
    row.add(Value.of(prospect.trust().trust()));
    row.add(Value.of(prospect.runOutChance()));
    return row;
  }
}

package traytally.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.report.Report.Section;
import traytally.report.Report.Single;
import traytally.restock.Prospect;
import traytally.restock.Purchase;
import traytally.restock.ShopOrder;
import traytally.restock.ShoppingLine;
import traytally.restock.ShoppingList;

/** The shopping list. */
public final class RestockReport {
  private static final List<Column> COLUMNS = columns();

  private RestockReport() {}

  /** The list as a report: what nobody sells, then shop by shop, then what was left out. */
  public static Report of(ShoppingList list, Swatches swatches) {
    List<List<Value>> rows = new ArrayList<>();
    list.lines().forEach(line -> rows.add(row(line, swatches)));
    return new Report(
        "restock",
        "Shopping list",
        list.asOf(),
        facts(list),
        COLUMNS,
        rows,
        sections(list),
        notes(list));
  }

  private static List<Single> facts(ShoppingList list) {
    return List.of(
        new Single(new Column("horizon_from", "", Kind.DATE), Value.of(list.horizon().from())),
        new Single(
            new Column("horizon_to", "Lasts until", Kind.DATE), Value.of(list.horizon().to())),
        new Single(
            new Column("trips_counted", "Trips counted", Kind.WHOLE),
            Value.of(list.horizon().trips().size())),
        new Single(
            new Column("budget", list.budget().isPresent() ? "Budget" : "", Kind.MONEY),
            Value.ofMoney(list.budget())),
        new Single(new Column("postage", "Postage", Kind.MONEY), Value.of(list.postage())),
        new Single(new Column("total", "Total", Kind.MONEY), Value.of(list.total())),
        new Single(
            new Column("currency", "Currency", Kind.TEXT),
            Value.of(list.currency().getCurrencyCode())),
        new Single(
            new Column("takes_saved", "Takes saved", Kind.DECIMAL), Value.of(list.takesSaved())));
  }

  private static List<Section> sections(ShoppingList list) {
    List<Section> sections = new ArrayList<>();
    int from = 0;
    while (from < list.lines().size()) {
      String heading = heading(list, list.lines().get(from));
      int to = from + 1;
      while (to < list.lines().size() && heading(list, list.lines().get(to)).equals(heading)) {
        to++;
      }
      Optional<Name> shop = shop(list.lines().get(from));
      sections.add(new Section(heading, from, to, shop.map(name -> sum(list, name)).orElse("")));
      from = to;
    }
    return sections;
  }

  private static String heading(ShoppingList list, ShoppingLine line) {
    return shop(line)
        .map(Name::text)
        .orElseGet(
            () -> {
              if (line.onSale()) {
                return "Low, and left out of the budget";
              }
              return list.shops().isEmpty()
                  ? "Low, and nobody on your price list has it"
                  : "Low, and not at "
                      + list.shops().stream()
                          .map(Name::text)
                          .sorted()
                          .collect(Collectors.joining(" or "));
            });
  }

  private static String sum(ShoppingList list, Name shop) {
    ShopOrder order =
        list.orders().stream().filter(o -> o.shop().equals(shop)).findFirst().orElseThrow();
    String postage =
        order.postage().cents() == 0 ? ", no postage" : ", postage " + order.postage().amount();
    return "Goods " + order.goods().amount() + postage + ": " + order.total();
  }

  private static Optional<Name> shop(ShoppingLine line) {
    return line.purchase().map(purchase -> purchase.offer().shop());
  }

  private static List<String> notes(ShoppingList list) {
    List<String> notes = new ArrayList<>();
    notes.addAll(list.notes());
    notes.add(Words.RULES);
    notes.add(Words.CARE);
    return notes;
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(new Column("", "Got", Kind.TICK));
    columns.add(new Column("shop", "", Kind.TEXT));
    columns.addAll(
        PlasticColumns.WITH_SWATCHES.stream()
            .map(c -> c.key().equals("maker") ? c.forMachinesOnly() : c)
            .toList());
    columns.add(new Column("pieces", "Left", Kind.WHOLE, Room.SPARE));
    columns.add(new Column("standing", "", Kind.TEXT));
    columns.add(new Column("kept", "", Kind.YES_NO));
    columns.add(new Column("trust", "", Kind.CHANCE));
    columns.add(new Column("expected_use", "", Kind.DECIMAL));
    columns.add(new Column("use_p90", "", Kind.WHOLE));
    columns.add(new Column("run_out_chance", "Run-out chance", Kind.CHANCE));
    columns.add(new Column("", "Packs", Kind.TEXT));
    columns.add(new Column("packs", "", Kind.WHOLE));
    columns.add(new Column("pack_size", "", Kind.WHOLE));
    columns.add(new Column("pack_price", "Price", Kind.MONEY));
    columns.add(new Column("line_total", "Sum", Kind.MONEY));
    columns.add(new Column("run_out_after", "", Kind.CHANCE));
    columns.add(new Column("takes_saved", "Takes saved", Kind.DECIMAL, Room.SPARE));
    columns.add(new Column("low", "", Kind.YES_NO));
    columns.add(new Column("reason", "Why", Kind.SENTENCE, Room.BELOW));
    columns.add(new Column("stand_in", "Stand-in", Kind.TEXT, Room.BELOW));
    return List.copyOf(columns);
  }

  private static List<Value> row(ShoppingLine line, Swatches swatches) {
    Prospect prospect = line.prospect();
    Optional<Purchase> purchase = line.purchase();
    List<Value> row = new ArrayList<>();
    row.add(Value.UNKNOWN);
    row.add(shop(line).map(Name::text).map(Value::of).orElse(Value.UNKNOWN));
    row.addAll(PlasticColumns.cells(line.plastic(), swatches));
    row.add(Value.of(prospect.pieces().count()));
    row.add(Value.of(prospect.standing().word()));
    row.add(Value.of(prospect.kept()));
    row.add(Value.of(prospect.trust().trust()));
    row.add(Value.of(prospect.expectedUse()));
    row.add(Value.of(prospect.useP90()));
    row.add(Value.of(prospect.runOutChance()));
    row.add(
        purchase
            .map(p -> Value.of(p.packs().count() + " × " + p.offer().packSize()))
            .orElse(Value.UNKNOWN));
    row.add(Value.of(line.packs().count()));
    row.add(purchase.map(p -> Value.of(p.offer().packSize())).orElse(Value.UNKNOWN));
    row.add(Value.ofMoney(purchase.map(p -> p.offer().packPrice())));
    row.add(Value.ofMoney(purchase.map(Purchase::lineTotal)));
    row.add(Value.of(line.runOutAfter()));
    row.add(Value.of(line.takesSaved()));
    row.add(Value.of(line.low()));
    row.add(Value.of(line.reason()));
    row.add(line.standIn().map(Plastic::toString).map(Value::of).orElse(Value.UNKNOWN));
    return row;
  }
}

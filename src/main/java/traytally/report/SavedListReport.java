package traytally.report;

import java.util.ArrayList;
import java.util.List;
import traytally.report.Column.Kind;
import traytally.restock.Purchase;
import traytally.restock.ShoppingLine;
import traytally.restock.ShoppingList;

/** What of a shopping list is to be bought, to be kept until the parcel comes. */
public final class SavedListReport {
  private static final List<Column> COLUMNS = columns();

  private SavedListReport() {}

  /** The list's purchases, a row each. */
  public static Report of(ShoppingList list) {
    List<List<Value>> rows = new ArrayList<>();
    for (ShoppingLine line : list.lines()) {
      line.purchase().ifPresent(purchase -> rows.add(row(list, line, purchase)));
    }
    return new Report(
        "list", "Shopping list", list.asOf(), List.of(), COLUMNS, rows, List.of(), List.of());
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(new Column("list", "List", Kind.DATE));
    columns.add(new Column("shop", "Shop", Kind.TEXT));
    columns.addAll(PlasticColumns.COLUMNS);
    columns.add(new Column("packs", "Packs", Kind.WHOLE));
    columns.add(new Column("pack_size", "Pack size", Kind.WHOLE));
    columns.add(new Column("pack_price", "Pack price", Kind.MONEY));
    columns.add(new Column("currency", "Currency", Kind.TEXT));
    return List.copyOf(columns);
  }

  private static List<Value> row(ShoppingList list, ShoppingLine line, Purchase purchase) {
    List<Value> row = new ArrayList<>();
    row.add(Value.of(list.asOf()));
    row.add(Value.of(purchase.offer().shop().text()));
    row.addAll(PlasticColumns.cells(line.plastic()));
    row.add(Value.of(purchase.packs().count()));
    row.add(Value.of(purchase.offer().packSize()));
    row.add(Value.of(purchase.offer().packPrice()));
    row.add(Value.of(list.currency().getCurrencyCode()));
    return row;
  }
}

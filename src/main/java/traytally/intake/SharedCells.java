package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;
import traytally.sheet.CellRange;

/**
 * What stands once, in a merged cell, for several stints of a log. Minutes and casts are shared out
 * evenly, and it is said; fish and losses may be any one's, and are left to be written apart.
 */
final class SharedCells {
  private final Table table;
  private final Map<ListRow, Integer> sharers = new HashMap<>();

  SharedCells(Table table) {
    this.table = table;
    if (!table.sheet().merges().isEmpty()) {
      over(Field.MINUTES).forEach(this::shareMinutes);
      over(Field.CASTS).forEach(this::shareCasts);
      SeveralInOne.COUNTS.forEach(field -> over(field).forEach((cell, rows) -> doubt(field, rows)));
    }
  }

  /** How many stints share the minutes that stand in {@code row}. */
  int sharers(ListRow row) {
    return sharers.getOrDefault(row, 1);
  }

  /** The rows under each merged cell of a column that holds something and covers several. */
  private Map<Place, List<ListRow>> over(Field field) {
    int column = table.guess().columns().getOrDefault(field, -1);
    TreeMap<Integer, CellRange> areas = new TreeMap<>();
    for (CellRange area : table.sheet().merges()) {
      if (area.first().column() == column && area.last().row() > area.first().row()) {
        areas.put(area.first().row(), area);
      }
    }
    Map<Place, List<ListRow>> under = new HashMap<>();
    Map<Integer, Place> holders = new HashMap<>();
    for (ListRow row : areas.isEmpty() ? List.<ListRow>of() : table.rows()) {
      Map.Entry<Integer, CellRange> area = areas.floorEntry(row.number());
      if (area != null && row.number() <= area.getValue().last().row()) {
        int first = area.getKey();
        Place place =
            holders.computeIfAbsent(
                first,
                r -> new Place(table.sheet().merged(r, column).orElse(Cell.blank()), column, true));
        under.computeIfAbsent(place, p -> new ArrayList<>()).add(row);
        row.fill(field, place);
      }
    }
    under.entrySet().removeIf(e -> e.getKey().cell().isBlank() || e.getValue().size() < 2);
    return under;
  }

  private void shareMinutes(Place minutes, List<ListRow> rows) {
    rows.forEach(row -> sharers.put(row, rows.size()));
    table.assume("The minutes of a merged cell were shared out evenly among its rows.");
  }

  private void shareCasts(Place casts, List<ListRow> rows) {
    Quantities.parse(casts.cell().shown(), OptionalInt.empty())
        .value()
        .ifPresent(
            all -> {
              dealOut(all, Field.CASTS, casts.column(), rows);
              table.assume("The casts of a merged cell were shared out evenly among its rows.");
            });
  }

  /** Gives each row its even share of a count, the first ones what cannot be divided. */
  static void dealOut(int all, Field field, int column, List<ListRow> rows) {
    for (int i = 0; i < rows.size(); i++) {
      int share = all / rows.size() + (i < all % rows.size() ? 1 : 0);
      rows.get(i).put(field, Cell.text(Integer.toString(share)), column);
    }
  }

  private static void doubt(Field field, List<ListRow> rows) {
    for (ListRow row : rows) {
      if (!SeveralInOne.isNone(row.place(field))
          && (field != Field.SPECIES || row.text(field).matches("\\d{1,3}"))) {
        row.doubt(field, rows);
      }
    }
  }
}

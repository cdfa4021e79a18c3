package traytally.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import traytally.sheet.Cell;

/**
 * Rows with a line for each plastic in every cell, as a person types who breaks lines within a
 * cell: the first lines belong together, the second ones, and so on.
 */
final class LinesInCells {
  private static final Pattern LINES = Pattern.compile("\\R");
  private static final Set<Field> REMARKS = Set.of(Field.NOTE);

  private final Table table;
  private final List<Field> fields;

  LinesInCells(Table table) {
    this.table = table;
    this.fields = table.guess().columns().keySet().stream().sorted().toList();
  }

  /** Makes a row of each line where all cells that have several have as many. */
  void run() {
    if (table.sheet().distinct().stream().noneMatch(LinesInCells::hasLines)) {
      return;
    }
    List<ListRow> rows = new ArrayList<>();
    for (ListRow row : table.rows()) {
      rows.addAll(apart(row));
    }
    table.rows().clear();
    table.rows().addAll(rows);
  }

  private static boolean hasLines(Cell cell) {
    return cell instanceof Cell.Text text && text.text().indexOf('\n') >= 0;
  }

  private List<ListRow> apart(ListRow row) {
    Map<Field, String[]> lines = new EnumMap<>(Field.class);
    for (Field field : fields) {
      String[] told = LINES.split(row.cell(field).shown().strip(), -1);
      if (told.length > 1 && !REMARKS.contains(field)) {
        lines.put(field, told);
      }
    }
    boolean plastics = lines.containsKey(Field.BODY) || lines.containsKey(Field.COLOUR);
    long lengths = lines.values().stream().map(told -> told.length).distinct().count();
    boolean counts = table.kind() != ListKind.BOX || lines.containsKey(Field.PIECES);
    if (!plastics || !counts || lengths != 1) {
      return List.of(row);
    }
    int among = lines.values().iterator().next().length;
    List<ListRow> apart = new ArrayList<>();
    for (int i = 0; i < among; i++) {
      ListRow one = row.copy();
      int line = i;
      lines.forEach(
          (field, told) -> {
            String text = told[line].strip();
            int column = row.place(field).column();
            one.put(field, text.isEmpty() ? Cell.blank() : Cell.text(text), column);
          });
      apart.add(one);
    }
    if (table.kind() == ListKind.TRIPS) {
      new SeveralInOne(table).shareOut(row, apart, lines.keySet());
    }
    table.assume("Rows with a line for each plastic in their cells were split, one row a plastic.");
    return apart;
  }
}

package traytally.render;

import java.util.ArrayList;
import java.util.List;
import traytally.report.Column;

/** Rows as blocks of labelled values, where the cells cannot stand side by side. */
final class Stacked implements RowLayout {
  private static final String NO_TICK = "- ";

  private final Grid grid;

  Stacked(Grid grid) {
    this.grid = grid;
  }

  @Override
  public void begin(Page page) {
    page.gap();
  }

  @Override
  public void rows(int from, int to, Page page) {
    for (List<String> row : grid.rows().subList(from, to)) {
      String start = NO_TICK;
      List<String> values = new ArrayList<>();
      for (int i = 0; i < row.size(); i++) {
        if (i == 0 && grid.columns().get(i).kind() == Column.Kind.TICK) {
          start = row.get(i) + " ";
        } else if (!row.get(i).equals(Wording.UNKNOWN)) {
          values.add(grid.headings().get(i) + ": " + row.get(i));
        }
      }
      page.flow(start, values);
    }
  }
}

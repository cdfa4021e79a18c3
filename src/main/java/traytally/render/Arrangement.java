package traytally.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import traytally.report.Column.Room;

/**
 * How the columns of a table stand on a page of some width.
 *
 * @param leftOut headings of the columns that found no room
 */
record Arrangement(RowLayout layout, List<String> leftOut) {

  /**
   * All side by side where that cuts nothing; else sentences go below their rows, then columns that
   * can be spared are left out, the last first; then texts are wrapped, and at the very last the
   * cells of a row stand below one another.
   */
  static Arrangement of(Grid grid, int width) {
    Optional<int[]> whole = grid.fitUncut(width);
    if (whole.isPresent()) {
      return new Arrangement(new SideBySide(grid, whole.get()), List.of());
    }
    Grid below = grid.only(Room.BELOW);
    Grid beside = grid.only(i -> grid.columns().get(i).room() != Room.BELOW);
    List<String> leftOut = new ArrayList<>();
    Optional<int[]> widths = beside.fitUncut(width);
    for (int last = lastSpare(beside); widths.isEmpty() && last >= 0; last = lastSpare(beside)) {
      int gone = last;
      leftOut.add(0, beside.headings().get(gone));
      beside = beside.only(i -> i != gone);
      widths = beside.fitUncut(width);
    }
    if (widths.isEmpty()) {
      widths = beside.fit(width);
    }
    return widths.isPresent()
        ? new Arrangement(new SideBySide(beside, widths.get(), below), leftOut)
        : new Arrangement(new Stacked(grid), List.of());
  }

  private static int lastSpare(Grid grid) {
    for (int i = grid.columns().size() - 1; i >= 0; i--) {
      if (grid.columns().get(i).room() == Room.SPARE) {
        return i;
      }
    }
    return -1;
  }
}

package traytally.sheet;

import java.util.List;

/**
 * One row that holds something.
 *
 * @param number as the spreadsheet program shows it, from 1
 * @param cells from column A on; blank cells after the last filled one are left out
 * @param hidden whether the row is hidden or filtered away
 * @param struck whether all that stands in it is struck out
 */
public record Row(int number, List<Cell> cells, boolean hidden, boolean struck) {
  public Row {
    if (number < 1) {
      throw new IllegalArgumentException("row number must be at least 1: " + number);
    }
    cells = List.copyOf(cells);
  }

  /** A row that is not struck out. */
  public Row(int number, List<Cell> cells, boolean hidden) {
    this(number, cells, hidden, false);
  }

  /** The cell in a column counted from 0; blank beyond the last filled one. */
  public Cell cell(int column) {
    return column < cells.size() ? cells.get(column) : Cell.blank();
  }

  /** The cells that hold something, from left to right. */
  public List<Cell> filled() {
    return cells.stream().filter(cell -> !cell.isBlank()).toList();
  }

  /** Where the cell of a column counted from 0 stands. */
  public Address address(int column) {
    return new Address(number, column);
  }
}

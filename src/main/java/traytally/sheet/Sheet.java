package traytally.sheet;

/**
 * One sheet of a workbook.
 *
 * @param index its place among the sheets that hold cells, from 0
 * @param name as on its tab; empty for a text file
 * @param hidden whether the tab is hidden
 */
public record Sheet(int index, String name, boolean hidden) {
  public Sheet {
    if (index < 0) {
      throw new IllegalArgumentException("index must not be negative: " + index);
    }
  }
}

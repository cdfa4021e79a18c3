package traytally.store;

import java.io.IOException;
import java.util.List;

/** Takes the rows of a box's tables, one table after the other. */
@FunctionalInterface
public interface TableSink {
  /**
   * Takes a row; a table's first row may hold no cells, to say its columns alone.
   *
   * @param columns the same for all rows of a table
   * @param cells in the columns' order, or none; what is not known is empty
   */
  void row(String table, List<TableColumn> columns, List<String> cells) throws IOException;
}

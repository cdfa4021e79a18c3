package traytally.store;

import java.io.IOException;
import java.util.List;

/** Rows that were once handed out, to make a box of. */
@FunctionalInterface
public interface TableSource {
  /** Takes a row in. */
  @FunctionalInterface
  interface Into {
    /**
     * Takes a row in.
     *
     * @param place where the row stands, for the person, should it not fit
     */
    void row(String table, List<String> columns, List<String> cells, String place);
  }

  /** Hands every row over, in the order in which it was handed out. */
  void pour(Into box) throws IOException;
}

package traytally.report;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;
import java.util.function.Function;

/** The rows of a long listing, each made when it is looked at: a million made would not fit. */
final class RowsOf<T> extends AbstractList<List<Value>> implements RandomAccess {
  private final List<T> listed;
  private final Function<T, List<Value>> row;
  private int lastIndex = -1;
  private List<Value> last = List.of(); // sheets and pages ask for a row cell by cell

  /** Rows of what is {@code listed}, which must not change. */
  RowsOf(List<T> listed, Function<T, List<Value>> row) {
    this.listed = listed;
    this.row = row;
  }

  @Override
  public List<Value> get(int index) {
    if (index != lastIndex) {
      last = List.copyOf(row.apply(listed.get(index)));
      lastIndex = index;
    }
    return last;
  }

  @Override
  public int size() {
    return listed.size();
  }
}

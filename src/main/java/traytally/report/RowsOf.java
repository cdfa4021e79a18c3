package traytally.report;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;
import java.util.function.Function;

/** The rows of a long listing, each made when it is looked at: a million made would not fit. */
final class RowsOf<T> extends AbstractList<List<Value>> implements RandomAccess {
  private final List<T> listed;
  private final Function<T, List<Value>> row;

  /** Rows of what is {@code listed}, which must not change. */
  RowsOf(List<T> listed, Function<T, List<Value>> row) {
    this.listed = listed;
    this.row = row;
  }

  @Override
  public List<Value> get(int index) {
    return List.copyOf(row.apply(listed.get(index)));
  }

  @Override
  public int size() {
    return listed.size();
  }
}

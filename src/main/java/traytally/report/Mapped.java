package traytally.report;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;
import java.util.function.Function;

/** A long list, each element made when it is looked at: a million rows made would not fit. */
public final class Mapped<T, R> extends AbstractList<R> implements RandomAccess {
  private final List<T> listed;
  private final Function<T, R> made;
  private int lastIndex = -1;
  private List<R> last = List.of(); // sheets and pages ask for a row cell by cell

  /** What is made of each of {@code listed}, which must not change. */
  public Mapped(List<T> listed, Function<T, R> made) {
    this.listed = listed;
    this.made = made;
  }

  @Override
  public R get(int index) {
    if (index != lastIndex) {
      last = List.of(made.apply(listed.get(index)));
      lastIndex = index;
    }
    return last.get(0);
  }

  @Override
  public int size() {
    return listed.size();
  }
}

package traytally.performance;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeSet;

/** The distinct values of a grouping, numbered from 0 in their own order. */
public final class Levels<T extends Comparable<T>> {
  private final List<T> values;
  private final Map<T, Integer> number = new HashMap<>();

  public Levels(Collection<T> all) {
    values = List.copyOf(new TreeSet<>(all));
    for (int i = 0; i < values.size(); i++) {
      number.put(values.get(i), i);
    }
  }

  public List<T> values() {
    return values;
  }

  public int size() {
    return values.size();
  }

  /** The number of {@code value}; empty if it is none of them. */
  public OptionalInt find(T value) {
    Integer found = number.get(value);
    return found == null ? OptionalInt.empty() : OptionalInt.of(found);
  }

  /** The number of a value known to be one of them. */
  public int of(T value) {
    return find(value).orElseThrow(() -> new IllegalArgumentException("no such level: " + value));
  }
}

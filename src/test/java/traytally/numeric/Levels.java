package traytally.numeric;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The levels of a grouping numbered in the order of their names. */
final class Levels {
  private final List<String> names;
  private final int[] of;

  private Levels(List<String> names, int[] of) {
    this.names = names;
    this.of = of;
  }

  static Levels of(List<String> texts) {
    List<String> names = texts.stream().distinct().sorted().toList();
    Map<String, Integer> numbers = new HashMap<>();
    names.forEach(name -> numbers.put(name, numbers.size()));
    return new Levels(names, texts.stream().mapToInt(numbers::get).toArray());
  }

  List<String> names() {
    return names;
  }

  int[] of() {
    return of.clone();
  }

  int of(int row) {
    return of[row];
  }

  int size() {
    return names.size();
  }
}

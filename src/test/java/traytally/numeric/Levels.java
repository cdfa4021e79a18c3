package traytally.numeric;

import java.util.List;

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
    return new Levels(names, texts.stream().mapToInt(names::indexOf).toArray());
  }

  List<String> names() {
    return names;
  }

  int[] of() {
    return of.clone();
  }

  int size() {
    return names.size();
  }
}

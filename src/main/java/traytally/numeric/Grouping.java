package traytally.numeric;

import java.util.Arrays;

/** One way of sorting the observations into numbered levels, such as by day or by colour. */
final class Grouping {
  private final String name;
  private final String outer; // the grouping whose levels each of its own lies within; or blank
  private final int[] levelOf;
  private final int levels;

  /**
   * Keeps a copy of the levels.
   *
   * @param outer the grouping whose levels each of its own lies within; blank for none
   * @param levelOf the level of each observation, from 0 to {@code levels} − 1
   * @param levels the number of levels; some may be without any observation
   */
  Grouping(String name, String outer, int[] levelOf, int levels) {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a grouping needs a name");
    }
    for (int level : levelOf) {
      if (level < 0 || level >= levels) {
        throw new IllegalArgumentException(
            name + ": level " + level + " is not from 0 to " + (levels - 1));
      }
    }
    this.name = name;
    this.outer = outer;
    this.levelOf = levelOf.clone();
    this.levels = levels;
  }

  /** The same levels, of these observations only. */
  Grouping only(int[] observations) {
    int[] some = Arrays.stream(observations).map(i -> levelOf[i]).toArray();
    return new Grouping(name, outer, some, levels);
  }

  String name() {
    return name;
  }

  String outer() {
    return outer;
  }

  int levelOf(int observation) {
    return levelOf[observation];
  }

  int levels() {
    return levels;
  }
}

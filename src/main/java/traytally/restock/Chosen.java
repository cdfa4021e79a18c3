package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Picks made so far, as a chain from the last back, and what they leave of each limit. */
final class Chosen {
  private final Optional<Chosen> before;
  private final Optional<Pick> last;
  private final double value;
  private final long[] left;

  private Chosen(Optional<Chosen> before, Optional<Pick> last, double value, long[] left) {
    this.before = before;
    this.last = last;
    this.value = value;
    this.left = left;
  }

  /** Nothing picked yet. */
  static Chosen nothing(Limits limits) {
    long[] left = new long[limits.count()];
    Arrays.setAll(left, limits::most);
    return new Chosen(Optional.empty(), Optional.empty(), 0, left);
  }

  /**
   * This and one pick more.
   *
   * @param rest the most that can still be used up of each limit: no more is left of it then
   */
  Chosen with(Pick pick, long[] rest) {
    long[] less = new long[left.length];
    for (int j = 0; j < less.length; j++) {
      less[j] = left(j, pick, rest);
    }
    return new Chosen(Optional.of(this), Optional.of(pick), value + pick.value(), less);
  }

  /** What one pick more would leave of a limit; below zero where it does not fit. */
  long left(int limit, Pick pick, long[] rest) {
    return Math.min(left[limit] - pick.uses(limit), rest[limit]);
  }

  /** This, with no more left of each limit than can still be used up. */
  Chosen atMost(long[] rest) {
    long[] less = new long[left.length];
    Arrays.setAll(less, j -> Math.min(left[j], rest[j]));
    return new Chosen(before, last, value, less);
  }

  /** Whether no limit is overdrawn. */
  boolean fits() {
    return Arrays.stream(left).allMatch(each -> each >= 0);
  }

  double value() {
    return value;
  }

  long left(int limit) {
    return left[limit];
  }

  /** What is left of all limits, to tell choices apart by. */
  Object left() {
    return new Left(left);
  }

  List<Bundle> bundles() {
    List<Bundle> bundles = new ArrayList<>();
    Optional<Chosen> at = Optional.of(this);
    while (at.isPresent()) {
      at.get().last.ifPresent(pick -> bundles.add(pick.bundle()));
      at = at.get().before;
    }
    return bundles;
  }

  /** Equal to any other that leaves the same. */
  private static final class Left {
    private final long[] of;

    Left(long[] of) {
      this.of = of;
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Left left && Arrays.equals(of, left.of);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(of);
    }
  }
}

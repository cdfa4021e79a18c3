package traytally.restock;

/** A bundle as one branch of the search sees it: its worth, and what it uses up of each limit. */
final class Pick {
  private final Bundle bundle;
  private final long[] uses;

  /** Keeps the array, which nobody else may change any more. */
  Pick(Bundle bundle, long[] uses) {
    this.bundle = bundle;
    this.uses = uses;
  }

  Bundle bundle() {
    return bundle;
  }

  double value() {
    return bundle.value();
  }

  /** What it uses up of one limit; never below zero. */
  long uses(int limit) {
    return uses[limit];
  }

  /** Whether it is worth at least as much as another and uses up no more of anything. */
  boolean beats(Pick other) {
    boolean beats = value() >= other.value();
    for (int j = 0; beats && j < uses.length; j++) {
      beats = uses[j] <= other.uses[j];
    }
    return beats;
  }
}

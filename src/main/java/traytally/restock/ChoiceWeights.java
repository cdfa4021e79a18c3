package traytally.restock;

/** How much each plastic is wanted on one kind of trip; immutable. */
final class ChoiceWeights {
  private final double[] weight; // plastics: v, summing to one
  private final double[] trips; // plastics: Σ w s_p + 2 prior_p
  private final double turns;

  /** Keeps the arrays, which nobody else may change any more. */
  ChoiceWeights(double[] weight, double[] trips, double turns) {
    this.weight = weight;
    this.trips = trips;
    this.turns = turns;
  }

  int size() {
    return weight.length;
  }

  /** v, the part of the time a plastic would have if all trays had pieces. */
  double weight(int plastic) {
    return weight[plastic];
  }

  /** The trips' worth of time behind a weight. */
  double trips(int plastic) {
    return trips[plastic];
  }

  /** Independent choices one trip is worth: 1 if a single plastic stays on all day. */
  double turns() {
    return turns;
  }
}

package traytally.restock;

import java.util.function.ToDoubleFunction;
import traytally.plastic.Plastic;

/** How much each plastic is wanted on one kind of trip; immutable. */
final class ChoiceWeights {
  private final double[] weight; // plastics: v, summing to one
  private final double[] trips; // plastics: Σ w s_p + 2 prior_p
  private final double turns;
  private final ToDoubleFunction<Plastic> newcomer;

  /** Keeps the arrays, which nobody else may change any more. */
  ChoiceWeights(double[] weight, double[] trips, double turns, ToDoubleFunction<Plastic> newcomer) {
    this.weight = weight;
    this.trips = trips;
    this.turns = turns;
    this.newcomer = newcomer;
  }

  int size() {
    return weight.length;
  }

  /** v, the part of the time a plastic would have if all trays had pieces. */
  double weight(int plastic) {
    return weight[plastic];
  }

  /** v of a plastic that is not among them, were it alone to join them. */
  double newcomer(Plastic plastic) {
    return newcomer.applyAsDouble(plastic);
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

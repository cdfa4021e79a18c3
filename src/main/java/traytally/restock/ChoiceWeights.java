package traytally.restock;

import java.util.function.ToDoubleFunction;
import traytally.plastic.Plastic;

/** How much each plastic is wanted on one kind of trip; immutable. */
final class ChoiceWeights {
  private final double[] weight; // plastics: v, summing to one
  private final double[] doubt; // plastics: variance of v over its square
  private final double newcomersDoubt;
  private final double turns;
  private final ToDoubleFunction<Plastic> newcomer;

  ChoiceWeights(Liking liking, double turns, ToDoubleFunction<Plastic> newcomer) {
    this.weight = liking.weights();
    this.doubt = liking.doubts();
    this.newcomersDoubt = liking.newcomersDoubt();
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

  /** Variance of a weight over its square: what the log leaves open. */
  double doubt(int plastic) {
    return doubt[plastic];
  }

  /** The same of a plastic that is not among them. */
  double newcomersDoubt() {
    return newcomersDoubt;
  }

  /** Independent choices one trip is worth: 1 if a single plastic stays on all day. */
  double turns() {
    return turns;
  }
}

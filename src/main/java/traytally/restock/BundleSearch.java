package traytally.restock;

import java.util.List;
import java.util.Optional;

/**
 * Picks one bundle of each plastic: the most value within some limits.
 *
 * <p>What is worth more than a floor is searched in full ({@link Core}). The floor starts just
 * below the bound and is lowered until a choice above it is found, or it comes down to the best
 * basket known (after the growing core of Pisinger, European Journal of Operational Research 83(2),
 * 1995, 394–410). docs/buying.md has the proof.
 */
final class BundleSearch {
  /** How far below the bound the first floor lies, in steps, and by how much more each next. */
  private static final double LOWER = 1.5;

  /** Choices kept at a time at first: enough to find a good basket. */
  private static final int FEW = 2_000;

  /** Choices kept at a time at most; where more are needed the result is not proven best. */
  private static final int MANY = 50_000;

  /** The part of a step that is as good as nothing. */
  private static final double NOTHING = 1.0 / 16;

  /**
   * What a search came to.
   *
   * @param best empty if nothing better was found
   * @param proven whether nothing was left out that might have been better
   * @param choices how many were looked at
   */
  record Outcome(Optional<List<Bundle>> best, boolean proven, long choices) {}

  private final Limits limits;
  private final LimitPrices prices;
  private final double step;

  /**
   * A search within some limits.
   *
   * @param step value by which a basket must be better to count as such
   */
  BundleSearch(Limits limits, double step) {
    this.limits = limits;
    this.prices = new LimitPrices(limits);
    this.step = step;
  }

  /** No choice is worth more; negative infinity if there is none. */
  double bound() {
    return prices.bound();
  }

  /** By plastic, the bundles that could be part of a choice worth more than {@code known}. */
  List<List<Bundle>> above(double known) {
    return prices.above(known, limits.all()).stream()
        .map(own -> own.stream().map(Pick::bundle).toList())
        .toList();
  }

  /**
   * The best choice worth more than {@code known}.
   *
   * @param mostChoices how many to look at
   */
  Outcome better(double known, long mostChoices) {
    Optional<Chosen> best = Optional.empty();
    long choices = 0;
    double least = known;
    double gap = step * LOWER;
    int kept = FEW;
    boolean proven = !(bound() > known);
    while (!proven && choices < mostChoices) {
      double floor = Math.max(least, bound() - gap);
      Core core = new Core(limits, prices, floor, kept);
      Optional<Chosen> found = core.best(step * NOTHING);
      choices += core.choices();
      if (found.isPresent()) {
        best = found;
        least = found.get().value() + step * NOTHING;
        gap = Double.MAX_VALUE;
        proven = core.complete();
      } else if (core.complete()) {
        gap *= LOWER;
        proven = floor <= least;
      } else if (kept == MANY) {
        break;
      } else {
        kept = MANY;
      }
    }
    return new Outcome(best.map(Chosen::bundles), proven, choices);
  }
}

package traytally.restock;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import traytally.plastic.Plastic;

/** How often an angler changes what is tied on. */
final class Turnover {
  /** Plastics tied on in turn on one trip where no log tells (assumption). */
  private static final double ASSUMED = 4;

  /** Trips that the assumption is worth. */
  private static final double ASSUMED_TRIPS = 2;

  /** From here on more turns change a forecast's spread no more. */
  private static final double MOST = 50;

  private Turnover() {}

  /**
   * c, the independent choices that make the shares of a trip as uneven as they were.
   *
   * <p>By the moments of the multinomial E Σ_p s² = B + (1 − B) / c within a trip, where B = E Σ_p
   * s_p s'_p of two different trips; so 1/c is (within − between) / (1 − between), whatever the
   * weights are.
   *
   * @param weight of each outing
   */
  static double turns(List<Outing> outings, double[] weight) {
    double within = 0;
    double ownPairs = 0;
    double all = 0;
    double squares = 0;
    Map<Plastic, Double> time = new HashMap<>();
    for (int t = 0; t < weight.length; t++) {
      double own = 0;
      for (Map.Entry<Plastic, Double> tied : outings.get(t).share().entrySet()) {
        own += tied.getValue() * tied.getValue();
        time.merge(tied.getKey(), weight[t] * tied.getValue(), Double::sum);
      }
      within += weight[t] * own;
      ownPairs += weight[t] * weight[t] * own;
      all += weight[t];
      squares += weight[t] * weight[t];
    }
    double pairs = all * all - squares;
    if (pairs <= 1e-9) {
      return ASSUMED;
    }
    double likeness = time.values().stream().mapToDouble(each -> each * each).sum() - ownPairs;
    double between = Math.min(1, likeness / pairs);
    double inverse =
        between > 1 - 1e-9 ? 1 : Math.max(0, Math.min(1, (within / all - between) / (1 - between)));
    double withAssumed = (all * inverse + ASSUMED_TRIPS / ASSUMED) / (all + ASSUMED_TRIPS);
    return Math.max(1, Math.min(MOST, 1 / withAssumed));
  }

  /**
   * The part of a trip for which a plastic stays on once tied on, if neither the day nor its tray
   * ends first: time over turns that ended by choice (exponential times, some cut short).
   *
   * @param cutShort turns that ended with the last piece
   */
  static double spell(List<Outing> outings, double cutShort) {
    double turns = outings.stream().mapToDouble(outing -> outing.share().size()).sum();
    double ended = turns - outings.size() - cutShort;
    return ended > 0 ? outings.size() / ended : Double.POSITIVE_INFINITY;
  }
}

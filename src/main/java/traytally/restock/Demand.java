package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import traytally.numeric.NegativeBinomial;
import traytally.performance.Levels;
import traytally.plastic.Plastic;
import traytally.trip.PlannedTrip;

/** What the horizon's trips ask of every tray, be it endless or as it is. */
final class Demand {
  /** Rounds in which the hours of trays that empty go to what remains (method, section 2). */
  private static final int PASSES = 3;

  private final Levels<Plastic> plastics;
  private final List<PlannedTrip> trips;
  private final List<ChoiceWeights> weights; // one per trip
  private final LossModel losses;

  Demand(Levels<Plastic> plastics, List<PlannedTrip> trips, Choice choice, LossModel losses) {
    this.plastics = plastics;
    this.trips = trips;
    this.weights = trips.stream().map(choice::weights).toList();
    this.losses = losses;
  }

  /**
   * The use of each plastic if no tray empties.
   *
   * @param inPlay which trays the trips choose from, beside the plastic's own
   */
  List<Use> endless(boolean[] inPlay) {
    double[] open = new double[plastics.size()];
    for (int p = 0; p < open.length; p++) {
      open[p] = inPlay[p] ? 1 : 0;
    }
    return uses(open);
  }

  /**
   * The use of each plastic if its own tray does not empty but the others are as they are.
   *
   * <p>A tray is open for the part of its hours that its pieces are expected to last, E min(U, x) /
   * E U.
   *
   * @param pieces x, by plastic
   */
  List<Use> asItIs(int[] pieces) {
    double[] open = new double[pieces.length];
    Arrays.setAll(open, p -> pieces[p] > 0 ? 1 : 0);
    List<Use> uses = uses(open);
    for (int pass = 1; pass < PASSES; pass++) {
      for (int p = 0; p < open.length; p++) {
        NegativeBinomial use = uses.get(p).distribution();
        if (pieces[p] > 0 && use.mean() > 0) {
          open[p] = 1 - use.expectedShortage(pieces[p]) / use.mean();
        }
      }
      uses = uses(open);
    }
    return uses;
  }

  /**
   * Shares the trips' hours out.
   *
   * @param open the part of the horizon that each tray has pieces; a plastic's own counts as 1
   */
  private List<Use> uses(double[] open) {
    double[] atHand = atHand(open);
    List<Use> uses = new ArrayList<>(open.length);
    for (int p = 0; p < open.length; p++) {
      uses.add(use(p, open[p], atHand));
    }
    return uses;
  }

  private double[] atHand(double[] open) {
    double[] atHand = new double[trips.size()]; // Σ open × v, by trip
    for (int t = 0; t < atHand.length; t++) {
      for (int p = 0; p < open.length; p++) {
        atHand[t] += open[p] * weights.get(t).weight(p);
      }
    }
    return atHand;
  }

  /**
   * The use of a plastic that nobody has yet, were it alone to join those in play.
   *
   * @param others how many others join beside it where nothing else is in play
   */
  Use newcomer(Plastic plastic, boolean[] inPlay, int others) {
    double[] open = new double[plastics.size()];
    Arrays.setAll(open, p -> inPlay[p] ? 1 : 0);
    double[] atHand = atHand(open);
    double[] weight = new double[trips.size()];
    for (int t = 0; t < weight.length; t++) {
      weight[t] = weights.get(t).newcomer(plastic);
      atHand[t] = atHand[t] > 0 ? atHand[t] : others * weight[t];
    }
    return use(plastic, weight, atHand, t -> weights.get(t).newcomersDoubt());
  }

  private Use use(int p, double open, double[] atHand) {
    double[] weight = new double[trips.size()];
    double[] others = new double[trips.size()];
    for (int t = 0; t < weight.length; t++) {
      weight[t] = weights.get(t).weight(p);
      others[t] = Math.max(0, atHand[t] - open * weight[t]);
    }
    return use(plastics.values().get(p), weight, others, t -> weights.get(t).doubt(p));
  }

  /**
   * A plastic's use.
   *
   * @param weight v of the plastic, by trip
   * @param others Σ v of the others at hand, by trip
   * @param doubt variance of the weight over its square, by trip
   */
  private Use use(Plastic plastic, double[] weight, double[] others, IntToDoubleFunction doubt) {
    List<TripUse> own = new ArrayList<>(trips.size());
    double mean = 0;
    double rateVariance = 0;
    double shareVariance = 0;
    for (int t = 0; t < trips.size(); t++) {
      PlannedTrip trip = trips.get(t);
      double turns = weights.get(t).turns();
      double share = weight[t] / (weight[t] + others[t]);
      LossRate rate = losses.rate(plastic, trip.water());
      TripUse use = new TripUse(trip.date(), trip.water(), trip.rodHours(), share, turns, rate);
      own.add(use);
      mean += use.mean();
      rateVariance += use.mean() * (rate.logVariance() - rate.dayVariance());
      shareVariance += use.mean() * (1 - share) * doubt.applyAsDouble(t);
    }
    return mean > 0
        ? new Use(own, losses.dispersion(), rateVariance / mean, shareVariance / mean)
        : new Use(own, losses.dispersion(), 0, 0);
  }
}

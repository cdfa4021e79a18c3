package traytally.restock;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import traytally.performance.Levels;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;

/**
 * What the angler ties on, as choices among the trays that had pieces.
 *
 * <p>Luce's choice rule (Luce, Individual Choice Behavior, 1959): plastic p is chosen from the
 * trays at hand with probability v_p / Σ_q v_q. The weights are the fixed point of
 *
 * <pre>v_p ← (Σ w s_p + 2 prior_p) / (Σ w a_p / Σ_q a_q v_q + 2)</pre>
 *
 * <p>over past trips, w a trip's weight, s_p the plastic's share of its time, a_p the part of it in
 * which its tray had pieces: all, none, or until its last was lost; the minorise-maximise step of
 * Hunter, Annals of Statistics 32(1), 2004, 384–406, with a prior of two trips. At the fixed point
 * they sum to one. A trip that began with an empty tray is so no evidence that the plastic was not
 * wanted.
 */
final class Choice {
  /** Days in which what a trip says of habits loses half its weight (method, section 2). */
  private static final double HALF_LIFE_DAYS = 365;

  /** Trips the prior is worth (method, section 2). */
  static final double PRIOR_TRIPS = 2;

  /** Plastics tied on in turn on one trip where no log tells (assumption). */
  private static final double ASSUMED_TURNS = 4;

  /** From here on more turns change a forecast's spread no more. */
  private static final double MOST_TURNS = 50;

  /** Change of a weight between rounds that is as good as none; a plastic's is about 1/100. */
  private static final double SETTLED = 1e-8;

  private static final int MOST_ROUNDS = 1000;

  private record Context(Name water, Name species, Optional<Clarity> clarity) {}

  private final Levels<Plastic> plastics;
  private final List<Outing> outings;
  private final double[][] had; // a: outings × plastics
  private final LocalDate asOf;
  private final Map<Context, ChoiceWeights> found = new HashMap<>();

  Choice(Levels<Plastic> plastics, List<Outing> outings, TrayHistory history, LocalDate asOf) {
    this.plastics = plastics;
    this.outings = outings;
    this.asOf = asOf;
    this.had = new double[outings.size()][plastics.size()];
    for (int t = 0; t < outings.size(); t++) {
      for (int p = 0; p < plastics.size(); p++) {
        had[t][p] = part(plastics.values().get(p), outings.get(t), history);
      }
    }
  }

  private static double part(Plastic plastic, Outing outing, TrayHistory history) {
    if (!history.had(plastic, outing.trip())) {
      return 0;
    }
    return history.emptied(plastic, outing.trip()) ? outing.until().getOrDefault(plastic, 1.0) : 1;
  }

  /** The weights for a trip like {@code plan}. */
  ChoiceWeights weights(PlannedTrip plan) {
    return found.computeIfAbsent(
        new Context(plan.water(), plan.species(), plan.clarity()), context -> settle(plan));
  }

  private ChoiceWeights settle(PlannedTrip plan) {
    double[] tripWeight = new double[outings.size()];
    for (int t = 0; t < tripWeight.length; t++) {
      Outing outing = outings.get(t);
      double age = ChronoUnit.DAYS.between(outing.trip().date(), asOf);
      tripWeight[t] = Math.pow(0.5, age / HALF_LIFE_DAYS) * outing.likeness(plan);
    }
    double[] time = time(tripWeight); // Σ w s_p
    double[] prior = prior(time, tripWeight);
    double[] trips = new double[time.length];
    for (int p = 0; p < trips.length; p++) {
      trips[p] = time[p] + PRIOR_TRIPS * prior[p];
    }
    double[] weight = prior;
    double change = 1;
    for (int round = 0; round < MOST_ROUNDS && change > SETTLED; round++) {
      double[] next = next(weight, trips, tripWeight);
      change = 0;
      for (int p = 0; p < next.length; p++) {
        change = Math.max(change, Math.abs(next[p] - weight[p]));
      }
      weight = next;
    }
    return new ChoiceWeights(weight, trips, turns(weight, tripWeight), newcomers(time, tripWeight));
  }

  /** What a plastic not among them would weigh: its prior, a sum of one over those there are. */
  private ToDoubleFunction<Plastic> newcomers(double[] time, double[] tripWeight) {
    double[] share = share(time, tripWeight);
    double even = share.length == 0 ? 1 : 1.0 / share.length;
    Map<Name, Double> body = byGroup(averages(share, Plastic::body), Plastic::body);
    Map<Name, Double> colour = byGroup(averages(share, Plastic::colour), Plastic::colour);
    return plastic ->
        (body.getOrDefault(plastic.body(), even)
                + colour.getOrDefault(plastic.colour(), even)
                + even)
            / 3;
  }

  private Map<Name, Double> byGroup(double[] averages, Function<Plastic, Name> group) {
    Map<Name, Double> byGroup = new HashMap<>();
    for (int p = 0; p < averages.length; p++) {
      byGroup.put(group.apply(plastics.values().get(p)), averages[p]);
    }
    return byGroup;
  }

  private double[] time(double[] tripWeight) {
    double[] time = new double[plastics.size()];
    for (int t = 0; t < tripWeight.length; t++) {
      double w = tripWeight[t];
      outings.get(t).share().forEach((plastic, share) -> time[plastics.of(plastic)] += w * share);
    }
    return time;
  }

  /**
   * A third each: the average of the body, the average of the colour, and the same for all, where
   * an average is of the share of the trips that could have chosen the plastic.
   */
  private double[] prior(double[] time, double[] tripWeight) {
    int n = plastics.size();
    double[] share = share(time, tripWeight);
    double[] body = averages(share, Plastic::body);
    double[] colour = averages(share, Plastic::colour);
    double[] prior = new double[n];
    for (int p = 0; p < n; p++) {
      prior[p] = (body[p] + colour[p] + 1.0 / n) / 3;
    }
    return prior;
  }

  /** Each plastic's part of the trips that could have chosen it. */
  private double[] share(double[] time, double[] tripWeight) {
    double[] share = new double[time.length];
    for (int p = 0; p < share.length; p++) {
      double could = 0;
      for (int t = 0; t < tripWeight.length; t++) {
        could += had[t][p] * tripWeight[t];
      }
      share[p] = could > 0 ? time[p] / could : 0;
    }
    return share;
  }

  /** Each plastic's group average of {@code share}, scaled to sum to one; even if all are zero. */
  private double[] averages(double[] share, Function<Plastic, Name> group) {
    Map<Name, double[]> sums = new HashMap<>(); // sum, count
    for (int p = 0; p < share.length; p++) {
      double[] sum =
          sums.computeIfAbsent(group.apply(plastics.values().get(p)), g -> new double[2]);
      sum[0] += share[p];
      sum[1]++;
    }
    double[] average = new double[share.length];
    double total = 0;
    for (int p = 0; p < share.length; p++) {
      double[] sum = sums.getOrDefault(group.apply(plastics.values().get(p)), new double[] {0, 1});
      average[p] = sum[0] / sum[1];
      total += average[p];
    }
    for (int p = 0; p < share.length; p++) {
      average[p] = total > 0 ? average[p] / total : 1.0 / share.length;
    }
    return average;
  }

  private double[] next(double[] weight, double[] trips, double[] tripWeight) {
    double[] chances = new double[weight.length]; // Σ w a_p / Σ_q a_q v_q
    for (int t = 0; t < tripWeight.length; t++) {
      double atHand = 0;
      for (int p = 0; p < weight.length; p++) {
        atHand += had[t][p] * weight[p];
      }
      double each = tripWeight[t] / atHand;
      for (int p = 0; p < weight.length; p++) {
        chances[p] += had[t][p] * each;
      }
    }
    double[] next = new double[weight.length];
    for (int p = 0; p < weight.length; p++) {
      next[p] = trips[p] / (chances[p] + PRIOR_TRIPS);
    }
    return next;
  }

  /**
   * How many independent choices make the shares of a trip as uneven as they were: with c choices E
   * Σ s² = Σ v² + (1 − Σ v²) / c, v among the trays at hand (moments of the multinomial).
   */
  private double turns(double[] weight, double[] tripWeight) {
    double chosen = 0;
    double expected = 0;
    double all = 0;
    for (int t = 0; t < tripWeight.length; t++) {
      double atHand = 0;
      double squares = 0;
      for (int p = 0; p < weight.length; p++) {
        double open = had[t][p] * weight[p];
        atHand += open;
        squares += open * open;
      }
      expected += tripWeight[t] * squares / (atHand * atHand);
      for (double share : outings.get(t).share().values()) {
        chosen += tripWeight[t] * share * share;
      }
      all += tripWeight[t];
    }
    if (all == 0) {
      return ASSUMED_TURNS;
    }
    double turns = (all - expected) / Math.max(1e-9, chosen - expected);
    return chosen <= expected ? MOST_TURNS : Math.max(1, Math.min(MOST_TURNS, turns));
  }
}

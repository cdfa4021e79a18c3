package traytally.restock;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
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
 * trays at hand with probability v_p / Σ_q v_q. Over past trips, w a trip's weight, it had the time
 * n_p = Σ w s_p of e_p v_p = Σ w a_p v_p / V_p expected, s_p its share of a trip's time, a_p the
 * part of it in which its tray had pieces (all, none, or until its last was lost, or the chance of
 * it), and V_p the weights at hand while it had: a step of Hunter (Annals of Statistics 32(1),
 * 2004, 384–406), but with the prior of {@link Liking}, which finds from the log how far an
 * angler's likings differ, and so how far a weight is drawn to its prior. Weights sum to one. A
 * trip that began with an empty tray is no evidence that the plastic was not wanted.
 *
 * <p>A trip's weight tells how much it says beside the others. Weights w of independent trips are
 * worth (Σ w)² / Σ w² of them (Kish, Survey Sampling, 1965), so they are scaled to sum to that.
 */
final class Choice {
  /** Days in which what a trip says of habits loses half its weight (method, section 2). */
  private static final double HALF_LIFE_DAYS = 365;

  /** Change of a weight between rounds that is as good as none; a plastic's is about 1/100. */
  private static final double SETTLED = 1e-8;

  private static final int MOST_ROUNDS = 1000;

  /** Rounds in which σ and the weights settle in turn; σ moves by steps of a seventh. */
  private static final int LIKING_ROUNDS = 4;

  private record Context(Name water, Name species, Optional<Clarity> clarity) {}

  private final Levels<Plastic> plastics;
  private final List<Outing> outings;
  private final double[][] had; // a: outings × plastics
  private final LocalDate asOf;
  private final Map<Context, ChoiceWeights> found = new HashMap<>();

  Choice(Levels<Plastic> plastics, LikelyTrays trays, LocalDate asOf) {
    this.plastics = plastics;
    this.outings = trays.goneOn();
    this.had = trays.parts(outings);
    this.asOf = asOf;
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
    scale(tripWeight);
    double[] time = time(tripWeight); // Σ w s_p
    double turns = Turnover.turns(outings, tripWeight);
    Liking liking = settle(time, tripWeight, turns);
    return new ChoiceWeights(liking, turns, newcomers(time, tripWeight));
  }

  /** To sum to what they are worth; see above. */
  private static void scale(double[] tripWeight) {
    double sum = Arrays.stream(tripWeight).sum();
    double squares = Arrays.stream(tripWeight).map(w -> w * w).sum();
    for (int t = 0; t < tripWeight.length; t++) {
      tripWeight[t] *= sum / squares;
    }
  }

  /** Weights that make the chances by which they are found. */
  private Liking settle(double[] time, double[] tripWeight, double turns) {
    double[] prior = prior(time, tripWeight);
    double[] chosen = Arrays.stream(time).map(n -> turns * n).toArray();
    double[] expected = expected(prior, prior, tripWeight, turns);
    double sd = Liking.sd(chosen, expected, prior);
    Liking liking = new Liking(chosen, expected, prior, sd);
    for (int step = 0; step < LIKING_ROUNDS; step++) {
      double change = 1;
      for (int round = 0; round < MOST_ROUNDS && change > SETTLED; round++) {
        double[] before = liking.weights();
        expected = expected(before, prior, tripWeight, turns);
        liking = new Liking(chosen, expected, prior, sd);
        change = furthest(before, liking.weights());
      }
      sd = Liking.sd(chosen, expected, prior);
    }
    return liking;
  }

  private static double furthest(double[] before, double[] after) {
    double furthest = 0;
    for (int p = 0; p < before.length; p++) {
      furthest = Math.max(furthest, Math.abs(after[p] - before[p]));
    }
    return furthest;
  }

  /** Choices of each plastic that were to be expected if it weighed its prior. */
  private double[] expected(double[] weight, double[] prior, double[] tripWeight, double turns) {
    double[] expected = new double[weight.length]; // e = Σ w a_p / V_p at first
    for (int t = 0; t < tripWeight.length; t++) {
      addChances(expected, had[t], weight, tripWeight[t]);
    }
    for (int p = 0; p < expected.length; p++) {
      expected[p] *= turns * prior[p];
    }
    return expected;
  }

  /**
   * Adds what a trip gives each plastic of chances, w a_p / V_p, V_p as while its tray had pieces.
   */
  static void addChances(double[] chances, double[] open, double[] weight, double tripWeight) {
    double atHand = atHand(open, weight);
    for (int p = 0; p < weight.length; p++) {
      if (open[p] > 0) {
        chances[p] += tripWeight * open[p] / (atHand + (1 - open[p]) * weight[p]);
      }
    }
  }

  /** Σ_p a_p v_p, the weight of all that was at hand on a trip. */
  static double atHand(double[] open, double[] weight) {
    double atHand = 0;
    for (int p = 0; p < weight.length; p++) {
      atHand += open[p] * weight[p];
    }
    return atHand;
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
   * A third each: the average of the others of its body, of the others of its colour, and the same
   * for all, where an average is of the share of the trips that could have chosen a plastic. What
   * the plastic itself did is no part of its prior.
   */
  private double[] prior(double[] time, double[] tripWeight) {
    int n = plastics.size();
    double[] share = share(time, tripWeight);
    double[] body = others(share, Plastic::body);
    double[] colour = others(share, Plastic::colour);
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

  /** Each plastic's group average, scaled to sum to one. */
  private double[] averages(double[] share, Function<Plastic, Name> group) {
    Map<Name, double[]> sums = sums(share, group);
    double[] average = new double[share.length];
    for (int p = 0; p < share.length; p++) {
      double[] sum = sums.getOrDefault(group.apply(plastics.values().get(p)), new double[] {0, 1});
      average[p] = sum[0] / sum[1];
    }
    return toSumOne(average);
  }

  /** The same without the plastic itself; where there is no other, of all. */
  private double[] others(double[] share, Function<Plastic, Name> group) {
    Map<Name, double[]> sums = sums(share, group);
    double all = Arrays.stream(share).average().orElse(0);
    double[] average = new double[share.length];
    for (int p = 0; p < share.length; p++) {
      double[] sum = sums.getOrDefault(group.apply(plastics.values().get(p)), new double[] {0, 1});
      average[p] = sum[1] > 1 ? (sum[0] - share[p]) / (sum[1] - 1) : all;
    }
    return toSumOne(average);
  }

  /** Sum and count by group. */
  private Map<Name, double[]> sums(double[] share, Function<Plastic, Name> group) {
    Map<Name, double[]> sums = new HashMap<>();
    for (int p = 0; p < share.length; p++) {
      double[] sum =
          sums.computeIfAbsent(group.apply(plastics.values().get(p)), g -> new double[2]);
      sum[0] += share[p];
      sum[1]++;
    }
    return sums;
  }

  /** Even if all are zero. */
  private static double[] toSumOne(double[] values) {
    double total = Arrays.stream(values).sum();
    return Arrays.stream(values)
        .map(value -> total > 0 ? value / total : 1.0 / values.length)
        .toArray();
  }
}

package traytally.restock;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import traytally.performance.Levels;
import traytally.performance.Turn;
import traytally.plastic.Plastic;
import traytally.trip.Trip;

/**
 * Which trays past trips could choose from: as the ledger knows, and before it as chances.
 *
 * <p>Before its first count a tray is a hidden Markov chain (Rabiner, Proceedings of the IEEE 77,
 * 1989, 257–286), full or empty at the start of each trip. A trip that lost pieces of it empties it
 * with chance ε, any other with a small part of that; before the next trip an empty one is filled
 * with chance ρ. An empty tray is not fished; a full one is left alone with chance (1 − v/V)^c, v/V
 * its part of Luce's weights at hand and c the choices a trip is worth. What the first count found
 * ends the chain. ε, ρ and the chance to be full at first are common to all trays: Baum and Welch's
 * estimates, from these chains and from the trips that the ledger knows.
 */
final class LikelyTrays {
  /** Weights and chains in turn; after four rounds a chance moves by less than a hundredth. */
  private static final int ROUNDS = 6;

  private static final int WEIGHT_ROUNDS = 5;

  /** Trips of an even share that a weight begins with. */
  private static final double EVEN_TRIPS = 2;

  /** One trip in so many empties a tray, or fills it, where no log tells (assumption). */
  private static final double ASSUMED_ONE_IN = 10;

  /** One tray in so many is full at first, where no log tells (assumption). */
  private static final double ASSUMED_FULL_ONE_IN = 2;

  /** How much rarer a tray empties without a loss in the log: lent, spoilt, not noted. */
  private static final double UNSEEN = 0.02;

  /** So often in so many, beside what is counted. */
  private static final class Rate {
    private double times = 1;
    private double of;

    Rate(double of) {
      this.of = of;
    }

    void add(double chance, double out) {
      times += chance;
      of += out;
    }

    double value() {
      return times / of;
    }
  }

  private final Levels<Plastic> plastics;
  private final List<Outing> outings;
  private final double turns;
  private final int[] unknown; // plastics: outings before the ledger knows the tray
  private final boolean[] fullAfter; // plastics: what the first count found
  private final boolean[][] lost; // outings × plastics
  private final double[][] had; // outings × plastics
  private final double[][] emptied; // outings × plastics
  private final double[] weight; // plastics
  private Rate emptying = new Rate(ASSUMED_ONE_IN); // ε
  private Rate filling = new Rate(ASSUMED_ONE_IN); // ρ
  private Rate fullAtFirst = new Rate(ASSUMED_FULL_ONE_IN);

  LikelyTrays(
      Levels<Plastic> plastics, List<Outing> outings, List<Turn> turns, TrayHistory history) {
    this.plastics = plastics;
    this.outings = outings;
    int n = plastics.size();
    double[] alike = new double[outings.size()];
    Arrays.fill(alike, 1);
    this.turns = Turnover.turns(outings, alike);
    unknown = new int[n];
    fullAfter = new boolean[n];
    lost = new boolean[outings.size()][n];
    had = new double[outings.size()][n];
    emptied = new double[outings.size()][n];
    weight = new double[n];
    Arrays.fill(weight, 1.0 / n);
    losses(turns);
    for (int p = 0; p < n; p++) {
      known(p, history);
    }
    boolean allKnown = Arrays.stream(unknown).allMatch(trips -> trips == 0);
    for (int round = 0; round < ROUNDS && !allKnown; round++) {
      weigh();
      chains();
    }
  }

  private void losses(List<Turn> log) {
    Map<Trip, Integer> number = new HashMap<>();
    for (int t = 0; t < outings.size(); t++) {
      number.put(outings.get(t).trip(), t);
    }
    for (Turn turn : log) {
      Integer t = number.get(turn.trip());
      if (t != null && turn.use() > 0) {
        lost[t][plastics.of(turn.plastic())] = true;
      }
    }
  }

  private void known(int p, TrayHistory history) {
    Plastic plastic = plastics.values().get(p);
    fullAfter[p] = history.fullWhenFirstKnown(plastic);
    for (int t = 0; t < outings.size(); t++) {
      Trip trip = outings.get(t).trip();
      boolean knows = history.knows(plastic, trip);
      unknown[p] += knows ? 0 : 1;
      had[t][p] = !knows || history.had(plastic, trip) ? 1 : 0;
      emptied[t][p] = history.emptied(plastic, trip) ? 1 : 0;
    }
  }

  /** The outings as they would have been, had no tray that emptied ended a turn. */
  List<Outing> goneOn() {
    double cutShort = Arrays.stream(emptied).flatMapToDouble(Arrays::stream).sum();
    double spell = Turnover.spell(outings, cutShort);
    Outing[] longer = new Outing[outings.size()];
    Arrays.setAll(
        longer, t -> outings.get(t).goneOn(spell, plastic -> emptied[t][plastics.of(plastic)]));
    return List.of(longer);
  }

  /**
   * The part of each outing in which each tray had pieces: all, none, or until its last was lost.
   *
   * @param in the same outings, perhaps {@link #goneOn}
   */
  double[][] parts(List<Outing> in) {
    double[][] parts = new double[in.size()][weight.length];
    for (int t = 0; t < parts.length; t++) {
      for (int p = 0; p < weight.length; p++) {
        parts[t][p] = had[t][p];
        if (emptied[t][p] > 0) {
          double until = in.get(t).until().getOrDefault(plastics.values().get(p), 1.0);
          parts[t][p] -= emptied[t][p] * (1 - until);
        }
      }
    }
    return parts;
  }

  /** Luce's weights, all trips alike. */
  private void weigh() {
    double[] time = new double[weight.length];
    Arrays.fill(time, EVEN_TRIPS / weight.length);
    for (Outing outing : outings) {
      outing.share().forEach((plastic, share) -> time[plastics.of(plastic)] += share);
    }
    double[][] parts = parts(outings);
    for (int round = 0; round < WEIGHT_ROUNDS; round++) {
      double[] chances = new double[weight.length];
      Arrays.fill(chances, EVEN_TRIPS);
      for (double[] open : parts) {
        Choice.addChances(chances, open, weight, 1);
      }
      for (int p = 0; p < weight.length; p++) {
        weight[p] = time[p] / chances[p];
      }
    }
  }

  private void chains() {
    double[][] parts = parts(outings);
    double[] atHand = new double[parts.length];
    Arrays.setAll(atHand, t -> Choice.atHand(parts[t], weight));
    double empties = emptying.value();
    double fills = filling.value();
    double first = fullAtFirst.value();
    emptying = new Rate(ASSUMED_ONE_IN);
    filling = new Rate(ASSUMED_ONE_IN);
    fullAtFirst = new Rate(ASSUMED_FULL_ONE_IN);
    for (int p = 0; p < weight.length; p++) {
      if (unknown[p] > 0) {
        chain(p, parts, atHand, first, empties, fills);
        fullAtFirst.add(had[0][p], 1);
      }
      for (int t = unknown[p]; t < outings.size(); t++) {
        if (lost[t][p]) {
          emptying.add(emptied[t][p], had[t][p]);
        }
        if (t + 1 < outings.size()) {
          filling.add((1 - had[t][p]) * had[t + 1][p], 1 - had[t][p]);
        }
      }
    }
  }

  /** Forward to the first count, and back. */
  private void chain(
      int p, double[][] parts, double[] atHand, double first, double empties, double fills) {
    int trips = unknown[p];
    double[] leaves = new double[trips]; // the chance that the trip empties a full tray
    double[] left = new double[trips]; // that a full tray was fished as it was, up to a factor
    double[] full = new double[trips]; // that it was full, from the trips before
    double now = first;
    for (int t = 0; t < trips; t++) {
      full[t] = now;
      leaves[t] = lost[t][p] ? empties : UNSEEN * empties;
      left[t] = fished(t, p) ? 1 : Math.pow(1 - chosen(p, parts[t][p], atHand[t]), turns);
      double ifFull = now * left[t];
      double ifEmpty = fished(t, p) ? 0 : 1 - now;
      now = (ifFull * (1 - leaves[t]) + ifEmpty * fills) / (ifFull + ifEmpty);
    }
    double later = fullAfter[p] ? 1 : 0; // what came after speaks for full, beside empty
    double laterEmpty = 1 - later;
    for (int t = trips - 1; t >= 0; t--) {
      double stays = full[t] * left[t] * (1 - leaves[t]) * later;
      double goes = full[t] * left[t] * leaves[t] * laterEmpty;
      double seenEmpty = fished(t, p) ? 0 : 1;
      double filled = (1 - full[t]) * seenEmpty * fills * later;
      double stayed = (1 - full[t]) * seenEmpty * (1 - fills) * laterEmpty;
      double all = stays + goes + filled + stayed;
      had[t][p] = (stays + goes) / all;
      emptied[t][p] = goes / all;
      if (lost[t][p]) {
        emptying.add(goes / all, had[t][p]);
      }
      filling.add(filled / all, (filled + stayed) / all);
      double ifFull = left[t] * ((1 - leaves[t]) * later + leaves[t] * laterEmpty);
      double ifEmpty = seenEmpty * (fills * later + (1 - fills) * laterEmpty);
      later = ifFull / (ifFull + ifEmpty);
      laterEmpty = 1 - later;
    }
  }

  private boolean fished(int t, int p) {
    return outings.get(t).share().containsKey(plastics.values().get(p));
  }

  /** Its part of what is at hand on a trip, if it is. */
  private double chosen(int p, double open, double atHand) {
    return weight[p] / (weight[p] + Math.max(0, atHand - open * weight[p]));
  }
}

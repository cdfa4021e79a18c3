package traytally.restock;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import traytally.performance.Performance;
import traytally.plastic.Plastic;

/**
 * The takes that further pieces save over the horizon.
 *
 * <p>With x pieces in the tray E(U − x)⁺ are missing, worth 1/λ rod-hours each, λ the pieces lost
 * an hour. In such an hour the rest of the tray is tied on by Luce's rule, so that with r the
 * plastic's takes an hour and r' the rest's the takes lost are about r − r', over the joint
 * posterior: a colour that may be good is worth something, and one that is no better than what else
 * is in the tray is worth little.
 */
final class Worth {
  /** Enough for the mean of an excess to a few hundredths of itself. */
  private static final int DRAWS = 1000;

  private static final long SEED = 20_260_501;

  /** Takes that are as good as none. */
  private static final double NOTHING = 1e-6;

  /** Pieces of one plastic at most that are looked at. */
  private static final int MOST_PIECES = 2000;

  private final Map<Plastic, Prospect> prospects = new TreeMap<>();
  private final Map<Plastic, Integer> column = new HashMap<>();
  private final Set<Plastic> onHand = new TreeSet<>();
  private final double[][] rates; // draws × plastics
  private final double[] hours; // plastics: tied on over the horizon
  private final double[] onHandTakes; // draws: of all in the tray, in these hours
  private final double hoursOnHand;

  /** The worth of these plastics' pieces; stand-ins are taken from their trays as they are. */
  Worth(Performance performance, Collection<Prospect> all) {
    for (Prospect prospect : all) {
      prospects.put(prospect.plastic(), prospect);
    }
    for (Plastic plastic : prospects.keySet()) {
      column.put(plastic, column.size());
    }
    prospects.values().stream()
        .filter(prospect -> prospect.pieces().count() > 0)
        .forEach(prospect -> onHand.add(prospect.plastic()));
    rates = performance.drawRates(List.copyOf(prospects.keySet()), DRAWS, SEED);
    hours = prospects.values().stream().mapToDouble(p -> p.endless().hours()).toArray();
    onHandTakes = new double[rates.length];
    double sum = 0;
    for (Plastic plastic : onHand) {
      int own = column(plastic);
      sum += hours[own];
      for (int d = 0; d < onHandTakes.length; d++) {
        onHandTakes[d] += hours[own] * rates[d][own];
      }
    }
    hoursOnHand = sum;
  }

  /**
   * Takes lost in each rod-hour that it is missing: half-way between E max(0, r − r') and max(0, E
   * (r − r')).
   *
   * <p>The first is right for an angler who finds out at once which of the two is better, the
   * second for one who never does. Who changes when nothing takes is between them (assumption; over
   * simulated seasons half-way loses least whichever way the takes lost are counted).
   */
  double edge(Plastic plastic) {
    int own = column(plastic);
    double weight = onHand.contains(plastic) ? hours[own] : 0;
    double others = Math.max(0, hoursOnHand - weight);
    double ifFoundOut = 0;
    double onAverage = 0;
    for (int d = 0; d < rates.length; d++) {
      double rest = others > 0 ? (onHandTakes[d] - weight * rates[d][own]) / others : 0;
      ifFoundOut += Math.max(0, rates[d][own] - rest);
      onAverage += rates[d][own] - rest;
    }
    return (ifFoundOut + Math.max(0, onAverage)) / 2 / rates.length;
  }

  private int column(Plastic plastic) {
    return Optional.ofNullable(column.get(plastic))
        .orElseThrow(() -> new IllegalArgumentException("nothing is known of " + plastic));
  }

  /** Takes saved by so many pieces more than are in the tray. */
  Basket.Gain gain(Prospect prospect, boolean wanted) {
    int had = prospect.pieces().count();
    double each = takesAPiece(prospect);
    int most = 0;
    List<Double> saved = new ArrayList<>(List.of(0.0));
    while (each * missing(prospect, had + most) > NOTHING && most < MOST_PIECES) {
      most++;
      saved.add(each * (missing(prospect, had) - missing(prospect, had + most)));
    }
    return new Basket.Gain(most, pieces -> saved.get(Math.min(pieces, saved.size() - 1)), wanted);
  }

  /** Takes that {@code more} pieces save where the tray holds {@code had}. */
  double saved(Prospect prospect, int had, int more) {
    return takesAPiece(prospect) * (missing(prospect, had) - missing(prospect, had + more));
  }

  private double takesAPiece(Prospect prospect) {
    double mean = prospect.endless().mean();
    return mean > 0 ? edge(prospect.plastic()) * prospect.endless().hours() / mean : 0;
  }

  private static double missing(Prospect prospect, int pieces) {
    return prospect.endless().distribution().expectedShortage(pieces);
  }
}

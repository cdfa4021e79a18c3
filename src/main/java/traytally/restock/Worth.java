package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import traytally.performance.Performance;
import traytally.plastic.Plastic;

/**
 * The takes that further pieces save over the horizon.
 *
 * <p>With x pieces in the tray E(U − x)⁺ are missing, worth 1/λ rod-hours each, λ the pieces lost
 * an hour. In such an hour the stand-in is tied on, so that E max(0, r − r') takes are lost, r the
 * plastic's takes an hour and r' its stand-in's, over the joint posterior: a colour that may be
 * good is worth something, and one with a good stand-in in the tray is worth less.
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
  private final List<Plastic> onHand = new ArrayList<>();
  private final double[][] rates; // draws × plastics
  private final double[] mean; // plastics

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
    mean = new double[prospects.size()];
    for (int p = 0; p < mean.length; p++) {
      int own = p;
      mean[p] = Arrays.stream(rates).mapToDouble(draw -> draw[own]).average().orElse(0);
    }
  }

  /** Takes lost in each rod-hour that it is missing. */
  double edge(Plastic plastic) {
    int own = column(plastic);
    Optional<Plastic> other = standIn(plastic);
    if (other.isEmpty()) {
      return mean[own];
    }
    int its = column(other.get());
    double sum = 0;
    for (double[] draw : rates) {
      sum += Math.max(0, draw[own] - draw[its]);
    }
    return sum / rates.length;
  }

  /**
   * Of the others in the tray the one with most takes an hour: of those of the same colour or body
   * where there are any, else of all.
   */
  Optional<Plastic> standIn(Plastic plastic) {
    return best(onHand.stream()
            .filter(
                other ->
                    other.colour().equals(plastic.colour()) || other.body().equals(plastic.body()))
            .filter(other -> !other.equals(plastic))
            .toList())
        .or(() -> best(onHand.stream().filter(other -> !other.equals(plastic)).toList()));
  }

  private Optional<Plastic> best(List<Plastic> some) {
    Optional<Plastic> best = Optional.empty();
    for (Plastic each : some) {
      if (best.isEmpty() || mean[column(each)] > mean[column(best.get())]) {
        best = Optional.of(each);
      }
    }
    return best;
  }

  private int column(Plastic plastic) {
    return Optional.ofNullable(column.get(plastic))
        .orElseThrow(() -> new IllegalArgumentException("nothing is known of " + plastic));
  }

  /** Takes saved by so many pieces more than are in the tray. */
  Basket.Gain gain(Prospect prospect, boolean wanted) {
    double mean = prospect.endless().mean();
    double each =
        mean > 0
            ? edge(prospect.plastic()) * prospect.endless().hours() / mean
            : 0; // takes a piece
    double missing = missing(prospect, 0);
    int most = 0;
    List<Double> saved = new ArrayList<>(List.of(0.0));
    while (each * missing(prospect, most) > NOTHING && most < MOST_PIECES) {
      most++;
      saved.add(each * (missing - missing(prospect, most)));
    }
    return new Basket.Gain(most, pieces -> saved.get(Math.min(pieces, saved.size() - 1)), wanted);
  }

  private static double missing(Prospect prospect, int more) {
    return prospect.endless().distribution().expectedShortage(prospect.pieces().count() + more);
  }
}

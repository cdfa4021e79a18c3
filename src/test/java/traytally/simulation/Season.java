package traytally.simulation;

import java.util.Arrays;
import java.util.List;
import traytally.plastic.Plastic;

/**
 * What the coming trips took, and what empty trays cost.
 *
 * <p>Hours in which something else was tied on because a tray was empty are valued by the hidden
 * take rates, weighted by how the fish bit that day.
 *
 * @param used pieces, by plastic
 * @param hours tied on, by plastic
 * @param lost takes lost to empty trays, where what was tied on instead was worse
 * @param lostToBest the same against the best that could have been tied on instead: of the same
 *     colour or body where there is any, else of all
 * @param balance takes lost less takes won by what was tied on instead
 */
public record Season(
    List<Integer> used, List<Double> hours, double lost, double lostToBest, double balance) {
  public Season {
    used = List.copyOf(used);
    hours = List.copyOf(hours);
  }

  /** Adds a season up. */
  static final class Tally {
    private final List<Plastic> plastics;
    private final double[] rate;
    private double lost;
    private double lostToBest;
    private double balance;

    Tally(List<Plastic> plastics, double[] rate) {
      this.plastics = plastics;
      this.rate = rate;
    }

    void fished(int wanted, int on, double hours, int[] pieces) {
      lost += hours * Math.max(0, rate[wanted] - rate[on]);
      balance += hours * (rate[wanted] - rate[on]);
      lostToBest += hours * Math.max(0, rate[wanted] - standIn(wanted, pieces));
    }

    private double standIn(int wanted, int[] pieces) {
      double like = Double.NEGATIVE_INFINITY;
      double any = Double.NEGATIVE_INFINITY;
      for (int p = 0; p < pieces.length; p++) {
        if (pieces[p] > 0 && p != wanted) {
          any = Math.max(any, rate[p]);
          Plastic plastic = plastics.get(p);
          if (plastic.colour().equals(plastics.get(wanted).colour())
              || plastic.body().equals(plastics.get(wanted).body())) {
            like = Math.max(like, rate[p]);
          }
        }
      }
      return like > 0 ? like : any;
    }

    Season season(int[] used, double[] hours) {
      return new Season(
          Arrays.stream(used).boxed().toList(),
          Arrays.stream(hours).boxed().toList(),
          lost,
          lostToBest,
          balance);
    }
  }
}

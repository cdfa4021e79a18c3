package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Prices for what is limited, and the bound they give (Fisher, Management Science 27(1), 1981,
 * 1–18): for any prices u ≥ 0 no choice within the limits b is worth more than
 *
 * <pre>Σ_j u_j b_j + Σ_p max over its bundles (value − Σ_j u_j uses_j)</pre>
 *
 * <p>The bound is convex in the prices. Each in turn is halved in towards its least; where there
 * are several, steps along the subgradient follow (Polyak, USSR Computational Mathematics and
 * Mathematical Physics 9(3), 1969, 14–29).
 */
final class LimitPrices {
  private static final int HALVINGS = 20;
  private static final int STEPS = 120;

  /** Steps without a better bound after which what is hoped for is halved. */
  private static final int PATIENCE = 8;

  private final Limits limits;
  private final double[] price;
  private final int[] from; // plastics + 1: where each one's picks begin
  private final double[] value; // picks
  private final double[][] uses; // limits × picks
  private final double[] score; // picks, at the prices last tried
  private final int[] best; // plastics, at the prices last tried
  private final double bound;

  LimitPrices(Limits limits) {
    this.limits = limits;
    this.price = new double[limits.count()];
    List<List<Pick>> plastics = limits.plastics();
    from = new int[plastics.size() + 1];
    for (int p = 0; p < plastics.size(); p++) {
      from[p + 1] = from[p] + plastics.get(p).size();
    }
    int picks = from[plastics.size()];
    value = new double[picks];
    uses = new double[price.length][picks];
    score = new double[picks];
    best = new int[plastics.size()];
    int k = 0;
    for (List<Pick> own : plastics) {
      for (Pick pick : own) {
        value[k] = pick.value();
        for (int j = 0; j < price.length; j++) {
          uses[j][k] = pick.uses(j);
        }
        k++;
      }
    }
    bound = limits.feasible() ? tightened() : Double.NEGATIVE_INFINITY;
  }

  private double tightened() {
    double dearest = dearest();
    for (int j = 0; j < price.length; j++) {
      halve(j, dearest);
    }
    if (price.length > 1) {
      descend();
    }
    return evaluate();
  }

  /** A price at which nothing is worth using anything up. */
  private double dearest() {
    double dearest = 0;
    for (List<Pick> own : limits.plastics()) {
      for (Pick pick : own) {
        double cost = Math.max(1, pick.bundle().cost());
        dearest = Math.max(dearest, 2 * Math.abs(pick.value()) / cost);
      }
    }
    return dearest;
  }

  private void halve(int limit, double highest) {
    double low = 0;
    double high = highest;
    for (int i = 0; i < HALVINGS; i++) {
      price[limit] = (low + high) / 2;
      evaluate();
      if (spare(limit) < 0) {
        low = price[limit];
      } else {
        high = price[limit];
      }
    }
    // Two ends of one kink: the lower bound of the two.
    price[limit] = low;
    double atLow = evaluate();
    price[limit] = high;
    if (evaluate() > atLow) {
      price[limit] = low;
    }
  }

  private void descend() {
    double least = evaluate();
    double[] kept = price.clone();
    double hope = Math.abs(least) / 50;
    int since = 0;
    for (int i = 0; i < STEPS; i++) {
      double now = evaluate();
      if (now < least) {
        least = now;
        System.arraycopy(price, 0, kept, 0, kept.length);
        since = 0;
      } else if (++since > PATIENCE) {
        hope /= 2;
        since = 0;
        System.arraycopy(kept, 0, price, 0, kept.length);
        now = evaluate();
      }
      double[] spare = new double[price.length];
      Arrays.setAll(spare, this::spare);
      double squares = Arrays.stream(spare).map(each -> each * each).sum();
      double step = squares == 0 ? 0 : (now - least + hope) / squares;
      for (int j = 0; j < price.length; j++) {
        price[j] = Math.max(0, price[j] - step * spare[j]);
      }
    }
    System.arraycopy(kept, 0, price, 0, kept.length);
  }

  /** What the bundles best at the prices last tried leave of a limit. */
  private double spare(int limit) {
    double spare = limits.most(limit);
    for (int k : best) {
      spare -= uses[limit][k];
    }
    return spare;
  }

  /** The bound at the prices as they are now. */
  private double evaluate() {
    System.arraycopy(value, 0, score, 0, score.length);
    double sum = 0;
    for (int j = 0; j < price.length; j++) {
      if (price[j] > 0) {
        sum += price[j] * limits.most(j);
        double[] used = uses[j];
        for (int k = 0; k < score.length; k++) {
          score[k] -= price[j] * used[k];
        }
      }
    }
    for (int p = 0; p < best.length; p++) {
      int top = from[p];
      for (int k = top + 1; k < from[p + 1]; k++) {
        top = score[k] > score[top] ? k : top;
      }
      best[p] = top;
      sum += score[top];
    }
    return sum;
  }

  double price(int limit) {
    return price[limit];
  }

  /** A pick's worth less the price of what it uses up. */
  double score(Pick pick) {
    double priced = pick.value();
    for (int j = 0; j < price.length; j++) {
      priced -= price[j] * pick.uses(j);
    }
    return priced;
  }

  /** No choice is worth more; negative infinity if there is none. */
  double bound() {
    return bound;
  }

  /**
   * By plastic, the picks whose regret leaves them a chance to be worth more than a floor.
   *
   * @param picks by plastic
   */
  List<List<Pick>> above(double floor, List<List<Pick>> picks) {
    List<List<Pick>> above = new ArrayList<>(best.length);
    for (int p = 0; p < best.length; p++) {
      double most = score[best[p]];
      above.add(
          picks.get(p).stream().filter(pick -> bound - (most - score(pick)) > floor).toList());
    }
    return above;
  }
}

package traytally.restock;

import java.util.Arrays;
import java.util.List;

/**
 * How much the plastics from one on can add at most, by what is left of one limit: dynamic
 * programming (Bellman, Dynamic Programming, 1957) over that limit, the others at their prices.
 *
 * <p>Where the limit is too long for memory it is cut into steps; what a pick uses up is rounded
 * down to whole steps, which only raises the bound.
 */
final class Completions {
  /** Numbers in one table at most (a matter of memory: 8 bytes each). */
  private static final long MOST_CELLS = 3_000_000;

  private final double[][] most; // plastics + 1 × steps left
  private final long step;

  /**
   * The table of one limit.
   *
   * @param left what may be used up at most
   */
  Completions(List<List<Pick>> plastics, int limit, long left, LimitPrices prices) {
    step = Math.max(1, (left + 1) * (plastics.size() + 1) / MOST_CELLS);
    int cells = (int) (left / step) + 1;
    most = new double[plastics.size() + 1][cells];
    for (int p = plastics.size() - 1; p >= 0; p--) {
      Arrays.fill(most[p], Double.NEGATIVE_INFINITY);
      for (Pick pick : plastics.get(p)) {
        double score = prices.score(pick) + prices.price(limit) * pick.uses(limit);
        long used = pick.uses(limit) / step;
        for (int c = (int) Math.min(used, cells); c < cells; c++) {
          most[p][c] = Math.max(most[p][c], score + most[p + 1][c - (int) used]);
        }
      }
    }
  }

  /** What the plastics from one on add at most. */
  double from(int plastic, long left) {
    return most[plastic][(int) (left / step)];
  }
}

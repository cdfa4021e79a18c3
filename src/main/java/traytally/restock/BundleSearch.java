package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Picks one bundle of each plastic: the most value within a budget, and with at least so much goods
 * at some shops.
 *
 * <p>Lagrange's bound (Fisher, Management Science 27(1), 1981, 1–18): for any λ, ν ≥ 0 no choice is
 * worth more than
 *
 * <pre>λ B − Σ ν_s F_s + Σ_p max over its bundles (value − λ cost + Σ ν_s goods_s)</pre>
 *
 * <p>A bundle that falls short of its plastic's maximum lowers the bound by the difference, its
 * regret. Choices are built plastic by plastic; one whose regrets bring the bound down to the best
 * basket known is dropped, and so is one that another equals or beats in value, cost and goods.
 * What remains at the end is the best; docs/buying.md has the proof.
 */
final class BundleSearch {
  /** Choices kept at a time in the first, quick pass: it finds a good basket, proves nothing. */
  private static final int QUICK = 60;

  /** Choices kept at a time at most; where more are needed the result is not proven best. */
  private static final int MOST_CHOICES = 600;

  /** Kept choices that a new one is compared with where goods count too (a matter of time). */
  private static final int COMPARED = 24;

  /** Plastics × cents up to which the budget alone is settled cent by cent (a matter of memory). */
  private static final long MOST_CENTS = 30_000_000;

  private static final int ROUNDS = 3;
  private static final int HALVINGS = 22;

  /** How much time a branch may take where the budget alone does not settle it. */
  enum Effort {
    NONE,
    QUICK,
    THOROUGH
  }

  /** A bundle as one search sees it. */
  private static final class Pick {
    final Bundle bundle;
    final long cost;
    final long[] goods; // at the shops that need some
    double regret;

    Pick(Bundle bundle, int[] shops) {
      this.bundle = bundle;
      this.cost = bundle.cost();
      this.goods = new long[shops.length];
      for (int s = 0; s < goods.length; s++) {
        goods[s] = bundle.goods(shops[s]);
      }
    }

    double value() {
      return bundle.value();
    }
  }

  /** Bundles of the plastics so far, as a chain from the last back. */
  private static final class Chosen {
    final Optional<Chosen> before;
    final Optional<Pick> last;
    final double value;
    final long cost;
    final long[] goods;
    final double regret;

    Chosen(int shops) {
      before = Optional.empty();
      last = Optional.empty();
      value = 0;
      cost = 0;
      goods = new long[shops];
      regret = 0;
    }

    Chosen(Chosen before, Pick last) {
      this.before = Optional.of(before);
      this.last = Optional.of(last);
      value = before.value + last.value();
      cost = before.cost + last.cost;
      goods = before.goods.clone();
      for (int s = 0; s < goods.length; s++) {
        goods[s] += last.goods[s];
      }
      regret = before.regret + last.regret;
    }
  }

  private final List<List<Pick>> plastics = new ArrayList<>();
  private final long budget;
  private final long[] least; // F, cents, by shop that needs goods
  private double costPrice; // λ
  private final double[] goodsPrice; // ν
  private double bound = Double.POSITIVE_INFINITY;
  private boolean proven = true;

  /**
   * A search among the bundles given.
   *
   * @param bundles by plastic
   * @param budget cents for goods; Long.MAX_VALUE for no limit
   * @param shops those that need goods
   * @param least cents of goods each of them needs
   */
  BundleSearch(List<List<Bundle>> bundles, long budget, int[] shops, long[] least) {
    this.budget = budget;
    this.least = least;
    this.goodsPrice = new double[least.length];
    for (List<Bundle> own : bundles) {
      plastics.add(
          unbeaten(
              own.stream()
                  .filter(bundle -> bundle.cost() <= budget)
                  .map(bundle -> new Pick(bundle, shops))
                  .toList()));
    }
    if (feasible()) {
      tighten();
    } else {
      bound = Double.NEGATIVE_INFINITY;
    }
  }

  /** Leaves out the bundles that another beats or equals in value, cost and goods. */
  private static List<Pick> unbeaten(List<Pick> own) {
    List<Pick> sorted = new ArrayList<>(own);
    sorted.sort(
        Comparator.comparingLong((Pick pick) -> pick.cost)
            .thenComparing(Comparator.comparingDouble(Pick::value).reversed()));
    List<Pick> kept = new ArrayList<>();
    for (Pick pick : sorted) {
      if (kept.stream().noneMatch(k -> k.value() >= pick.value() && covers(k.goods, pick.goods))) {
        kept.add(pick);
      }
    }
    return kept;
  }

  private static boolean covers(long[] goods, long[] others) {
    for (int s = 0; s < goods.length; s++) {
      if (goods[s] < others[s]) {
        return false;
      }
    }
    return true;
  }

  private boolean feasible() {
    long cost = 0;
    long[] goods = new long[least.length];
    for (List<Pick> own : plastics) {
      if (own.isEmpty()) {
        return false;
      }
      cost += own.stream().mapToLong(pick -> pick.cost).min().orElseThrow();
      for (int s = 0; s < goods.length; s++) {
        int shop = s;
        goods[s] += own.stream().mapToLong(pick -> pick.goods[shop]).max().orElseThrow();
      }
    }
    return cost <= budget && covers(goods, least);
  }

  /** No choice is worth more. */
  double bound() {
    return bound;
  }

  /** Whether the last search left out nothing that might have been better. */
  boolean proven() {
    return proven;
  }

  // The bound is convex in each price; each in turn is halved in towards its least.

  private void tighten() {
    double dearest = 0; // most value a cent: at this λ nothing is bought
    for (List<Pick> own : plastics) {
      for (Pick pick : own) {
        double worth = budget == Long.MAX_VALUE ? 1 : pick.value() / Math.max(1, pick.cost);
        dearest = Math.max(dearest, worth);
      }
    }
    for (int round = 0; round < (least.length == 0 ? 1 : ROUNDS); round++) {
      if (budget < Long.MAX_VALUE) {
        halve(-1, dearest);
      }
      for (int s = 0; s < least.length; s++) {
        halve(s, 2 * dearest);
      }
    }
    settle();
  }

  private void halve(int shop, double highest) {
    double low = 0;
    double high = highest;
    for (int i = 0; i < HALVINGS; i++) {
      setPrice(shop, (low + high) / 2);
      if (wantsMore(shop)) {
        low = (low + high) / 2;
      } else {
        high = (low + high) / 2;
      }
    }
    // Two ends of one kink: the lower bound of the two.
    setPrice(shop, low);
    double atLow = evaluate();
    setPrice(shop, high);
    if (evaluate() > atLow) {
      setPrice(shop, low);
    }
  }

  private void setPrice(int shop, double price) {
    if (shop < 0) {
      costPrice = price;
    } else {
      goodsPrice[shop] = price;
    }
  }

  /** Whether at these prices the budget is overspent, or the shop's goods are too few. */
  private boolean wantsMore(int shop) {
    long sum = 0;
    for (List<Pick> own : plastics) {
      Pick best = best(own);
      sum += shop < 0 ? best.cost : best.goods[shop];
    }
    return shop < 0 ? sum > budget : sum < least[shop];
  }

  private double score(Pick pick) {
    double score = pick.value() - costPrice * pick.cost;
    for (int s = 0; s < goodsPrice.length; s++) {
      score += goodsPrice[s] * pick.goods[s];
    }
    return score;
  }

  private Pick best(List<Pick> own) {
    Pick best = own.get(0);
    double most = score(best);
    for (int i = 1; i < own.size(); i++) {
      double score = score(own.get(i));
      if (score > most) {
        most = score;
        best = own.get(i);
      }
    }
    return best;
  }

  private double evaluate() {
    double sum = budget == Long.MAX_VALUE ? 0 : costPrice * budget;
    for (int s = 0; s < least.length; s++) {
      sum -= goodsPrice[s] * least[s];
    }
    for (List<Pick> own : plastics) {
      sum += score(best(own));
    }
    return sum;
  }

  /** Fixes the bound and every pick's regret at the prices found. */
  private void settle() {
    bound = evaluate();
    for (List<Pick> own : plastics) {
      double most = score(best(own));
      own.forEach(pick -> pick.regret = most - score(pick));
    }
  }

  /**
   * The best choice worth more than {@code known}; empty if there is none.
   *
   * @param step value by which the result may fall short of the very best
   * @param effort how far to go on where a shorter search proves nothing
   */
  Optional<List<Bundle>> better(double known, double step, Effort effort) {
    proven = true;
    if (!(bound > known)) {
      return Optional.empty();
    }
    if (budget < Long.MAX_VALUE && budget * plastics.size() <= MOST_CENTS) {
      Optional<Chosen> withoutNeeds = centByCent(known);
      if (withoutNeeds.isEmpty() || covers(withoutNeeds.get().goods, least)) {
        return withoutNeeds.map(BundleSearch::bundles);
      }
    }
    if (effort == Effort.NONE) {
      proven = false;
      return Optional.empty();
    }
    Optional<Chosen> quick = search(known, QUICK);
    double found = quick.map(choice -> choice.value + step).orElse(known);
    Optional<Chosen> best = proven || effort == Effort.QUICK ? Optional.empty() : again(found);
    return best.or(() -> quick).map(BundleSearch::bundles);
  }

  /**
   * The best choice within the budget whatever goods the shops need, if it is worth more than
   * {@code known}: dynamic programming over cents (Bellman, Dynamic Programming, 1957), of the
   * bundles whose regret leaves them a chance.
   */
  private Optional<Chosen> centByCent(double known) {
    int cents = (int) budget + 1;
    double[] most = new double[cents]; // by cents that may be spent
    List<List<Pick>> order = new ArrayList<>();
    List<short[]> picked = new ArrayList<>(); // plastics × cents
    for (List<Pick> all : plastics) {
      List<Pick> own = all.stream().filter(pick -> bound - pick.regret > known).toList();
      if (own.isEmpty()) {
        return Optional.empty();
      }
      double[] next = new double[cents];
      short[] last = new short[cents];
      Arrays.fill(next, Double.NEGATIVE_INFINITY);
      for (short k = 0; k < own.size(); k++) {
        double value = own.get(k).value();
        int cost = (int) own.get(k).cost;
        for (int c = cost; c < cents; c++) {
          if (most[c - cost] + value > next[c]) {
            next[c] = most[c - cost] + value;
            last[c] = k;
          }
        }
      }
      order.add(own);
      picked.add(last);
      most = next;
    }
    if (!(most[cents - 1] > known)) {
      return Optional.empty();
    }
    Chosen choice = new Chosen(least.length);
    int left = cents - 1;
    for (int p = order.size() - 1; p >= 0; p--) {
      Pick pick = order.get(p).get(picked.get(p)[left]);
      choice = new Chosen(choice, pick);
      left -= (int) pick.cost;
    }
    return Optional.of(choice);
  }

  private Optional<Chosen> again(double known) {
    proven = true;
    return search(known, MOST_CHOICES);
  }

  private Optional<Chosen> search(double known, int most) {
    List<List<Pick>> order = new ArrayList<>();
    for (List<Pick> own : plastics) {
      order.add(own.stream().filter(pick -> bound - pick.regret > known).toList());
    }
    order.sort(Comparator.comparingInt(List::size));
    List<Chosen> front = List.of(new Chosen(least.length));
    long[] cheapest = new long[order.size() + 1]; // of the plastics from here on
    long[][] fullest = new long[order.size() + 1][least.length];
    for (int p = order.size() - 1; p >= 0; p--) {
      if (order.get(p).isEmpty()) {
        return Optional.empty();
      }
      cheapest[p] =
          cheapest[p + 1] + order.get(p).stream().mapToLong(k -> k.cost).min().orElseThrow();
      for (int s = 0; s < least.length; s++) {
        int shop = s;
        fullest[p][s] =
            fullest[p + 1][s]
                + order.get(p).stream().mapToLong(k -> k.goods[shop]).max().orElseThrow();
      }
    }
    for (int p = 0; p < order.size(); p++) {
      List<Chosen> next = new ArrayList<>();
      for (Chosen choice : front) {
        for (Pick pick : order.get(p)) {
          if (bound - choice.regret - pick.regret > known
              && choice.cost + pick.cost + cheapest[p + 1] <= budget
              && reaches(choice.goods, pick.goods, fullest[p + 1])) {
            next.add(new Chosen(choice, pick));
          }
        }
      }
      front = thinned(next, most);
    }
    return front.stream()
        .filter(choice -> choice.value > known)
        .max(Comparator.comparingDouble(choice -> choice.value));
  }

  private boolean reaches(long[] goods, long[] more, long[] rest) {
    for (int s = 0; s < least.length; s++) {
      if (goods[s] + more[s] + rest[s] < least[s]) {
        return false;
      }
    }
    return true;
  }

  private List<Chosen> thinned(List<Chosen> choices, int most) {
    choices.sort(
        Comparator.comparingLong((Chosen choice) -> choice.cost)
            .thenComparing(Comparator.comparingDouble((Chosen c) -> c.value).reversed()));
    List<Chosen> kept = new ArrayList<>();
    for (Chosen choice : choices) {
      boolean beaten = false;
      int from = least.length == 0 ? kept.size() - 1 : Math.max(0, kept.size() - COMPARED);
      for (int k = kept.size() - 1; k >= Math.max(0, from) && !beaten; k--) {
        beaten = kept.get(k).value >= choice.value && suffices(kept.get(k).goods, choice.goods);
      }
      if (!beaten) {
        kept.add(choice);
      }
    }
    if (kept.size() > most) {
      proven = false;
      kept.sort(Comparator.comparingDouble(choice -> choice.regret));
      return kept.subList(0, most);
    }
    return kept;
  }

  /** Whether {@code goods} serve as well as {@code others}: as many, or as many as are needed. */
  private boolean suffices(long[] goods, long[] others) {
    for (int s = 0; s < goods.length; s++) {
      if (goods[s] < Math.min(others[s], least[s])) {
        return false;
      }
    }
    return true;
  }

  private static List<Bundle> bundles(Chosen choice) {
    List<Bundle> bundles = new ArrayList<>();
    Optional<Chosen> at = Optional.of(choice);
    while (at.isPresent()) {
      at.get().last.ifPresent(pick -> bundles.add(pick.bundle));
      at = at.get().before;
    }
    Collections.reverse(bundles);
    return bundles;
  }
}

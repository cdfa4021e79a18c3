package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which shops to order from, and what: branch and bound over each shop's terms.
 *
 * <p>A shop is shut, or open for its postage, or open without if its goods reach the threshold. A
 * shop not decided yet is taken as open for nothing, which can only be better; so a branch whose
 * bound does not beat the best basket known holds no better one (Land &amp; Doig, Econometrica
 * 28(3), 1960, 497–520).
 */
final class ParcelSearch {
  /**
   * What a shop asks beside its goods.
   *
   * @param postage cents
   * @param freeFrom cents of goods from which it is free; Long.MAX_VALUE for never
   */
  record Terms(long postage, long freeFrom) {
    boolean matter() {
      return postage > 0 && freeFrom > 0;
    }
  }

  /** Branches looked into at most; where more are needed the result is not proven best. */
  private static final int MOST_BRANCHES = 3000;

  /** Branches too hard to settle that are searched at length; further ones only quickly. */
  private static final int MOST_HARD = 2;

  /** Branches too hard to settle after which further ones are left (a matter of time). */
  private static final int MOST_QUICK = 5;

  private enum State {
    ANY,
    SHUT,
    POSTAGE,
    FREE
  }

  private final List<Terms> shops;
  private final List<List<Bundle>> plastics;
  private final long budget;
  private final double postageCost; // value a cent of postage takes away
  private final double step; // a basket must be worth this much more to be better
  private double most;
  private List<Bundle> best;
  private boolean proven = true;
  private int branches;
  private int hard;

  /**
   * A search for the basket of most value within a budget.
   *
   * @param budget cents for goods and postage; Long.MAX_VALUE for no limit
   * @param postageCost value that a cent of postage takes away
   * @param step value by which a basket must be better to count as such
   */
  ParcelSearch(
      List<Terms> shops,
      List<List<Bundle>> plastics,
      long budget,
      double postageCost,
      double step) {
    this.shops = List.copyOf(shops);
    this.plastics = plastics;
    this.budget = budget;
    this.postageCost = postageCost;
    this.step = step;
    this.most = Double.NEGATIVE_INFINITY;
    this.best = List.of();
    State[] open = new State[shops.size()];
    Arrays.fill(open, State.ANY);
    int[] undecided =
        IntStream.range(0, open.length).filter(s -> this.shops.get(s).matter()).toArray();
    branch(new Branch(open), undecided, 0);
  }

  /** The bundles of the best basket, one for each plastic. */
  List<Bundle> best() {
    return best;
  }

  /** Whether no basket can be better. */
  boolean proven() {
    return proven;
  }

  /** Some shops' terms decided. */
  private final class Branch {
    final State[] states;
    final long postage;
    final BundleSearch search;
    final double bound;

    Branch(State[] states) {
      this.states = states;
      this.postage =
          IntStream.range(0, states.length)
              .filter(s -> states[s] == State.POSTAGE)
              .mapToLong(s -> shops.get(s).postage())
              .sum();
      int[] free = IntStream.range(0, states.length).filter(s -> states[s] == State.FREE).toArray();
      long[] least = Arrays.stream(free).mapToLong(s -> shops.get(s).freeFrom()).toArray();
      long goods = budget == Long.MAX_VALUE ? budget : Math.max(-1, budget - postage);
      this.search = new BundleSearch(open(), goods, free, least);
      this.bound = search.bound() - postageCost * postage;
    }

    private List<List<Bundle>> open() {
      int[] shut = IntStream.range(0, states.length).filter(s -> states[s] == State.SHUT).toArray();
      if (shut.length == 0) {
        return plastics;
      }
      List<List<Bundle>> open = new ArrayList<>(plastics.size());
      for (List<Bundle> own : plastics) {
        open.add(
            own.stream()
                .filter(bundle -> Arrays.stream(shut).allMatch(s -> bundle.goods(s) == 0))
                .toList());
      }
      return open;
    }
  }

  private BundleSearch.Effort effort() {
    if (hard >= MOST_QUICK) {
      return BundleSearch.Effort.NONE;
    }
    return hard < MOST_HARD ? BundleSearch.Effort.THOROUGH : BundleSearch.Effort.QUICK;
  }

  private void branch(Branch branch, int[] undecided, int next) {
    if (!(branch.bound > most + step)) {
      return;
    }
    if (branches > MOST_BRANCHES) {
      proven = false;
      return;
    }
    if (next == undecided.length) {
      branch
          .search
          .better(
              Math.max(most + step + postageCost * branch.postage, -Double.MAX_VALUE),
              step,
              effort())
          .ifPresent(
              found -> {
                best = found;
                most =
                    found.stream().mapToDouble(Bundle::value).sum() - postageCost * branch.postage;
              });
      if (!branch.search.proven()) {
        proven = false;
        hard++;
      }
      return;
    }
    int shop = undecided[next];
    List<Branch> below = new ArrayList<>();
    for (State state : State.values()) {
      boolean possible = state != State.ANY;
      if (state == State.FREE) {
        possible =
            shops.get(shop).freeFrom() <= budget && shops.get(shop).freeFrom() < Long.MAX_VALUE;
      }
      if (possible) {
        State[] states = branch.states.clone();
        states[shop] = state;
        below.add(new Branch(states));
        branches++;
      }
    }
    below.sort(Comparator.comparingDouble((Branch b) -> b.bound).reversed());
    below.forEach(b -> branch(b, undecided, next + 1));
  }
}

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
 * 28(3), 1960, 497–520). Until a basket is known, one just below the bound is supposed; where none
 * beats it, one further below.
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
  private static final int MOST_BRANCHES = 10_000;

  /**
   * Part-baskets looked at in all; where more are needed no further threshold is tried, and the
   * result is not proven best.
   */
  private static final long MOST_CHOICES = 5_000_000;

  /** Part-baskets that a branch may look at even then; without a threshold it needs few. */
  private static final long SOME_CHOICES = 100_000;

  /** How far below the bound the first basket is supposed, in steps. */
  private static final double FIRST_GAP = 32;

  private enum State {
    ANY,
    SHUT,
    POSTAGE,
    FREE
  }

  private final List<Terms> shops;
  private final long budget;
  private final double postageCost; // value a cent of postage takes away
  private final double step; // a basket must be worth this much more to be better
  private final int mostBranches; // twice as many where no basket is known, for any at all
  private double most; // worth of the best basket known, or supposed
  private List<Bundle> best = List.of();
  private boolean found;
  private boolean proven = true;
  private int branches;
  private long choices;

  /**
   * A search for the basket of most value within a budget.
   *
   * @param plastics the ways to buy each
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
    this(shops, plastics, budget, postageCost, step, MOST_BRANCHES);
  }

  /** A search that looks into so many branches and no more. */
  ParcelSearch(
      List<Terms> shops,
      List<List<Bundle>> plastics,
      long budget,
      double postageCost,
      double step,
      int mostBranches) {
    this.mostBranches = mostBranches;
    this.shops = List.copyOf(shops);
    this.budget = budget;
    this.postageCost = postageCost;
    this.step = step;
    State[] open = new State[shops.size()];
    Arrays.fill(open, State.ANY);
    int[] undecided =
        IntStream.range(0, open.length).filter(s -> this.shops.get(s).matter()).toArray();
    Branch root = new Branch(open, plastics);
    double least = least(plastics);
    for (double gap = FIRST_GAP * step; !found && most > Double.NEGATIVE_INFINITY; gap *= 2) {
      most = root.bound - gap > least ? root.bound - gap : Double.NEGATIVE_INFINITY;
      branch(root, undecided, 0);
    }
  }

  /** No basket is worth less. */
  private double least(List<List<Bundle>> plastics) {
    double least = -postageCost * shops.stream().mapToLong(Terms::postage).sum();
    for (List<Bundle> own : plastics) {
      least += own.stream().mapToDouble(Bundle::value).min().orElse(0);
    }
    return least;
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
    final double paid; // value that postage takes away
    final BundleSearch search;
    final double bound;

    Branch(State[] states, List<List<Bundle>> bundles) {
      this.states = states;
      long postage = in(State.POSTAGE).mapToLong(s -> shops.get(s).postage()).sum();
      int[] free = in(State.FREE).toArray();
      long[] least = Arrays.stream(free).mapToLong(s -> shops.get(s).freeFrom()).toArray();
      long goods = budget == Long.MAX_VALUE ? budget : Math.max(-1, budget - postage);
      this.paid = postageCost * postage;
      this.search = new BundleSearch(new Limits(open(bundles), goods, free, least), step);
      this.bound = search.bound() - paid;
    }

    private IntStream in(State state) {
      return IntStream.range(0, states.length).filter(s -> states[s] == state);
    }

    private List<List<Bundle>> open(List<List<Bundle>> bundles) {
      int[] shut = in(State.SHUT).toArray();
      List<List<Bundle>> open = new ArrayList<>(bundles.size());
      for (List<Bundle> own : bundles) {
        open.add(
            own.stream()
                .filter(bundle -> Arrays.stream(shut).allMatch(s -> bundle.goods(s) == 0))
                .toList());
      }
      return open;
    }
  }

  private void branch(Branch branch, int[] undecided, int next) {
    if (!(branch.bound > most + step)) {
      return;
    }
    boolean anyWillDo = !found && most == Double.NEGATIVE_INFINITY;
    if (branches > (anyWillDo ? 2 * mostBranches : mostBranches)) {
      proven = false;
      return;
    }
    if (next == undecided.length) {
      settle(branch);
      return;
    }
    int shop = undecided[next];
    List<List<Bundle>> left = branch.search.above(most + step + branch.paid);
    List<Branch> below = new ArrayList<>();
    for (State state : states(shop)) {
      State[] states = branch.states.clone();
      states[shop] = state;
      below.add(new Branch(states, left));
      branches++;
    }
    below.sort(Comparator.comparingDouble((Branch b) -> b.bound).reversed());
    below.forEach(b -> branch(b, undecided, next + 1));
  }

  private List<State> states(int shop) {
    long freeFrom = shops.get(shop).freeFrom();
    if (freeFrom > budget || freeFrom == Long.MAX_VALUE) {
      return List.of(State.SHUT, State.POSTAGE);
    }
    if (choices >= MOST_CHOICES) {
      proven = false;
      return List.of(State.SHUT, State.POSTAGE);
    }
    return List.of(State.SHUT, State.POSTAGE, State.FREE);
  }

  private void settle(Branch branch) {
    double known = Math.max(most + step + branch.paid, -Double.MAX_VALUE);
    BundleSearch.Outcome outcome =
        branch.search.better(known, Math.max(SOME_CHOICES, MOST_CHOICES - choices));
    choices += outcome.choices();
    proven &= outcome.proven();
    outcome
        .best()
        .ifPresent(
            bundles -> {
              found = true;
              best = bundles;
              most = bundles.stream().mapToDouble(Bundle::value).sum() - branch.paid;
            });
  }
}

package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What a branch of the search limits, all in one form: a choice may use up so much and no more.
 *
 * <p>The budget is used up by cents. Where a shop needs goods worth F, a bundle uses up the cents
 * it brings the shop less than its plastic could; if all plastics could bring M, then G ≥ F is the
 * same as that M − F at most are used up.
 */
final class Limits {
  private final List<List<Pick>> all = new ArrayList<>();
  private final List<List<Pick>> plastics = new ArrayList<>();
  private final long[] most;
  private final boolean affordable; // the goods needed come within the budget

  /**
   * The limits of one branch.
   *
   * @param bundles by plastic
   * @param budget cents for goods; Long.MAX_VALUE for no limit
   * @param shops those that need goods
   * @param least cents of goods each of them needs
   */
  Limits(List<List<Bundle>> bundles, long budget, int[] shops, long[] least) {
    affordable = Arrays.stream(least).sum() <= budget;
    int first = budget < Long.MAX_VALUE ? 1 : 0;
    most = new long[first + shops.length];
    if (first == 1) {
      most[0] = budget;
    }
    for (int s = 0; s < shops.length; s++) {
      most[first + s] = -least[s];
    }
    for (List<Bundle> any : bundles) {
      List<Bundle> own = any.stream().filter(bundle -> bundle.cost() <= budget).toList();
      long[] fullest = new long[shops.length];
      for (int s = 0; s < shops.length; s++) {
        int shop = shops[s];
        fullest[s] = own.stream().mapToLong(bundle -> bundle.goods(shop)).max().orElse(0);
        most[first + s] += fullest[s];
      }
      List<Pick> picks = new ArrayList<>(own.size());
      for (Bundle bundle : own) {
        long[] uses = new long[most.length];
        if (first == 1) {
          uses[0] = bundle.cost();
        }
        for (int s = 0; s < shops.length; s++) {
          uses[first + s] = fullest[s] - bundle.goods(shops[s]);
        }
        picks.add(new Pick(bundle, uses));
      }
      all.add(List.copyOf(picks));
      plastics.add(unbeaten(picks));
    }
  }

  /** Leaves out the bundles that another beats or equals. */
  private static List<Pick> unbeaten(List<Pick> picks) {
    picks.sort(Comparator.comparingDouble(Pick::value).reversed());
    List<Pick> kept = new ArrayList<>();
    for (Pick pick : picks) {
      if (kept.stream().noneMatch(other -> other.beats(pick))) {
        kept.add(pick);
      }
    }
    return kept;
  }

  int count() {
    return most.length;
  }

  /** What may be used up of one limit. */
  long most(int limit) {
    return most[limit];
  }

  /** By plastic, every bundle within the budget. */
  List<List<Pick>> all() {
    return all;
  }

  /** By plastic, the bundles that no other beats in every way. */
  List<List<Pick>> plastics() {
    return plastics;
  }

  /** Whether no limit by itself rules out every choice. */
  boolean feasible() {
    if (!affordable || plastics.stream().anyMatch(List::isEmpty)) {
      return false;
    }
    for (int j = 0; j < most.length; j++) {
      int limit = j;
      long least =
          plastics.stream()
              .mapToLong(own -> own.stream().mapToLong(k -> k.uses(limit)).min().orElseThrow())
              .sum();
      if (least > most[j]) {
        return false;
      }
    }
    return true;
  }
}

package traytally.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;

/**
 * The choices worth more than a floor.
 *
 * <p>Plastics that the floor leaves one bundle are settled; choices among the others are built
 * plastic by plastic. One whose value and the most that the rest can add come to no more than the
 * floor is dropped; of those that leave the same of every limit, the one of most value stays.
 */
final class Core {
  private final double floor;
  private final int kept;
  private final LimitPrices prices;
  private final List<List<Pick>> open = new ArrayList<>();
  private final List<Completions> completions = new ArrayList<>(); // by limit
  private final Chosen start;
  private final boolean possible;
  private boolean complete = true;
  private long choices;

  /**
   * The choices above a floor.
   *
   * @param kept choices kept at a time at most; where more are needed the search is not complete
   */
  Core(Limits limits, LimitPrices prices, double floor, int kept) {
    this.floor = floor;
    this.kept = kept;
    this.prices = prices;
    long[] endless = new long[limits.count()];
    Arrays.fill(endless, Long.MAX_VALUE);
    Chosen settled = Chosen.nothing(limits);
    for (List<Pick> own : prices.above(floor, limits.plastics())) {
      if (own.size() == 1) {
        settled = settled.with(own.get(0), endless);
      } else {
        open.add(own);
      }
    }
    open.sort(Comparator.comparingLong((List<Pick> own) -> -spread(own, limits.count())));
    start = settled.atMost(rest(limits.count(), 0));
    possible = start.fits();
    for (int j = 0; possible && j < limits.count(); j++) {
      completions.add(new Completions(open, j, start.left(j), prices));
    }
  }

  private static long spread(List<Pick> own, int limits) {
    long spread = 0;
    for (int j = 0; j < limits; j++) {
      int limit = j;
      LongStream uses = own.stream().mapToLong(pick -> pick.uses(limit));
      spread += uses.max().orElse(0) - own.stream().mapToLong(p -> p.uses(limit)).min().orElse(0);
    }
    return spread;
  }

  /** The most that the plastics from one on can use up of each limit. */
  private long[] rest(int limits, int from) {
    long[] rest = new long[limits];
    for (List<Pick> own : open.subList(from, open.size())) {
      for (int j = 0; j < limits; j++) {
        int limit = j;
        rest[j] += own.stream().mapToLong(pick -> pick.uses(limit)).max().orElse(0);
      }
    }
    return rest;
  }

  /** Whether nothing above the floor was left out. */
  boolean complete() {
    return complete;
  }

  /** How many choices were looked at. */
  long choices() {
    return choices;
  }

  /**
   * The best choice above the floor.
   *
   * @param nothing value by which it may fall short of the best
   */
  Optional<Chosen> best(double nothing) {
    if (!possible) {
      return Optional.empty();
    }
    double most = start.value() + mostAdded(start, 0);
    if (!(most > floor)) {
      return Optional.empty();
    }
    if (most - nothing > floor) {
      Optional<Chosen> best = above(most - nothing);
      if (best.isPresent()) {
        return best;
      }
      complete = true;
    }
    return above(floor);
  }

  private Optional<Chosen> above(double least) {
    Collection<Chosen> front = List.of(start);
    for (int p = 0; p < open.size(); p++) {
      long[] rest = rest(completions.size(), p + 1);
      Map<Object, Chosen> next = new LinkedHashMap<>();
      for (Chosen chosen : front) {
        for (Pick pick : open.get(p)) {
          choices++;
          if (reaches(chosen, pick, p + 1, rest, least)) {
            Chosen more = chosen.with(pick, rest);
            next.merge(more.left(), more, (a, b) -> b.value() > a.value() ? b : a);
          }
        }
      }
      front = thinned(next.values(), p + 1);
    }
    return front.stream()
        .filter(chosen -> chosen.value() > least)
        .max(Comparator.comparingDouble(Chosen::value));
  }

  /** Whether one pick more fits, and the plastics from one on may take it above {@code least}. */
  private boolean reaches(Chosen chosen, Pick pick, int from, long[] rest, double least) {
    double priced = 0;
    for (int j = 0; j < rest.length; j++) {
      long left = chosen.left(j, pick, rest);
      if (left < 0) {
        return false;
      }
      priced += prices.price(j) * left;
    }
    double missing = least - chosen.value() - pick.value();
    for (int j = 0; j < rest.length; j++) {
      long left = chosen.left(j, pick, rest);
      if (priced - prices.price(j) * left + completions.get(j).from(from, left) <= missing) {
        return false;
      }
    }
    return true;
  }

  private Collection<Chosen> thinned(Collection<Chosen> front, int from) {
    if (front.size() <= kept) {
      return front;
    }
    complete = false;
    List<Chosen> sorted = new ArrayList<>(front);
    sorted.sort(Comparator.comparingDouble((Chosen c) -> -c.value() - mostAdded(c, from)));
    return sorted.subList(0, kept);
  }

  /** What the plastics from one on can add at most: the least that any limit's table says. */
  private double mostAdded(Chosen chosen, int from) {
    if (completions.isEmpty()) {
      return 0; // without limits each plastic has one bundle that no other beats
    }
    double priced = 0;
    for (int j = 0; j < completions.size(); j++) {
      priced += prices.price(j) * chosen.left(j);
    }
    double most = Double.POSITIVE_INFINITY;
    for (int j = 0; j < completions.size(); j++) {
      double others = priced - prices.price(j) * chosen.left(j);
      most = Math.min(most, others + completions.get(j).from(from, chosen.left(j)));
    }
    return most;
  }
}

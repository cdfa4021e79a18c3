package traytally.numeric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Counts with their exposures and the groupings they belong to; immutable.
 *
 * <p>The block is the grouping with the most levels, where each observation has just one and few
 * observations share it: the fit removes it first, so its cost stays linear in the number of
 * blocks. All other groupings share one dense matrix, whose size is their levels taken together.
 */
public final class CountData {
  /** e±¹⁰⁰ of any unit is no exposure that anything was counted over. */
  private static final double FARTHEST_LOG_EXPOSURE = 100;

  private final int[] counts;
  private final double[] logExposures;
  private final Optional<Grouping> block;
  private final List<Grouping> groupings;

  private CountData(
      int[] counts, double[] logExposures, Optional<Grouping> block, List<Grouping> groupings) {
    this.counts = counts;
    this.logExposures = logExposures;
    this.block = block;
    this.groupings = groupings;
  }

  /**
   * Counts that belong to no grouping yet.
   *
   * @param counts n counts, none negative
   * @param logExposures n natural logarithms of the exposure each count was made over, within ±100
   */
  public static CountData of(int[] counts, double[] logExposures) {
    if (counts.length == 0) {
      throw new IllegalArgumentException("there must be at least one count");
    }
    if (counts.length != logExposures.length) {
      throw new IllegalArgumentException(
          counts.length + " counts but " + logExposures.length + " exposures");
    }
    for (int count : counts) {
      if (count < 0) {
        throw new IllegalArgumentException("count must not be negative: " + count);
      }
    }
    for (double logExposure : logExposures) {
      if (!(Math.abs(logExposure) <= FARTHEST_LOG_EXPOSURE)) {
        throw new IllegalArgumentException("log exposure out of all bounds: " + logExposure);
      }
    }
    return new CountData(counts.clone(), logExposures.clone(), Optional.empty(), List.of());
  }

  /** Returns these data with the block each observation belongs to. */
  public CountData blockedBy(String name, int[] blockOf, int blocks) {
    if (block.isPresent()) {
      throw new IllegalArgumentException("already blocked by " + block.get().name());
    }
    return new CountData(
        counts, logExposures, Optional.of(checked(name, "", blockOf, blocks)), groupings);
  }

  /** Returns these data with one more grouping, independent of those before. */
  public CountData groupedBy(String name, int[] levelOf, int levels) {
    return with(checked(name, "", levelOf, levels));
  }

  /**
   * Returns these data with one more grouping, each of whose levels lies within one level of an
   * earlier one, as a colour under a condition lies within the colour. It says nothing that the
   * levels do not say; with many levels, the fit is faster for knowing it. There can be one outer
   * grouping only.
   */
  public CountData groupedWithin(String outer, String name, int[] levelOf, int levels) {
    Grouping around =
        groupings.stream()
            .filter(grouping -> grouping.name().equals(outer))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no grouping is called " + outer));
    Grouping within = checked(name, outer, levelOf, levels);
    int[] outerOf = new int[levels];
    Arrays.fill(outerOf, -1);
    for (int i = 0; i < counts.length; i++) {
      int own = within.levelOf(i);
      if (outerOf[own] >= 0 && outerOf[own] != around.levelOf(i)) {
        throw new IllegalArgumentException(name + ": level " + own + " is not within " + outer);
      }
      outerOf[own] = around.levelOf(i);
    }
    return with(within);
  }

  /**
   * Every {@code step}th block of these data, whole; their levels keep their numbers. Data without
   * blocks are thinned by observation.
   */
  CountData thinned(int step) {
    int[] kept =
        IntStream.range(0, counts.length)
            .filter(i -> (block.isPresent() ? block.get().levelOf(i) : i) % step == 0)
            .toArray();
    return new CountData(
        Arrays.stream(kept).map(i -> counts[i]).toArray(),
        Arrays.stream(kept).mapToDouble(i -> logExposures[i]).toArray(),
        block.map(grouping -> grouping.only(kept)),
        groupings.stream().map(grouping -> grouping.only(kept)).toList());
  }

  private CountData with(Grouping grouping) {
    List<Grouping> more = new ArrayList<>(groupings);
    more.add(grouping);
    return new CountData(counts, logExposures, block, List.copyOf(more));
  }

  private Grouping checked(String name, String outer, int[] levelOf, int levels) {
    if (levelOf.length != counts.length) {
      throw new IllegalArgumentException(
          name + ": " + levelOf.length + " levels for " + counts.length + " counts");
    }
    boolean taken =
        groupings.stream().anyMatch(grouping -> grouping.name().equals(name))
            || block.filter(grouping -> grouping.name().equals(name)).isPresent();
    if (taken) {
      throw new IllegalArgumentException("two groupings are called " + name);
    }
    return new Grouping(name, outer, levelOf, levels);
  }

  /** The number of observations. */
  public int observations() {
    return counts.length;
  }

  int count(int observation) {
    return counts[observation];
  }

  double logExposure(int observation) {
    return logExposures[observation];
  }

  Optional<Grouping> block() {
    return block;
  }

  List<Grouping> groupings() {
    return groupings;
  }

  /**
   * The log rate that all observations would share, ln((Σ y + ½) / Σ exposure). The half keeps it
   * defined when every count is zero (common practice for Poisson rates).
   */
  double crudeLogRate() {
    double total = 0.5;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < counts.length; i++) {
      total += counts[i];
      highest = Math.max(highest, logExposures[i]);
    }
    double exposure = 0;
    for (double logExposure : logExposures) {
      exposure += Math.exp(logExposure - highest);
    }
    return Math.log(total) - Math.log(exposure) - highest;
  }
}

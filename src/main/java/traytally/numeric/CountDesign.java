package traytally.numeric;

import java.util.Arrays;
import java.util.List;

/**
 * Count data laid out for the fit: observations sorted by block, each with its columns.
 *
 * <p>The effects other than the block's are columns of one design matrix, numbered grouping after
 * grouping; an integrated intercept is the last column. Each observation touches {@code width} of
 * them, in ascending order, all with weight one. Data without a block are one block whose effect is
 * held at zero.
 */
final class CountDesign {
  final int observations;
  final int blocks;
  final boolean blocked;
  final boolean interceptColumn;
  final List<Grouping> groupings;
  // first column of each grouping, then of the intercept, then the number of columns
  final int[] groupStart;
  final int columns;
  final int width;
  final int[] counts; // observations, sorted by block
  final double[] logExposures; // observations, sorted by block
  final int[] blockStart; // blocks + 1 offsets into the observations
  final int[] column; // observations × width
  final int[] place; // observations × width: where in its block's list the column stands
  final int[] blockColumnStart; // blocks + 1 offsets into blockColumn
  final int[] blockColumn; // the distinct columns of each block, ascending
  final int[] blockOf; // observations
  final int[] outer; // columns: the outer level a column is or lies within, or −1
  final int outerLevels;

  CountDesign(CountData data, boolean interceptColumn) {
    this.observations = data.observations();
    this.blocked = data.block().isPresent();
    this.blocks = data.block().map(Grouping::levels).orElse(1);
    this.interceptColumn = interceptColumn;
    this.groupings = data.groupings();
    this.width = groupings.size() + (interceptColumn ? 1 : 0);
    this.groupStart = groupStarts();
    this.columns = groupStart[width];
    this.blockStart = new int[blocks + 1];
    int[] order = sortByBlock(data);
    this.counts = new int[observations];
    this.logExposures = new double[observations];
    this.column = new int[observations * width];
    for (int i = 0; i < observations; i++) {
      counts[i] = data.count(order[i]);
      logExposures[i] = data.logExposure(order[i]);
      for (int g = 0; g < width; g++) {
        int level = g < groupings.size() ? groupings.get(g).levelOf(order[i]) : 0;
        column[i * width + g] = groupStart[g] + level;
      }
    }
    this.place = new int[observations * width];
    this.blockColumnStart = new int[blocks + 1];
    this.blockColumn = listBlockColumns();
    this.blockOf = new int[observations];
    for (int b = 0; b < blocks; b++) {
      Arrays.fill(blockOf, blockStart[b], blockStart[b + 1], b);
    }
    this.outer = new int[columns];
    this.outerLevels = nest();
  }

  /** Finds the outer level of each nested column; returns how many outer levels there are. */
  private int nest() {
    Arrays.fill(outer, -1);
    int levels = 0;
    for (int g = 0; g < groupings.size(); g++) {
      String around = groupings.get(g).outer();
      for (int h = 0; h < g && !around.isEmpty(); h++) {
        if (groupings.get(h).name().equals(around)) {
          levels = levels(h);
          for (int i = 0; i < observations; i++) {
            int level = column[i * width + h] - groupStart[h];
            outer[column[i * width + g]] = level;
            outer[column[i * width + h]] = level;
          }
        }
      }
    }
    return levels;
  }

  /** Whether any column lies within an outer level. */
  boolean nested() {
    return outerLevels > 0;
  }

  /** The observations of each outer level, ascending. */
  int[][] observationsByOuter() {
    int[] sizes = new int[outerLevels];
    int[] levelOf = new int[observations];
    for (int i = 0; i < observations; i++) {
      levelOf[i] = -1;
      for (int k = i * width; k < (i + 1) * width; k++) {
        levelOf[i] = Math.max(levelOf[i], outer[column[k]]);
      }
      if (levelOf[i] >= 0) {
        sizes[levelOf[i]]++;
      }
    }
    int[][] all = new int[outerLevels][];
    Arrays.setAll(all, o -> new int[sizes[o]]);
    Arrays.fill(sizes, 0);
    for (int i = 0; i < observations; i++) {
      if (levelOf[i] >= 0) {
        all[levelOf[i]][sizes[levelOf[i]]++] = i;
      }
    }
    return all;
  }

  private int[] groupStarts() {
    int[] starts = new int[width + 1];
    for (int g = 0; g < width; g++) {
      starts[g + 1] = starts[g] + (g < groupings.size() ? groupings.get(g).levels() : 1);
    }
    return starts;
  }

  /** Counting sort; stable, so that equal data are always laid out the same way. */
  private int[] sortByBlock(CountData data) {
    int[] order = new int[observations];
    if (data.block().isEmpty()) {
      blockStart[1] = observations;
      Arrays.setAll(order, i -> i);
      return order;
    }
    Grouping block = data.block().get();
    for (int i = 0; i < observations; i++) {
      blockStart[block.levelOf(i) + 1]++;
    }
    for (int b = 0; b < blocks; b++) {
      blockStart[b + 1] += blockStart[b];
    }
    int[] next = blockStart.clone();
    for (int i = 0; i < observations; i++) {
      order[next[block.levelOf(i)]++] = i;
    }
    return order;
  }

  private int[] listBlockColumns() {
    int[] seenIn = new int[columns]; // block + 1 that last met the column
    int[] placeOf = new int[columns];
    int[] all = new int[column.length];
    int used = 0;
    for (int b = 0; b < blocks; b++) {
      int first = used;
      for (int k = blockStart[b] * width; k < blockStart[b + 1] * width; k++) {
        if (seenIn[column[k]] != b + 1) {
          seenIn[column[k]] = b + 1;
          all[used++] = column[k];
        }
      }
      Arrays.sort(all, first, used);
      for (int k = first; k < used; k++) {
        placeOf[all[k]] = k - first;
      }
      for (int k = blockStart[b] * width; k < blockStart[b + 1] * width; k++) {
        place[k] = placeOf[column[k]];
      }
      blockColumnStart[b + 1] = used;
    }
    return Arrays.copyOf(all, used);
  }

  /** The number of columns of the grouping with this number. */
  int levels(int group) {
    return groupStart[group + 1] - groupStart[group];
  }

  /** The distinct columns of the block with the most. */
  int widestBlock() {
    int widest = 0;
    for (int b = 0; b < blocks; b++) {
      widest = Math.max(widest, blockColumnStart[b + 1] - blockColumnStart[b]);
    }
    return widest;
  }

  /**
   * Sums each observation's effects, X·u.
   *
   * @param sums one per observation, overwritten
   */
  void sum(Effects effects, double[] sums) {
    for (int b = 0; b < blocks; b++) {
      for (int i = blockStart[b]; i < blockStart[b + 1]; i++) {
        double sum = effects.blocks[b];
        for (int k = i * width; k < (i + 1) * width; k++) {
          sum += effects.columns[column[k]];
        }
        sums[i] = sum;
      }
    }
  }

  /**
   * Sums each effect's observations, Xᵀ·v.
   *
   * @param values one per observation
   * @param sums overwritten
   */
  void collect(double[] values, Effects sums) {
    double[] perColumn = sums.columns;
    Arrays.fill(perColumn, 0);
    for (int b = 0; b < blocks; b++) {
      double sum = 0;
      for (int i = blockStart[b]; i < blockStart[b + 1]; i++) {
        sum += values[i];
        for (int k = i * width; k < (i + 1) * width; k++) {
          perColumn[column[k]] += values[i];
        }
      }
      sums.blocks[b] = sum;
    }
  }
}

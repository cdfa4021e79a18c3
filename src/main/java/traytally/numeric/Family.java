package traytally.numeric;

import java.util.Arrays;

/**
 * An outer level with the columns nested in it, and its parts of {@link NestedFactor}'s L: K and Y
 * = K⁻¹ B. U = K⁻¹ R is never written out: R is the observations themselves, a few columns each,
 * which takes far less to go through.
 */
final class Family {
  private final int[] columns;
  private final int[] observations; // ascending, so by block
  private final int[] block; // observations: the block
  private final int depth; // columns of the family that an observation has
  private final int[] own; // observations × depth: places in the family
  private final int plain; // columns outside any family
  private final double[] tie; // observations: weight and the block's standard deviation
  private final double[] sd; // columns
  private final double[] k; // columns × columns, lower
  private final double[] y; // columns × plain
  private final double[] part; // scratch, columns

  /**
   * An outer level.
   *
   * @param columns those of the design that lie in it
   * @param observations those of the design that touch it, ascending
   * @param number columns of the design: place among the plain ones or in the family
   * @param plain how many columns lie in no family
   */
  Family(CountDesign design, int[] columns, int[] observations, int[] number, int plain) {
    this.columns = columns;
    this.observations = observations;
    this.plain = plain;
    this.block = Arrays.stream(observations).map(i -> design.blockOf[i]).toArray();
    this.own =
        Arrays.stream(observations)
            .flatMap(i -> Arrays.stream(design.column, i * design.width, (i + 1) * design.width))
            .filter(column -> design.outer[column] >= 0)
            .map(column -> number[column])
            .toArray();
    this.depth = own.length / Math.max(1, observations.length);
    this.tie = new double[observations.length];
    this.sd = new double[columns.length];
    this.k = new double[columns.length * columns.length];
    this.y = new double[columns.length * plain];
    this.part = new double[columns.length];
  }

  int size() {
    return columns.length;
  }

  /** The design's column that is the family's column {@code f}. */
  int column(int f) {
    return columns[f];
  }

  /**
   * Fills F, R and B.
   *
   * @param number columns: place among the plain ones or in the family
   * @param weight W, one per observation
   * @param sds Λ, one standard deviation per effect
   */
  void fill(CountDesign design, int[] number, double[] weight, Effects sds) {
    Arrays.fill(k, 0);
    Arrays.fill(y, 0);
    Arrays.setAll(sd, f -> sds.columns[columns[f]]);
    int width = design.width;
    int n = columns.length;
    for (int o = 0; o < observations.length; o++) {
      int i = observations[o];
      tie[o] = weight[i] * sds.blocks[0];
      for (int a = o * depth; a < (o + 1) * depth; a++) {
        int row = own[a];
        double scaled = weight[i] * sd[row];
        for (int j = i * width; j < (i + 1) * width; j++) {
          int other = design.column[j];
          if (design.outer[other] < 0) {
            y[row * plain + number[other]] += scaled * sds.columns[other];
          } else {
            k[row * n + number[other]] += scaled * sds.columns[other];
          }
        }
      }
    }
    for (int f = 0; f < n; f++) {
      k[f * n + f] += 1;
    }
  }

  /**
   * F becomes K and B becomes Y; what they and R explain leaves d, C and A.
   *
   * @param root blocks: d so far
   * @param v blocks × plain: C so far
   * @param rest plain × plain: A so far
   */
  void eliminate(double[] root, double[] v, double[] rest) {
    factorise();
    int p = plain;
    for (int f = 0; f < columns.length; f++) {
      for (int row = 0; row < p; row++) {
        Run.add(rest, row * p, y, f * p, -y[f * p + row], row + 1);
      }
    }
    int end;
    for (int o = 0; o < observations.length; o = end) {
      end = endOfBlock(o);
      Arrays.fill(part, 0);
      for (int a = o; a < end; a++) {
        spread(a, tie[a]);
      }
      solve(part);
      for (int f = 0; f < columns.length; f++) {
        root[block[o]] -= part[f] * part[f];
        Run.add(v, block[o] * p, y, f * p, -part[f], p);
      }
    }
  }

  private void factorise() {
    int n = columns.length;
    int p = plain;
    for (int f = 0; f < n; f++) {
      for (int g = 0; g < f; g++) {
        k[f * n + g] = (k[f * n + g] - Run.dot(k, f * n, k, g * n, g)) / k[g * n + g];
        Run.add(y, f * p, y, g * p, -k[f * n + g], p);
      }
      k[f * n + f] = Math.sqrt(k[f * n + f] - Run.dot(k, f * n, k, f * n, f));
      Run.scale(y, f * p, 1 / k[f * n + f], p);
    }
  }

  /** The first observation after {@code o} that lies in another block, or the number of them. */
  private int endOfBlock(int o) {
    int end = o + 1;
    while (end < observations.length && block[end] == block[o]) {
      end++;
    }
    return end;
  }

  /** Adds R times {@code value} of observation {@code o}'s block to {@link #part}. */
  private void spread(int o, double value) {
    for (int a = o * depth; a < (o + 1) * depth; a++) {
      part[own[a]] += value * sd[own[a]];
    }
  }

  /** x becomes K⁻¹ x. */
  private void solve(double[] x) {
    int n = columns.length;
    for (int f = 0; f < n; f++) {
      x[f] = (x[f] - Run.dot(k, f * n, x, f)) / k[f * n + f];
    }
  }

  /** x becomes K⁻ᵀ x. */
  private void solveTransposed(double[] x) {
    int n = columns.length;
    for (int f = n - 1; f >= 0; f--) {
      x[f] /= k[f * n + f];
      Run.add(x, 0, k, f * n, -x[f], f);
    }
  }

  /** ln |F|. */
  double logDeterminant() {
    double sum = 0;
    for (int f = 0; f < columns.length; f++) {
      sum += 2 * Math.log(k[f * columns.length + f]);
    }
    return sum;
  }

  /** The family's part of r becoming L⁻¹ r. */
  void forward(Effects r, double[] plainPart) {
    gather(r);
    solve(part);
    scatter(r);
    for (int f = 0; f < columns.length; f++) {
      Run.add(plainPart, 0, y, f * plain, -part[f], plain);
    }
    addTies(r, -1);
  }

  /** The family's part of r becoming L⁻ᵀ r. */
  void backward(Effects r, double[] plainPart) {
    Arrays.fill(part, 0);
    for (int o = 0; o < observations.length; o++) {
      double value = tie[o] * r.blocks[block[o]];
      for (int a = o * depth; a < (o + 1) * depth; a++) {
        part[own[a]] += value;
      }
    }
    for (int f = 0; f < columns.length; f++) {
      part[f] *= sd[f];
    }
    solve(part);
    for (int f = 0; f < columns.length; f++) {
      part[f] = r.columns[columns[f]] - Run.dot(y, f * plain, plainPart, plain) - part[f];
    }
    solveTransposed(part);
    scatter(r);
  }

  /** The family's part of r becoming L r. */
  void multiply(Effects r, double[] plainPart) {
    int n = columns.length;
    gather(r);
    for (int f = 0; f < n; f++) {
      Run.add(plainPart, 0, y, f * plain, part[f], plain);
      r.columns[columns[f]] = Run.dot(k, f * n, part, f + 1);
    }
    addTies(r, 1);
  }

  /** Adds {@code factor} times Uᵀ x to the blocks, of the x in {@link #part}, which is spent. */
  private void addTies(Effects r, double factor) {
    solveTransposed(part);
    for (int f = 0; f < columns.length; f++) {
      part[f] *= factor * sd[f];
    }
    for (int o = 0; o < observations.length; o++) {
      double sum = 0;
      for (int a = o * depth; a < (o + 1) * depth; a++) {
        sum += part[own[a]];
      }
      r.blocks[block[o]] += tie[o] * sum;
    }
  }

  private void gather(Effects r) {
    for (int f = 0; f < columns.length; f++) {
      part[f] = r.columns[columns[f]];
    }
  }

  private void scatter(Effects r) {
    for (int f = 0; f < columns.length; f++) {
      r.columns[columns[f]] = part[f];
    }
  }

  /**
   * The entry of P⁻¹ at the family's column {@code f}.
   *
   * @param dense (M Mᵀ)⁻¹, plain × plain
   * @param ties scratch, one per plain column
   */
  double inverseDiagonal(int f, double[] root, double[] v, double[] dense, double[] ties) {
    int p = plain;
    Arrays.fill(part, 0);
    Arrays.fill(ties, 0);
    part[f] = 1;
    solve(part);
    double sum = 0;
    for (int g = f; g < columns.length; g++) {
      sum += part[g] * part[g];
      Run.add(ties, 0, y, g * p, part[g], p);
    }
    solveTransposed(part);
    for (int g = 0; g < columns.length; g++) {
      part[g] *= sd[g];
    }
    int end;
    for (int o = 0; o < observations.length; o = end) {
      end = endOfBlock(o);
      double t = 0;
      for (int a = o; a < end; a++) {
        for (int c = a * depth; c < (a + 1) * depth; c++) {
          t += tie[a] * part[own[c]];
        }
      }
      t /= root[block[o]];
      sum += t * t;
      Run.add(ties, 0, v, block[o] * p, -t, p);
    }
    return sum + Run.quadratic(dense, ties);
  }
}

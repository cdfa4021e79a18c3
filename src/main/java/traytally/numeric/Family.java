package traytally.numeric;

import java.util.Arrays;

/**
 * An outer level with the columns nested in it, and its parts of {@link NestedFactor}'s L: K, U =
 * K⁻¹ R and Y = K⁻¹ B.
 */
final class Family {
  private final int[] columns;
  private final int[] observations; // ascending, so by block
  private final int[] blocks; // those it is seen in, ascending
  private final int plain; // columns outside any family
  private final double[] k; // columns × columns, lower
  private final double[] u; // columns × blocks
  private final double[] y; // columns × plain

  Family(int[] columns, int[] observations, int[] blocks, int plain) {
    this.columns = columns;
    this.observations = observations;
    this.blocks = blocks;
    this.plain = plain;
    this.k = new double[columns.length * columns.length];
    this.u = new double[columns.length * blocks.length];
    this.y = new double[columns.length * plain];
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
    double[] sd = sds.columns;
    double blockSd = sds.blocks[0];
    Arrays.fill(k, 0);
    Arrays.fill(u, 0);
    Arrays.fill(y, 0);
    int width = design.width;
    int n = columns.length;
    int at = 0;
    for (int i : observations) {
      while (blocks[at] != design.blockOf[i]) {
        at++;
      }
      for (int own = i * width; own < (i + 1) * width; own++) {
        int column = design.column[own];
        if (design.outer[column] >= 0) {
          int row = number[column];
          double scaled = weight[i] * sd[column];
          u[row * blocks.length + at] += blockSd * scaled;
          for (int j = i * width; j < (i + 1) * width; j++) {
            int other = design.column[j];
            if (design.outer[other] < 0) {
              y[row * plain + number[other]] += scaled * sd[other];
            } else {
              k[row * n + number[other]] += scaled * sd[other];
            }
          }
        }
      }
    }
    for (int f = 0; f < n; f++) {
      k[f * n + f] += 1;
    }
  }

  /**
   * F becomes K, R becomes U and B becomes Y; what they explain leaves d, C and A.
   *
   * @param root blocks: d so far
   * @param v blocks × plain: C so far
   * @param rest plain × plain: A so far
   */
  void eliminate(double[] root, double[] v, double[] rest) {
    int n = columns.length;
    int b = blocks.length;
    int p = plain;
    for (int f = 0; f < n; f++) {
      for (int g = 0; g < f; g++) {
        double sum = k[f * n + g];
        for (int h = 0; h < g; h++) {
          sum -= k[f * n + h] * k[g * n + h];
        }
        k[f * n + g] = sum / k[g * n + g];
        Run.add(u, f * b, u, g * b, -k[f * n + g], b);
        Run.add(y, f * p, y, g * p, -k[f * n + g], p);
      }
      double own = k[f * n + f];
      for (int h = 0; h < f; h++) {
        own -= k[f * n + h] * k[f * n + h];
      }
      own = Math.sqrt(own);
      k[f * n + f] = own;
      Run.scale(u, f * b, 1 / own, b);
      Run.scale(y, f * p, 1 / own, p);
      for (int j = 0; j < b; j++) {
        double tie = u[f * b + j];
        root[blocks[j]] -= tie * tie;
        Run.add(v, blocks[j] * p, y, f * p, -tie, p);
      }
      for (int row = 0; row < p; row++) {
        Run.add(rest, row * p, y, f * p, -y[f * p + row], row + 1);
      }
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
    int n = columns.length;
    int b = blocks.length;
    for (int f = 0; f < n; f++) {
      double solved = r.columns[columns[f]];
      for (int g = 0; g < f; g++) {
        solved -= k[f * n + g] * r.columns[columns[g]];
      }
      solved /= k[f * n + f];
      r.columns[columns[f]] = solved;
      for (int j = 0; j < b; j++) {
        r.blocks[blocks[j]] -= u[f * b + j] * solved;
      }
      Run.add(plainPart, 0, y, f * plain, -solved, plain);
    }
  }

  /** The family's part of r becoming L⁻ᵀ r. */
  void backward(Effects r, double[] plainPart) {
    int n = columns.length;
    int b = blocks.length;
    for (int f = n - 1; f >= 0; f--) {
      double sum = r.columns[columns[f]] - Run.dot(y, f * plain, plainPart, plain);
      for (int j = 0; j < b; j++) {
        sum -= u[f * b + j] * r.blocks[blocks[j]];
      }
      for (int g = f + 1; g < n; g++) {
        sum -= k[g * n + f] * r.columns[columns[g]];
      }
      r.columns[columns[f]] = sum / k[f * n + f];
    }
  }

  /** The family's part of r becoming L r. */
  void multiply(Effects r, double[] plainPart) {
    int n = columns.length;
    int b = blocks.length;
    for (int f = n - 1; f >= 0; f--) {
      double own = r.columns[columns[f]];
      Run.add(plainPart, 0, y, f * plain, own, plain);
      for (int j = 0; j < b; j++) {
        r.blocks[blocks[j]] += u[f * b + j] * own;
      }
      double sum = 0;
      for (int g = 0; g <= f; g++) {
        sum += k[f * n + g] * r.columns[columns[g]];
      }
      r.columns[columns[f]] = sum;
    }
  }

  /**
   * The entry of P⁻¹ at the family's column {@code f}.
   *
   * @param dense (M Mᵀ)⁻¹, plain × plain
   * @param ties scratch, one per plain column
   */
  double inverseDiagonal(int f, double[] root, double[] v, double[] dense, double[] ties) {
    int n = columns.length;
    int p = plain;
    int b = blocks.length;
    double[] s = new double[n]; // K⁻¹ e
    double[] t = new double[b]; // Uᵀ s / √d
    Arrays.fill(ties, 0);
    double sum = 0;
    for (int g = f; g < n; g++) {
      double solved = g == f ? 1 : 0;
      for (int h = f; h < g; h++) {
        solved -= k[g * n + h] * s[h];
      }
      s[g] = solved / k[g * n + g];
      sum += s[g] * s[g];
      Run.add(t, 0, u, g * b, s[g], b);
      Run.add(ties, 0, y, g * p, s[g], p);
    }
    for (int j = 0; j < b; j++) {
      t[j] /= root[blocks[j]];
      sum += t[j] * t[j];
      Run.add(ties, 0, v, blocks[j] * p, -t[j], p);
    }
    return sum + Run.quadratic(dense, ties);
  }
}

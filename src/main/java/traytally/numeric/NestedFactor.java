package traytally.numeric;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM;

/**
 * A factorised stand-in P = L Lᵀ for the Hessian H of the effects.
 *
 * <p>Effects are of three kinds: families, each an outer level with the columns nested in it (a
 * colour and its columns by species, clarity and season); blocks; and plain columns. Families meet
 * only through blocks and plain columns, so they are eliminated one by one. That ties blocks to
 * each other, where they were independent, if weakly: P leaves these ties out and has all else of
 * H.
 *
 * <pre>
 *     [ F   R   B ]        [ K           ]   F = K Kᵀ, U = K⁻¹ R, Y = K⁻¹ B
 * H = [ Rᵀ  D   C ],   L = [ Uᵀ  √d      ]   d = diag(D − Uᵀ U), V = (C − Uᵀ Y) / √d
 *     [ Bᵀ  Cᵀ  A ]        [ Yᵀ  Vᵀ   M  ]   M Mᵀ = A − Yᵀ Y − Vᵀ V
 * </pre>
 *
 * <p>(block Cholesky; Golub &amp; Van Loan, Matrix Computations, 4th ed., 2013, §4.2.9). Work and
 * memory are linear in the observations, the outer levels and the blocks.
 */
final class NestedFactor {

  /** An outer level: its own columns, the blocks it is seen in, and its parts of L. */
  private static final class Family {
    private final int[] columns;
    private final int[] observations; // ascending, so by block
    private final int[] blocks; // ascending
    private final double[] k; // columns × columns, lower
    private final double[] u; // columns × blocks
    private final double[] y; // columns × plain

    private Family(int[] columns, int[] observations, int[] blocks, int plain) {
      this.columns = columns;
      this.observations = observations;
      this.blocks = blocks;
      this.k = new double[columns.length * columns.length];
      this.u = new double[columns.length * blocks.length];
      this.y = new double[columns.length * plain];
    }
  }

  private final CountDesign design;
  private final int[] plain; // the plain columns
  private final int[] number; // columns: place among the plain ones or in the family
  private final Family[] families;
  private final double[] root; // blocks: √d
  private final double[] v; // blocks × plain
  private final DMatrixRMaj rest; // M Mᵀ, plain × plain
  private final CholeskyDecompositionInner_DDRM cholesky =
      new CholeskyDecompositionInner_DDRM(true);
  private double[] m = new double[0]; // M, plain × plain, lower
  private final double[] plainPart; // scratch

  NestedFactor(CountDesign design) {
    this.design = design;
    this.number = new int[design.columns];
    int[] sizes = new int[design.outerLevels];
    int[] found = new int[design.columns];
    int count = 0;
    for (int c = 0; c < design.columns; c++) {
      if (design.outer[c] < 0) {
        found[count] = c;
        number[c] = count++;
      } else {
        number[c] = sizes[design.outer[c]]++;
      }
    }
    this.plain = Arrays.copyOf(found, count);
    this.families = families(sizes);
    this.root = new double[design.blocks];
    this.v = new double[design.blocks * count];
    this.rest = new DMatrixRMaj(count, count);
    this.plainPart = new double[count];
  }

  private Family[] families(int[] sizes) {
    int[][] columns = new int[sizes.length][];
    Arrays.setAll(columns, o -> new int[sizes[o]]);
    for (int c = 0; c < design.columns; c++) {
      if (design.outer[c] >= 0) {
        columns[design.outer[c]][number[c]] = c;
      }
    }
    int[][] observations = design.observationsByOuter();
    Family[] all = new Family[sizes.length];
    for (int o = 0; o < all.length; o++) {
      int[] blocks =
          Arrays.stream(observations[o]).map(i -> design.blockOf[i]).distinct().toArray();
      all[o] = new Family(columns[o], observations[o], blocks, plain.length);
    }
    return all;
  }

  /**
   * Builds and factorises P.
   *
   * @param weight W, one per observation
   * @param sds Λ, one standard deviation per effect
   * @return whether it could be factorised
   */
  boolean assemble(double[] weight, Effects sds) {
    double[] sd = sds.columns;
    double blockSd = sds.blocks[0];
    int p = plain.length;
    double[] a = rest.data;
    Arrays.fill(a, 0);
    Arrays.fill(v, 0);
    Arrays.fill(root, 1);
    int width = design.width;
    for (int i = 0; i < design.observations; i++) {
      int block = design.blockOf[i];
      root[block] += blockSd * blockSd * weight[i];
      for (int k = i * width; k < (i + 1) * width; k++) {
        int row = design.column[k];
        if (design.outer[row] < 0) {
          double scaled = weight[i] * sd[row];
          v[block * p + number[row]] += blockSd * scaled;
          for (int j = i * width; j <= k; j++) {
            int col = design.column[j];
            if (design.outer[col] < 0) {
              a[number[row] * p + number[col]] += scaled * sd[col];
            }
          }
        }
      }
    }
    for (int k = 0; k < p; k++) {
      a[k * p + k] += 1;
    }
    for (Family family : families) {
      fill(family, weight, sd, blockSd);
      eliminate(family);
    }
    eliminateBlocks();
    boolean sound = cholesky.decompose(rest);
    m = cholesky.getT().data;
    return sound;
  }

  private void fill(Family family, double[] weight, double[] sd, double blockSd) {
    Arrays.fill(family.k, 0);
    Arrays.fill(family.u, 0);
    Arrays.fill(family.y, 0);
    int width = design.width;
    int n = family.columns.length;
    int at = 0;
    for (int i : family.observations) {
      while (family.blocks[at] != design.blockOf[i]) {
        at++;
      }
      for (int k = i * width; k < (i + 1) * width; k++) {
        int column = design.column[k];
        if (design.outer[column] >= 0) {
          int row = number[column];
          double scaled = weight[i] * sd[column];
          family.u[row * family.blocks.length + at] += blockSd * scaled;
          for (int j = i * width; j < (i + 1) * width; j++) {
            int other = design.column[j];
            if (design.outer[other] < 0) {
              family.y[row * plain.length + number[other]] += scaled * sd[other];
            } else {
              family.k[row * n + number[other]] += scaled * sd[other];
            }
          }
        }
      }
    }
    for (int f = 0; f < n; f++) {
      family.k[f * n + f] += 1;
    }
  }

  /** F becomes K, R becomes U and B becomes Y; what they explain leaves d, C and A. */
  private void eliminate(Family family) {
    int n = family.columns.length;
    int b = family.blocks.length;
    int p = plain.length;
    double[] k = family.k;
    for (int f = 0; f < n; f++) {
      for (int g = 0; g < f; g++) {
        double sum = k[f * n + g];
        for (int h = 0; h < g; h++) {
          sum -= k[f * n + h] * k[g * n + h];
        }
        k[f * n + g] = sum / k[g * n + g];
        add(family.u, f * b, family.u, g * b, -k[f * n + g], b);
        add(family.y, f * p, family.y, g * p, -k[f * n + g], p);
      }
      double own = k[f * n + f];
      for (int h = 0; h < f; h++) {
        own -= k[f * n + h] * k[f * n + h];
      }
      own = Math.sqrt(own);
      k[f * n + f] = own;
      scale(family.u, f * b, 1 / own, b);
      scale(family.y, f * p, 1 / own, p);
      for (int j = 0; j < b; j++) {
        double tie = family.u[f * b + j];
        root[family.blocks[j]] -= tie * tie;
        add(v, family.blocks[j] * p, family.y, f * p, -tie, p);
      }
      for (int row = 0; row < p; row++) {
        add(rest.data, row * p, family.y, f * p, -family.y[f * p + row], row + 1);
      }
    }
  }

  private void eliminateBlocks() {
    int p = plain.length;
    for (int b = 0; b < root.length; b++) {
      root[b] = Math.sqrt(root[b]);
      scale(v, b * p, 1 / root[b], p);
      for (int row = 0; row < p; row++) {
        double factor = v[b * p + row];
        if (factor != 0) {
          add(rest.data, row * p, v, b * p, -factor, row + 1);
        }
      }
    }
  }

  private static void add(
      double[] to, int at, double[] from, int start, double factor, int length) {
    for (int c = 0; c < length; c++) {
      to[at + c] += factor * from[start + c];
    }
  }

  private static void scale(double[] values, int at, double factor, int length) {
    for (int c = at; c < at + length; c++) {
      values[c] *= factor;
    }
  }

  /** Four sums at once: a sum of doubles in strict order cannot be worked out side by side. */
  private static double dot(double[] left, int at, double[] right, int length) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int k = 0;
    for (; k + 3 < length; k += 4) {
      s0 += left[at + k] * right[k];
      s1 += left[at + k + 1] * right[k + 1];
      s2 += left[at + k + 2] * right[k + 2];
      s3 += left[at + k + 3] * right[k + 3];
    }
    for (; k < length; k++) {
      s0 += left[at + k] * right[k];
    }
    return s0 + s1 + (s2 + s3);
  }

  /** ln |P|. */
  double logDeterminant() {
    double sum = 0;
    for (Family family : families) {
      for (int f = 0; f < family.columns.length; f++) {
        sum += 2 * Math.log(family.k[f * family.columns.length + f]);
      }
    }
    for (double each : root) {
      sum += 2 * Math.log(each);
    }
    for (int k = 0; k < plain.length; k++) {
      sum += 2 * Math.log(m[k * plain.length + k]);
    }
    return sum;
  }

  /** Solves P x = r in place. */
  void solve(Effects r) {
    forward(r);
    backward(r);
  }

  /** r becomes L⁻¹ r. */
  private void forward(Effects r) {
    gatherPlain(r);
    int p = plain.length;
    for (Family family : families) {
      int n = family.columns.length;
      int b = family.blocks.length;
      for (int f = 0; f < n; f++) {
        double solved = r.columns[family.columns[f]];
        for (int g = 0; g < f; g++) {
          solved -= family.k[f * n + g] * r.columns[family.columns[g]];
        }
        solved /= family.k[f * n + f];
        r.columns[family.columns[f]] = solved;
        for (int j = 0; j < b; j++) {
          r.blocks[family.blocks[j]] -= family.u[f * b + j] * solved;
        }
        add(plainPart, 0, family.y, f * p, -solved, p);
      }
    }
    for (int b = 0; b < root.length; b++) {
      r.blocks[b] /= root[b];
      add(plainPart, 0, v, b * p, -r.blocks[b], p);
    }
    for (int row = 0; row < p; row++) {
      plainPart[row] = (plainPart[row] - dot(m, row * p, plainPart, row)) / m[row * p + row];
    }
    scatterPlain(r);
  }

  /** r becomes L⁻ᵀ r. */
  void backward(Effects r) {
    gatherPlain(r);
    int p = plain.length;
    for (int row = p - 1; row >= 0; row--) {
      plainPart[row] /= m[row * p + row];
      add(plainPart, 0, m, row * p, -plainPart[row], row);
    }
    scatterPlain(r);
    for (int b = 0; b < root.length; b++) {
      r.blocks[b] = (r.blocks[b] - dot(v, b * p, plainPart, p)) / root[b];
    }
    for (Family family : families) {
      int n = family.columns.length;
      int b = family.blocks.length;
      for (int f = n - 1; f >= 0; f--) {
        double sum = r.columns[family.columns[f]] - dot(family.y, f * p, plainPart, p);
        for (int j = 0; j < b; j++) {
          sum -= family.u[f * b + j] * r.blocks[family.blocks[j]];
        }
        for (int g = f + 1; g < n; g++) {
          sum -= family.k[g * n + f] * r.columns[family.columns[g]];
        }
        r.columns[family.columns[f]] = sum / family.k[f * n + f];
      }
    }
  }

  /** r becomes L r. */
  void multiply(Effects r) {
    gatherPlain(r);
    int p = plain.length;
    for (int row = p - 1; row >= 0; row--) {
      plainPart[row] = dot(m, row * p, plainPart, row + 1);
    }
    for (int b = 0; b < root.length; b++) {
      add(plainPart, 0, v, b * p, r.blocks[b], p);
      r.blocks[b] *= root[b];
    }
    for (Family family : families) {
      int n = family.columns.length;
      int b = family.blocks.length;
      for (int f = n - 1; f >= 0; f--) {
        double own = r.columns[family.columns[f]];
        add(plainPart, 0, family.y, f * p, own, p);
        for (int j = 0; j < b; j++) {
          r.blocks[family.blocks[j]] += family.u[f * b + j] * own;
        }
        double sum = 0;
        for (int g = 0; g <= f; g++) {
          sum += family.k[f * n + g] * r.columns[family.columns[g]];
        }
        r.columns[family.columns[f]] = sum;
      }
    }
    scatterPlain(r);
  }

  private void gatherPlain(Effects r) {
    for (int k = 0; k < plain.length; k++) {
      plainPart[k] = r.columns[plain[k]];
    }
  }

  private void scatterPlain(Effects r) {
    for (int k = 0; k < plain.length; k++) {
      r.columns[plain[k]] = plainPart[k];
    }
  }

  /** The diagonal of P⁻¹ = L⁻ᵀ L⁻¹: the squared lengths of the columns of L⁻¹. */
  Effects inverseDiagonal() {
    int p = plain.length;
    double[] dense = new double[p * p]; // (M Mᵀ)⁻¹
    new FactorInverse(p).invert(m, dense);
    Effects diagonal = Effects.zero(design);
    for (int k = 0; k < p; k++) {
      diagonal.columns[plain[k]] = dense[k * p + k];
    }
    double[] ties = new double[p];
    for (int b = 0; b < root.length; b++) {
      System.arraycopy(v, b * p, ties, 0, p);
      diagonal.blocks[b] = (1 + quadratic(dense, ties)) / (root[b] * root[b]);
    }
    for (Family family : families) {
      for (int f = 0; f < family.columns.length; f++) {
        diagonal.columns[family.columns[f]] = inverseDiagonal(family, f, dense, ties);
      }
    }
    return diagonal;
  }

  private double inverseDiagonal(Family family, int f, double[] dense, double[] ties) {
    int n = family.columns.length;
    int p = plain.length;
    int blocks = family.blocks.length;
    double[] s = new double[n]; // K⁻¹ e
    double[] t = new double[blocks]; // Uᵀ s / √d
    Arrays.fill(ties, 0);
    double sum = 0;
    for (int g = f; g < n; g++) {
      double solved = g == f ? 1 : 0;
      for (int h = f; h < g; h++) {
        solved -= family.k[g * n + h] * s[h];
      }
      s[g] = solved / family.k[g * n + g];
      sum += s[g] * s[g];
      add(t, 0, family.u, g * blocks, s[g], blocks);
      add(ties, 0, family.y, g * p, s[g], p);
    }
    for (int j = 0; j < blocks; j++) {
      t[j] /= root[family.blocks[j]];
      sum += t[j] * t[j];
      add(ties, 0, v, family.blocks[j] * p, -t[j], p);
    }
    return sum + quadratic(dense, ties);
  }

  private static double quadratic(double[] matrix, double[] vector) {
    double sum = 0;
    for (int row = 0; row < vector.length; row++) {
      if (vector[row] != 0) {
        sum += vector[row] * dot(matrix, row * vector.length, vector, vector.length);
      }
    }
    return sum;
  }
}

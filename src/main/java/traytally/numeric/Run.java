package traytally.numeric;

/** Sums over runs of numbers within longer arrays. */
final class Run {
  private Run() {}

  /** Adds {@code factor} times a run of {@code from} to one of {@code to}. */
  static void add(double[] to, int at, double[] from, int start, double factor, int length) {
    for (int c = 0; c < length; c++) {
      to[at + c] += factor * from[start + c];
    }
  }

  static void scale(double[] values, int at, double factor, int length) {
    for (int c = at; c < at + length; c++) {
      values[c] *= factor;
    }
  }

  /** Four sums at once: a sum of doubles in strict order cannot be worked out side by side. */
  static double dot(double[] left, int at, double[] right, int length) {
    return dot(left, at, right, 0, length);
  }

  static double dot(double[] left, int at, double[] right, int start, int length) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int k = 0;
    for (; k + 3 < length; k += 4) {
      s0 += left[at + k] * right[start + k];
      s1 += left[at + k + 1] * right[start + k + 1];
      s2 += left[at + k + 2] * right[start + k + 2];
      s3 += left[at + k + 3] * right[start + k + 3];
    }
    for (; k < length; k++) {
      s0 += left[at + k] * right[start + k];
    }
    return s0 + s1 + (s2 + s3);
  }

  /** vᵀ A v of a square matrix, row by row. */
  static double quadratic(double[] matrix, double[] vector) {
    double sum = 0;
    for (int row = 0; row < vector.length; row++) {
      if (vector[row] != 0) {
        sum += vector[row] * dot(matrix, row * vector.length, vector, vector.length);
      }
    }
    return sum;
  }
}

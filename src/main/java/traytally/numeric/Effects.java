package traytally.numeric;

/** One number for every effect of a model: the blocks' and the columns'; mutable. */
final class Effects {
  final double[] blocks;
  final double[] columns;

  private Effects(double[] blocks, double[] columns) {
    this.blocks = blocks;
    this.columns = columns;
  }

  static Effects zero(CountDesign design) {
    return new Effects(new double[design.blocks], new double[design.columns]);
  }

  Effects copy() {
    return new Effects(blocks.clone(), columns.clone());
  }

  void set(Effects other) {
    System.arraycopy(other.blocks, 0, blocks, 0, blocks.length);
    System.arraycopy(other.columns, 0, columns, 0, columns.length);
  }

  double dot(Effects other) {
    return dot(blocks, other.blocks) + dot(columns, other.columns);
  }

  private static double dot(double[] left, double[] right) {
    double sum = 0;
    for (int i = 0; i < left.length; i++) {
      sum += left[i] * right[i];
    }
    return sum;
  }

  /** Adds another, times a factor. */
  void add(double factor, Effects other) {
    add(factor, blocks, other.blocks);
    add(factor, columns, other.columns);
  }

  private static void add(double factor, double[] to, double[] from) {
    for (int i = 0; i < to.length; i++) {
      to[i] += factor * from[i];
    }
  }

  /** Multiplies each number by one of its own, such as its standard deviation. */
  void scale(Effects factors) {
    scale(blocks, factors.blocks);
    scale(columns, factors.columns);
  }

  private static void scale(double[] to, double[] factors) {
    for (int i = 0; i < to.length; i++) {
      to[i] *= factors[i];
    }
  }
}

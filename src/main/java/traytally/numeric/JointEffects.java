package traytally.numeric;

import java.util.List;
import java.util.Random;

/** The joint normal posterior of the columns' effects, blocks integrated out. */
sealed interface JointEffects permits DenseEffects, NestedEffects {

  /** A weighted sum of distinct columns. */
  final class Sum {
    private final int[] columns;
    private final double[] weights;

    /** Takes the arrays as they are; nobody else may write to them afterwards. */
    Sum(int[] columns, double[] weights) {
      this.columns = columns;
      this.weights = weights;
    }

    int size() {
      return columns.length;
    }

    int column(int term) {
      return columns[term];
    }

    double weight(int term) {
      return weights[term];
    }
  }

  /** The covariance of two weighted sums. */
  double covariance(Sum left, Sum right);

  /** The variance of each of some weighted sums less one that is common to all. */
  double[] differences(List<Sum> some, Sum common);

  /** Deviations of every column from the mode, drawn. */
  double[] draw(Random random);
}

package traytally.numeric;

import java.util.List;
import java.util.Random;

/** The joint normal posterior of the columns' effects, blocks integrated out. */
sealed interface JointEffects permits DenseEffects, NestedEffects {

  /**
   * A weighted sum of columns.
   *
   * @param columns distinct
   */
  record Sum(int[] columns, double[] weights) {}

  /** The covariance of two weighted sums. */
  double covariance(Sum left, Sum right);

  /** The variance of each of some weighted sums less one that is common to all. */
  double[] differences(List<Sum> some, Sum common);

  /** Deviations of every column from the mode, drawn. */
  double[] draw(Random random);
}

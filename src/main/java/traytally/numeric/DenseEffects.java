package traytally.numeric;

import java.util.List;
import java.util.Random;

/**
 * The joint posterior where its covariance is known in full.
 *
 * <p>Its precision is Λ⁻¹ S Λ⁻¹ with S = L Lᵀ, so a draw is Λ L⁻ᵀ ε with ε standard normal.
 */
final class DenseEffects implements JointEffects {
  private final int columns;
  private final double[] covariance; // V, columns × columns
  private final double[] factor; // L, columns × columns, lower
  private final double[] sds; // Λ, columns

  /** Takes the arrays as they are; nobody else may write to them afterwards. */
  DenseEffects(double[] covariance, double[] factor, double[] sds) {
    this.columns = sds.length;
    this.covariance = covariance;
    this.factor = factor;
    this.sds = sds;
  }

  @Override
  public double covariance(Sum left, Sum right) {
    double sum = 0;
    for (int i = 0; i < left.size(); i++) {
      double inner = 0;
      for (int j = 0; j < right.size(); j++) {
        inner += right.weight(j) * covariance[left.column(i) * columns + right.column(j)];
      }
      sum += left.weight(i) * inner;
    }
    return sum;
  }

  /** aᵀ V a − 2 aᵀ (V m) + mᵀ V m, with V m worked out once. */
  @Override
  public double[] differences(List<Sum> some, Sum common) {
    double[] image = new double[columns]; // V m
    for (int j = 0; j < common.size(); j++) {
      for (int row = 0; row < columns; row++) {
        image[row] += common.weight(j) * covariance[common.column(j) * columns + row];
      }
    }
    double own = dot(common, image);
    double[] variances = new double[some.size()];
    for (int s = 0; s < variances.length; s++) {
      Sum each = some.get(s);
      variances[s] = covariance(each, each) - 2 * dot(each, image) + own;
    }
    return variances;
  }

  private static double dot(Sum sum, double[] image) {
    double dot = 0;
    for (int i = 0; i < sum.size(); i++) {
      dot += sum.weight(i) * image[sum.column(i)];
    }
    return dot;
  }

  @Override
  public double[] draw(Random random) {
    double[] drawn = new double[columns];
    for (int k = 0; k < columns; k++) {
      drawn[k] = random.nextGaussian();
    }
    for (int row = columns - 1; row >= 0; row--) {
      double solved = drawn[row] / factor[row * columns + row];
      for (int above = 0; above < row; above++) {
        drawn[above] -= factor[row * columns + above] * solved;
      }
      drawn[row] = solved * sds[row];
    }
    return drawn;
  }
}

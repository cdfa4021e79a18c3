package traytally.numeric;

/**
 * The joint normal posterior of the columns' effects, blocks integrated out.
 *
 * <p>Its precision is Λ⁻¹ S Λ⁻¹ with S = L Lᵀ, so a draw is Λ L⁻ᵀ ε with ε standard normal.
 */
final class JointEffects {
  private final int columns;
  private final double[] covariance; // columns × columns
  private final double[] factor; // L, columns × columns, lower
  private final double[] sds; // Λ, columns

  /** Takes the arrays as they are; nobody else may write to them afterwards. */
  JointEffects(double[] covariance, double[] factor, double[] sds) {
    this.columns = sds.length;
    this.covariance = covariance;
    this.factor = factor;
    this.sds = sds;
  }

  double covariance(int row, int column) {
    return covariance[row * columns + column];
  }

  /** V w: the covariance of every column with a weighted sum of some. */
  double[] times(int[] some, double[] weights) {
    double[] image = new double[columns];
    for (int j = 0; j < some.length; j++) {
      for (int row = 0; row < columns; row++) {
        image[row] += weights[j] * covariance[some[j] * columns + row];
      }
    }
    return image;
  }

  /**
   * Turns independent standard normals into a draw of deviations from the mode.
   *
   * @param normals one per column, overwritten
   */
  void correlate(double[] normals) {
    for (int row = columns - 1; row >= 0; row--) {
      double solved = normals[row] / factor[row * columns + row];
      for (int above = 0; above < row; above++) {
        normals[above] -= factor[row * columns + above] * solved;
      }
      normals[row] = solved * sds[row];
    }
  }
}

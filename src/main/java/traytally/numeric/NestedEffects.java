package traytally.numeric;

import java.util.List;
import java.util.Random;

/** The joint posterior Λ H⁻¹ Λ where H is only multiplied with: one linear system a question. */
final class NestedEffects implements JointEffects {
  /** The error of a variance is about the square of this, of its size. */
  private static final double TOLERANCE = 1e-1;

  /** A covariance must be right itself. */
  private static final double COVARIANCE_TOLERANCE = 1e-3;

  /** The error of a draw, of its size, in a direction of its own each time. */
  private static final double DRAW_TOLERANCE = 3e-2;

  private final NestedHessian hessian;
  private final CountDesign design;

  /** Keeps the Hessian; nobody else may assemble it anew. */
  NestedEffects(NestedHessian hessian, CountDesign design) {
    this.hessian = hessian;
    this.design = design;
  }

  @Override
  public double covariance(Sum left, Sum right) {
    Effects wanted = Effects.zero(design);
    add(wanted, left, 1);
    Effects from = Effects.zero(design);
    add(from, right, 1);
    return wanted.dot(hessian.solved(from, COVARIANCE_TOLERANCE));
  }

  @Override
  public double[] differences(List<Sum> some, Sum common) {
    double[] variances = new double[some.size()];
    for (int s = 0; s < variances.length; s++) {
      Effects difference = Effects.zero(design);
      add(difference, some.get(s), 1);
      add(difference, common, -1);
      variances[s] = difference.dot(hessian.solved(difference, TOLERANCE));
    }
    return variances;
  }

  private void add(Effects to, Sum sum, double factor) {
    for (int i = 0; i < sum.size(); i++) {
      int column = sum.column(i);
      to.columns[column] += factor * sum.weight(i) * hessian.sds().columns[column];
    }
  }

  /** Λ H⁻¹ s with s of covariance H has covariance Λ H⁻¹ Λ (perturbation sampling). */
  @Override
  public double[] draw(Random random) {
    Effects drawn = hessian.solved(hessian.drawScores(random), DRAW_TOLERANCE);
    drawn.scale(hessian.sds());
    return drawn.columns;
  }
}

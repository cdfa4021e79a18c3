package traytally.numeric;

/**
 * Solves H s = g, for the Hessian H = I + Λ Xᵀ W X Λ, without factorising H anew at every step.
 *
 * <p>A factorised Hessian of some steps ago, perhaps at other parameters, preconditions the method
 * of conjugate gradients (Hestenes &amp; Stiefel 1952; Nocedal &amp; Wright, Numerical
 * Optimization, 2nd ed., 2006, algorithm 5.3): a handful of products with X take the place of a
 * factorisation. Only where that does not serve is H itself factorised.
 */
final class NewtonDirection {
  private static final double LOOSEST = 1e-2;
  private static final double TIGHTEST = 1e-6;

  private final CountDesign design;
  private final Hessian hessian;
  private final double[] perObservation;
  private boolean factorised;

  NewtonDirection(CountDesign design, Hessian hessian) {
    this.design = design;
    this.hessian = hessian;
    this.perObservation = new double[design.observations];
  }

  /** Factorises H; returns whether it could be. */
  boolean factorise(double[] weight, Effects sds) {
    factorised = hessian.assemble(weight, sds);
    return factorised;
  }

  /**
   * Solves H s = g, nearly: the nearer, the smaller g is, so that Newton's method stays quadratic.
   *
   * @return s; not a number where H cannot be factorised
   */
  Effects solve(Effects score, double[] weight, Effects sds) {
    Effects step = Effects.zero(design);
    if (factorised && conjugateGradients(score, weight, sds, step)) {
      return step;
    }
    step.set(score);
    if (factorise(weight, sds)) {
      hessian.solve(step, tolerance(score.dot(score)));
    } else {
      step.add(Double.NaN, score);
    }
    return step;
  }

  private boolean conjugateGradients(Effects score, double[] weight, Effects sds, Effects step) {
    Effects residual = score.copy();
    Effects conditioned = residual.copy();
    hessian.precondition(conditioned);
    double size = residual.dot(conditioned);
    double tolerance = tolerance(size);
    double enough = tolerance * tolerance * size;
    Effects direction = conditioned.copy();
    for (int product = 0; product < hessian.patience(); product++) {
      Effects image = times(direction, weight, sds);
      double length = size / direction.dot(image);
      step.add(length, direction);
      residual.add(-length, image);
      conditioned.set(residual);
      hessian.precondition(conditioned);
      double left = residual.dot(conditioned);
      if (left <= enough) {
        return true;
      }
      conditioned.add(left / size, direction);
      direction.set(conditioned);
      size = left;
    }
    return false;
  }

  /** The error to leave in a step: the nearer the mode, the less. */
  private static double tolerance(double size) {
    return Math.max(TIGHTEST, Math.min(LOOSEST, Math.sqrt(size)));
  }

  /** H v. */
  private Effects times(Effects v, double[] weight, Effects sds) {
    Effects scaled = v.copy();
    scaled.scale(sds);
    design.sum(scaled, perObservation);
    for (int i = 0; i < perObservation.length; i++) {
      perObservation[i] *= weight[i];
    }
    design.collect(perObservation, scaled);
    scaled.scale(sds);
    scaled.add(1, v);
    return scaled;
  }
}

package traytally.numeric;

import java.util.Arrays;

/**
 * The Laplace approximation of the log marginal likelihood of a mixed count model.
 *
 * <p>With effects u = Λ z, z standard normal, η = offset + β0 + X u, and F(z) = Σ ℓ(η) − |z|²/2, it
 * is
 *
 * <pre>L = F(ẑ) − ½ ln |H|,   H = I + Λ Xᵀ W X Λ,   ẑ = argmax F</pre>
 *
 * <p>(Tierney &amp; Kadane, JASA 81, 1986, 82–86, doi:10.1080/01621459.1986.10478240). W is the
 * observed information at ẑ. In units of z nothing breaks down as a standard deviation goes to
 * zero.
 */
final class LaplaceApproximation {
  /** Half the Newton decrement squared that is as good as zero for a log likelihood. */
  private static final double SETTLED = 1e-22;

  /** A step with a decrement this small is quadratically exact: no need to look again. */
  private static final double LAST_STEP = 1e-11;

  /** The most a Newton step may move a log mean; a factor of 50 (from memory). */
  private static final double LONGEST_MOVE = 4;

  /** Armijo's constant (common practice). */
  private static final double ARMIJO = 1e-4;

  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 40;

  private final CountDesign design;
  private final CountLikelihood likelihood;
  private final BlockedHessian hessian;
  private final double[] columnSd; // columns
  private double blockSd;
  private double intercept; // β0 where it is a parameter, else zero

  private final double[] blockZ; // blocks, standard units
  private final double[] columnZ; // columns, standard units
  private final double[] blockStep;
  private final double[] columnStep;
  private final double[] eta; // observations
  private final double[] etaStep;
  private final double[] first; // dℓ/dη
  private final double[] weight; // −d²ℓ/dη²
  private final double[] oldEta;
  private int steps;

  // the mode last found and its standard deviations
  private final double[] blockLast;
  private final double[] columnLast;
  private final double[] columnSdLast;
  private double blockSdLast = -1; // none found yet

  LaplaceApproximation(CountDesign design, CountLikelihood likelihood) {
    this.design = design;
    this.likelihood = likelihood;
    this.hessian = new BlockedHessian(design);
    this.columnSd = new double[design.columns];
    this.blockZ = new double[design.blocks];
    this.columnZ = new double[design.columns];
    this.blockLast = new double[design.blocks];
    this.columnLast = new double[design.columns];
    this.columnSdLast = new double[design.columns];
    this.blockStep = new double[design.blocks];
    this.columnStep = new double[design.columns];
    this.eta = new double[design.observations];
    this.etaStep = new double[design.observations];
    this.first = new double[design.observations];
    this.weight = new double[design.observations];
    this.oldEta = new double[design.observations];
  }

  /**
   * Sets the parameters.
   *
   * @param newIntercept β0; zero where the intercept is a column
   * @param newBlockSd standard deviation of the block effects; zero where there are none
   * @param groupSd one standard deviation per group of columns
   */
  void parameters(double newIntercept, double newBlockSd, double[] groupSd) {
    intercept = newIntercept;
    blockSd = newBlockSd;
    for (int g = 0; g < groupSd.length; g++) {
      Arrays.fill(columnSd, design.groupStart[g], design.groupStart[g + 1], groupSd[g]);
    }
    hessian.standardDeviations(blockSd, columnSd);
  }

  /** Starts the next search for the mode with this effect, on the log rate, in a column. */
  void startFrom(int column, double effect) {
    columnZ[column] = effect / columnSd[column];
    columnLast[column] = columnZ[column];
  }

  /**
   * Finds the mode ẑ and returns L.
   *
   * @return minus infinity where there is no number to give
   */
  double maximise() {
    double value = climbToMode(beginning());
    double marginal = value - hessian.logDeterminant() / 2;
    if (!Double.isFinite(marginal)) {
      // the next search must not begin where this one got lost
      System.arraycopy(blockLast, 0, blockZ, 0, blockZ.length);
      System.arraycopy(columnLast, 0, columnZ, 0, columnZ.length);
      return Double.NEGATIVE_INFINITY;
    }
    System.arraycopy(blockZ, 0, blockLast, 0, blockZ.length);
    System.arraycopy(columnZ, 0, columnLast, 0, columnZ.length);
    blockSdLast = blockSd;
    System.arraycopy(columnSd, 0, columnSdLast, 0, columnSd.length);
    return marginal;
  }

  /**
   * Begins at the last mode, kept in units of the standard deviations or on the log rate, whichever
   * is higher now; returns F there.
   */
  private double beginning() {
    double kept = evaluate();
    if (blockSdLast < 0) {
      return kept;
    }
    for (int b = 0; b < blockZ.length && blockSd > 0; b++) {
      blockZ[b] *= blockSdLast / blockSd;
    }
    for (int k = 0; k < columnZ.length; k++) {
      columnZ[k] *= columnSdLast[k] / columnSd[k];
    }
    double onLogRate = evaluate();
    if (onLogRate >= kept) {
      return onLogRate;
    }
    System.arraycopy(blockLast, 0, blockZ, 0, blockZ.length);
    System.arraycopy(columnLast, 0, columnZ, 0, columnZ.length);
    return evaluate();
  }

  /** Newton's method from a value of F to its highest; NaN where H cannot be factorised. */
  private double climbToMode(double start) {
    double value = start;
    for (int step = 0; step < MOST_STEPS; step++) {
      if (!hessian.assemble(weight)) {
        return Double.NaN;
      }
      double decrement = direction();
      if (decrement < SETTLED) {
        return value;
      }
      value = climb(value, decrement);
      steps++;
      if (decrement < LAST_STEP) {
        return hessian.assemble(weight) ? value : Double.NaN;
      }
    }
    return value;
  }

  private double evaluate() {
    predict();
    return likelihood.evaluate(eta, first, weight) - halfNorm();
  }

  private void predict() {
    design.sum(blockEffects(), columnEffects(), eta);
    for (int i = 0; i < eta.length; i++) {
      eta[i] += intercept + design.logExposures[i];
    }
  }

  private double halfNorm() {
    return (dot(blockZ, blockZ) + dot(columnZ, columnZ)) / 2;
  }

  /** Finds the Newton direction; returns half the squared decrement, the gain it promises. */
  private double direction() {
    design.collect(first, blockStep, columnStep);
    scale(blockStep, columnStep);
    for (int b = 0; b < blockStep.length; b++) {
      blockStep[b] -= blockZ[b];
    }
    for (int k = 0; k < columnStep.length; k++) {
      columnStep[k] -= columnZ[k];
    }
    double[] blockScore = blockStep.clone();
    double[] columnScore = columnStep.clone();
    hessian.solve(blockStep, columnStep);
    return (dot(blockScore, blockStep) + dot(columnScore, columnStep)) / 2;
  }

  /**
   * Goes along the direction, by less than a whole step where F would not grow. F is concave, so
   * this always ends at its one mode.
   */
  private double climb(double value, double decrement) {
    double[] blockMove = blockStep.clone();
    double[] columnMove = columnStep.clone();
    scale(blockMove, columnMove);
    design.sum(blockMove, columnMove, etaStep);
    double longest = 0;
    for (double move : etaStep) {
      longest = Math.max(longest, Math.abs(move));
    }
    System.arraycopy(eta, 0, oldEta, 0, eta.length);
    double fraction = longest > LONGEST_MOVE ? LONGEST_MOVE / longest : 1;
    double done = 0;
    double noise = noise(value);
    for (int halving = 0; halving < MOST_HALVINGS; halving++) {
      move(fraction - done);
      done = fraction;
      for (int i = 0; i < eta.length; i++) {
        eta[i] = oldEta[i] + fraction * etaStep[i];
      }
      double now = likelihood.evaluate(eta, first, weight) - halfNorm();
      if (now >= value + ARMIJO * fraction * decrement - noise) {
        return now;
      }
      fraction /= 2;
    }
    return likelihood.evaluate(eta, first, weight) - halfNorm();
  }

  private void move(double fraction) {
    for (int b = 0; b < blockZ.length; b++) {
      blockZ[b] += fraction * blockStep[b];
    }
    for (int k = 0; k < columnZ.length; k++) {
      columnZ[k] += fraction * columnStep[k];
    }
  }

  /** The rounding error to expect in a value of F or L. */
  double noise(double value) {
    return 1e-13 * (1 + Math.abs(value)) + likelihood.noise();
  }

  private static double dot(double[] left, double[] right) {
    double sum = 0;
    for (int i = 0; i < left.length; i++) {
      sum += left[i] * right[i];
    }
    return sum;
  }

  CountDesign design() {
    return design;
  }

  CountLikelihood likelihood() {
    return likelihood;
  }

  /** The Hessian at the mode, factorised. */
  BlockedHessian hessian() {
    return hessian;
  }

  double[] linearPredictors() {
    return eta;
  }

  double[] weights() {
    return weight;
  }

  double[] scores() {
    return first;
  }

  /** The mode of the block effects in units of their standard deviation. */
  double[] blockMode() {
    return blockZ;
  }

  /** The mode of the columns' effects in units of their standard deviations. */
  double[] columnMode() {
    return columnZ;
  }

  /** The mode of the block effects, on the log rate. */
  double[] blockEffects() {
    double[] effects = blockZ.clone();
    scale(effects, new double[0]);
    return effects;
  }

  /** The mode of the columns' effects, on the log rate. */
  double[] columnEffects() {
    double[] effects = columnZ.clone();
    scale(new double[0], effects);
    return effects;
  }

  /** Newton steps taken so far, over all searches. */
  int steps() {
    return steps;
  }

  /** Turns scores by η into scores by z, x̃ᵀ v, or back: multiplies by Λ. */
  void scale(double[] blocks, double[] columns) {
    for (int b = 0; b < blocks.length; b++) {
      blocks[b] *= blockSd;
    }
    for (int k = 0; k < columns.length; k++) {
      columns[k] *= columnSd[k];
    }
  }
}

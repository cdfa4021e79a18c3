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

  /** The same where the value is only estimated. */
  private static final double LAST_ESTIMATED_STEP = 1e-5;

  /** The most a Newton step may move a log mean; a factor of 50 (from memory). */
  private static final double LONGEST_MOVE = 4;

  /** Armijo's constant (common practice). */
  private static final double ARMIJO = 1e-4;

  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 40;

  private final CountDesign design;
  private final CountLikelihood likelihood;
  private final Hessian hessian;
  private final NewtonDirection newton;
  private final Effects sds; // Λ
  private double intercept; // β0 where it is a parameter, else zero

  private final Effects z; // standard units
  private final double[] eta; // observations
  private final double[] first; // dℓ/dη
  private final double[] weight; // −d²ℓ/dη²
  private int steps;

  // the mode last found and its standard deviations
  private final Effects lastZ;
  private final Effects lastSds;
  private boolean found;

  LaplaceApproximation(CountDesign design, CountLikelihood likelihood, Hessian hessian) {
    this.design = design;
    this.likelihood = likelihood;
    this.hessian = hessian;
    this.newton = new NewtonDirection(design, hessian);
    this.sds = Effects.zero(design);
    this.z = Effects.zero(design);
    this.lastZ = Effects.zero(design);
    this.lastSds = Effects.zero(design);
    this.eta = new double[design.observations];
    this.first = new double[design.observations];
    this.weight = new double[design.observations];
  }

  /**
   * Sets the parameters.
   *
   * @param newIntercept β0; zero where the intercept is a column
   * @param blockSd standard deviation of the block effects; zero where there are none
   * @param groupSd one standard deviation per group of columns
   */
  void parameters(double newIntercept, double blockSd, double[] groupSd) {
    intercept = newIntercept;
    Arrays.fill(sds.blocks, blockSd);
    for (int g = 0; g < groupSd.length; g++) {
      Arrays.fill(sds.columns, design.groupStart[g], design.groupStart[g + 1], groupSd[g]);
    }
  }

  /** Starts the next search for the mode with this effect, on the log rate, in a column. */
  void startFrom(int column, double effect) {
    z.columns[column] = effect / sds.columns[column];
    lastZ.columns[column] = z.columns[column];
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
      z.set(lastZ); // the next search must not begin where this one got lost
      return Double.NEGATIVE_INFINITY;
    }
    lastZ.set(z);
    lastSds.set(sds);
    found = true;
    return marginal;
  }

  /**
   * Begins at the last mode, kept in units of the standard deviations or on the log rate, whichever
   * is higher now; returns F there.
   */
  private double beginning() {
    double kept = evaluate();
    if (!found) {
      return kept;
    }
    z.scale(lastSds);
    for (int b = 0; b < z.blocks.length && design.blocked; b++) {
      z.blocks[b] /= sds.blocks[b];
    }
    for (int k = 0; k < z.columns.length; k++) {
      z.columns[k] /= sds.columns[k];
    }
    double onLogRate = evaluate();
    if (onLogRate >= kept) {
      return onLogRate;
    }
    z.set(lastZ);
    return evaluate();
  }

  /** Newton's method from a value of F to its highest; NaN where H cannot be factorised. */
  private double climbToMode(double start) {
    double value = start;
    double last = hessian.doubt() > 0 ? LAST_ESTIMATED_STEP : LAST_STEP;
    for (int step = 0; step < MOST_STEPS; step++) {
      Effects score = score();
      Effects direction = newton.solve(score, weight, sds);
      double decrement = score.dot(direction) / 2;
      if (decrement >= SETTLED) {
        value = climb(value, direction, decrement);
        steps++;
      }
      if (!(decrement >= last)) {
        break;
      }
    }
    return newton.factorise(weight, sds) ? value : Double.NaN;
  }

  private double evaluate() {
    predict();
    return likelihood.evaluate(eta, first, weight) - z.dot(z) / 2;
  }

  private void predict() {
    design.sum(effects(), eta);
    for (int i = 0; i < eta.length; i++) {
      eta[i] += intercept + design.logExposures[i];
    }
  }

  /** dF/dz. */
  private Effects score() {
    Effects score = Effects.zero(design);
    design.collect(first, score);
    score.scale(sds);
    score.add(-1, z);
    return score;
  }

  /**
   * Goes along a direction, by less than a whole step where F would not grow. F is concave, so this
   * always ends at its one mode.
   */
  private double climb(double value, Effects direction, double decrement) {
    Effects move = direction.copy();
    move.scale(sds);
    double[] etaMove = new double[eta.length];
    design.sum(move, etaMove);
    double longest = LONGEST_MOVE;
    for (double each : etaMove) {
      longest = Math.max(longest, Math.abs(each));
    }
    double fraction = LONGEST_MOVE / longest;
    double noise = noise(value);
    double[] from = eta.clone();
    Effects start = z.copy();
    double now = Double.NaN;
    for (int halving = 0; halving < MOST_HALVINGS; halving++, fraction /= 2) {
      z.set(start);
      z.add(fraction, direction);
      for (int i = 0; i < eta.length; i++) {
        eta[i] = from[i] + fraction * etaMove[i];
      }
      now = likelihood.evaluate(eta, first, weight) - z.dot(z) / 2;
      if (now >= value + ARMIJO * fraction * decrement - noise) {
        return now;
      }
    }
    return now;
  }

  /** The rounding error to expect in a value of F or L. */
  double noise(double value) {
    return 1e-13 * (1 + Math.abs(value)) + likelihood.noise();
  }

  CountDesign design() {
    return design;
  }

  CountLikelihood likelihood() {
    return likelihood;
  }

  /** The Hessian at the mode, factorised. */
  Hessian hessian() {
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

  /** The mode in units of the standard deviations. */
  Effects mode() {
    return z;
  }

  /** Λ, the standard deviation of each effect. */
  Effects sds() {
    return sds;
  }

  /** The mode on the log rate. */
  Effects effects() {
    Effects effects = z.copy();
    effects.scale(sds);
    return effects;
  }

  /** Newton steps taken so far, over all searches. */
  int steps() {
    return steps;
  }
}

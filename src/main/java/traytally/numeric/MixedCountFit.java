package traytally.numeric;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * A fitted mixed count model; immutable. Effects are on the log rate, in nats.
 *
 * <p>Their joint posterior, given the standard deviations and κ, is taken as normal around the mode
 * with the inverse Hessian as covariance. Block effects are marginalised: they have a mode, and
 * nothing else here speaks of the blocks that were seen.
 */
public final class MixedCountFit {
  private final CountDesign design;
  private final double logLikelihood;
  private final double logPosterior;
  private final double intercept;
  private final double dispersion;
  private final int evaluations;
  private final int newtonSteps;
  private final boolean converged;
  private final Map<String, Double> sds = new LinkedHashMap<>();
  private final Map<String, Integer> groupOf = new LinkedHashMap<>();
  private final double[] blockEffects;
  private final double[] effects; // columns
  private final JointEffects joint;

  MixedCountFit(
      CountData data,
      MarginalPosterior posterior,
      QuasiNewton.Minimum minimum,
      double logPosterior) {
    LaplaceApproximation laplace = posterior.laplace();
    this.design = posterior.design();
    this.logLikelihood = posterior.logLikelihood();
    this.logPosterior = logPosterior;
    this.intercept = posterior.intercept(minimum.parameters());
    this.dispersion = posterior.dispersion(minimum.parameters());
    this.evaluations = minimum.evaluations();
    this.newtonSteps = laplace.steps();
    this.converged = minimum.converged();
    double[] deviations = posterior.sds(minimum.parameters());
    data.block().ifPresent(block -> sds.put(block.name(), deviations[0]));
    int skipped = sds.size();
    for (int g = 0; g < design.groupings.size(); g++) {
      sds.put(design.groupings.get(g).name(), deviations[skipped + g]);
      groupOf.put(design.groupings.get(g).name(), g);
    }
    this.blockEffects = design.blocked ? laplace.effects().blocks : new double[0];
    this.effects = laplace.effects().columns;
    this.joint = laplace.hessian().posterior();
  }

  /** The log marginal likelihood by Laplace, without the priors of the parameters. */
  public double logLikelihood() {
    return logLikelihood;
  }

  /** The log marginal density that was maximised; without priors, the log likelihood. */
  public double logPosterior() {
    return logPosterior;
  }

  /** β0, the log rate of one unit of exposure where every effect is zero. */
  public double intercept() {
    return intercept;
  }

  /** κ; empty for Poisson counts. */
  public OptionalDouble dispersion() {
    return Double.isInfinite(dispersion) ? OptionalDouble.empty() : OptionalDouble.of(dispersion);
  }

  /** The standard deviations by grouping, the block's first. */
  public Map<String, Double> sds() {
    return Collections.unmodifiableMap(sds);
  }

  /** The standard deviation of a grouping's effects. */
  public double sd(String grouping) {
    Double sd = sds.get(grouping);
    if (sd == null) {
      throw new IllegalArgumentException("no grouping is called " + grouping);
    }
    return sd;
  }

  /** The mode of the block effects, one per block; empty without a block. */
  public double[] blockEffects() {
    return blockEffects.clone();
  }

  /** The mode of a grouping's effects, one per level. */
  public double[] effects(String grouping) {
    double[] modes = new double[design.levels(group(grouping))];
    System.arraycopy(effects, design.groupStart[group(grouping)], modes, 0, modes.length);
    return modes;
  }

  /** The posterior mean and variance of a weighted sum of effects. */
  public Estimate estimate(Contrast contrast) {
    return new Estimate(mean(contrast), Math.max(0, covariance(contrast, contrast)));
  }

  private double mean(Contrast contrast) {
    double[] sum = {intercept * contrast.interceptWeight()};
    contrast.forEach(
        (grouping, level, weight) -> sum[0] += weight * effects[column(grouping, level)]);
    return sum[0];
  }

  /**
   * The posterior of each of some weighted sums less one that is common to all, such as their mean.
   */
  public List<Estimate> compared(List<Contrast> some, Contrast with) {
    double common = unseenCovariance(with, with);
    double commonMean = mean(with);
    double[] variances = joint.differences(some.stream().map(this::sum).toList(), sum(with));
    List<Estimate> compared = new ArrayList<>(some.size());
    for (int s = 0; s < variances.length; s++) {
      Contrast each = some.get(s);
      double variance =
          variances[s] + unseenCovariance(each, each) - 2 * unseenCovariance(each, with) + common;
      compared.add(new Estimate(mean(each) - commonMean, Math.max(0, variance)));
    }
    return List.copyOf(compared);
  }

  /** The posterior covariance of two weighted sums. */
  public double covariance(Contrast left, Contrast right) {
    return joint.covariance(sum(left), sum(right)) + unseenCovariance(left, right);
  }

  private JointEffects.Sum sum(Contrast contrast) {
    return new JointEffects.Sum(columns(contrast), weights(contrast));
  }

  private double unseenCovariance(Contrast left, Contrast right) {
    double sum = 0;
    for (Map.Entry<Contrast.Unseen, Double> level : left.unseen().entrySet()) {
      double sd = sd(level.getKey().grouping());
      sum += sd * sd * level.getValue() * right.unseen().getOrDefault(level.getKey(), 0.0);
    }
    return sum;
  }

  private int[] columns(Contrast contrast) {
    int own = contrast.size();
    int[] columns = new int[own + (design.interceptColumn ? 1 : 0)];
    int[] next = {0};
    contrast.forEach((grouping, level, weight) -> columns[next[0]++] = column(grouping, level));
    if (design.interceptColumn) {
      columns[own] = design.columns - 1;
    }
    return columns;
  }

  private double[] weights(Contrast contrast) {
    int own = contrast.size();
    double[] weights = new double[own + (design.interceptColumn ? 1 : 0)];
    int[] next = {0};
    contrast.forEach((grouping, level, weight) -> weights[next[0]++] = weight);
    if (design.interceptColumn) {
      weights[own] = contrast.interceptWeight();
    }
    return weights;
  }

  /**
   * Draws from the joint posterior of a list of weighted sums.
   *
   * @param seed the same seed gives the same draws of the same fit
   * @return draws × contrasts
   */
  public double[][] draw(List<Contrast> contrasts, int draws, long seed) {
    // java.util.Random, because its specification fixes nextGaussian for every Java release
    Random random = new Random(seed);
    double[][] drawn = new double[draws][contrasts.size()];
    int[][] columns = new int[contrasts.size()][];
    double[][] weights = new double[contrasts.size()][];
    double[] means = new double[contrasts.size()];
    Map<Contrast.Unseen, Integer> unseen = new LinkedHashMap<>();
    for (int c = 0; c < columns.length; c++) {
      columns[c] = columns(contrasts.get(c));
      weights[c] = weights(contrasts.get(c));
      means[c] = mean(contrasts.get(c));
      contrasts.get(c).unseen().keySet().forEach(u -> unseen.putIfAbsent(u, unseen.size()));
    }
    double[] strange = new double[unseen.size()];
    for (double[] draw : drawn) {
      double[] deviations = joint.draw(random);
      unseen.forEach((u, at) -> strange[at] = sd(u.grouping()) * random.nextGaussian());
      for (int c = 0; c < draw.length; c++) {
        draw[c] = means[c];
        for (int j = 0; j < columns[c].length; j++) {
          draw[c] += weights[c][j] * deviations[columns[c][j]];
        }
        for (Map.Entry<Contrast.Unseen, Double> u : contrasts.get(c).unseen().entrySet()) {
          draw[c] += u.getValue() * strange[unseen.getOrDefault(u.getKey(), 0)];
        }
      }
    }
    return drawn;
  }

  /** Evaluations of the marginal density the search took. */
  public int evaluations() {
    return evaluations;
  }

  /** Newton steps all the searches for the mode of the effects took. */
  public int newtonSteps() {
    return newtonSteps;
  }

  /** Whether no further step promised a gain. */
  public boolean converged() {
    return converged;
  }

  private int group(String grouping) {
    Integer group = groupOf.get(grouping);
    if (group == null) {
      throw new IllegalArgumentException("no grouping with levels is called " + grouping);
    }
    return group;
  }

  private int column(String grouping, int level) {
    int group = group(grouping);
    if (level < 0 || level >= design.levels(group)) {
      throw new IllegalArgumentException(grouping + " has no level " + level);
    }
    return design.groupStart[group] + level;
  }
}

package traytally.numeric;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Function;

/**
 * Minus the log marginal posterior density of a model's parameters on the log scale, by Laplace.
 *
 * <p>The parameters are, in this order and where the model has them: β0, when no prior integrates
 * it; ln σ of the block; ln σ of each grouping; ln κ. With priors it is the density of the
 * logarithms, Jacobian included; without, minus the log likelihood.
 */
final class MarginalPosterior implements QuasiNewton.Objective {
  /** Standard deviations beyond these tell the same as 0 and as anything goes, on a log rate. */
  private static final double LEAST_SD = 1e-4;

  private static final double MOST_SD = 50;

  /** Beyond these κ is the Poisson limit, or counts that are all zero or huge. */
  private static final double LEAST_DISPERSION = 1e-4;

  private static final double MOST_DISPERSION = 1e6;

  /** How far from the crude log rate an intercept is sought: a factor of e³⁰, 10¹³. */
  private static final double FARTHEST_INTERCEPT = 30;

  /** Where a search without priors begins; common practice for effects on the log scale. */
  private static final double USUAL_SD = 0.5;

  /** Where a search without priors begins; the same middle as the usual prior's. */
  private static final double USUAL_DISPERSION = 2;

  /** The gain in log likelihood, promised by the next step, that is too small to be worth it. */
  private static final double SETTLED = 1e-8;

  private static final double SETTLED_OF_DOUBT = 0.4;

  private final CountDesign design;
  private final Optional<Priors> priors;
  private final Optional<NegativeBinomialLikelihood> dispersed;
  private final LaplaceApproximation laplace;
  private final double crudeLogRate;
  private final double[] sdScale; // sds: prior scales, the block's first; infinite for none
  private final int sds;
  private final int firstSd; // index of the first ln σ among the parameters
  private final int size;
  private double[] curvature = new double[0];
  private double logLikelihood;
  private double[] evaluated = {Double.NaN}; // the parameters last evaluated
  private double[] slopes = new double[0]; // the gradient there
  private double value;

  MarginalPosterior(
      CountData data,
      boolean dispersion,
      Optional<Priors> priors,
      Function<CountDesign, Hessian> hessian) {
    this.priors = priors;
    this.design = new CountDesign(data, priors.isPresent());
    this.dispersed =
        dispersion ? Optional.of(new NegativeBinomialLikelihood(design.counts)) : Optional.empty();
    CountLikelihood likelihood =
        dispersed.isPresent() ? dispersed.get() : new PoissonLikelihood(design.counts);
    this.laplace = new LaplaceApproximation(design, likelihood, hessian.apply(design));
    this.crudeLogRate = data.crudeLogRate();
    this.sds = design.groupings.size() + (design.blocked ? 1 : 0);
    this.firstSd = priors.isPresent() ? 0 : 1;
    this.size = firstSd + sds + (dispersion ? 1 : 0);
    this.sdScale = new double[sds];
    for (int j = 0; j < sds; j++) {
      String name = sdName(data, j);
      sdScale[j] = priors.map(prior -> prior.sdScale(name)).orElse(Double.POSITIVE_INFINITY);
    }
    start();
  }

  private String sdName(CountData data, int j) {
    int group = j - (design.blocked ? 1 : 0);
    return group < 0 ? data.block().orElseThrow().name() : design.groupings.get(group).name();
  }

  /** The parameters a search begins with; the effects begin at zero and the crude rate. */
  double[] start() {
    double[] start = new double[size];
    if (firstSd == 1) {
      start[0] = crudeLogRate;
    }
    for (int j = 0; j < sds; j++) {
      start[firstSd + j] = Math.log(priors.isPresent() ? sdScale[j] : USUAL_SD);
    }
    dispersed.ifPresent(
        counts ->
            start[size - 1] =
                priors.map(Priors::logDispersionMean).orElse(Math.log(USUAL_DISPERSION)));
    clamp(start);
    unpack(start);
    if (design.interceptColumn) {
      laplace.startFrom(design.columns - 1, crudeLogRate);
    }
    return start;
  }

  private void clamp(double[] parameters) {
    double[] lowest = lowest();
    double[] highest = highest();
    for (int j = 0; j < size; j++) {
      parameters[j] = Math.max(lowest[j], Math.min(highest[j], parameters[j]));
    }
  }

  double[] lowest() {
    return bounds(-FARTHEST_INTERCEPT, LEAST_SD, LEAST_DISPERSION);
  }

  double[] highest() {
    return bounds(FARTHEST_INTERCEPT, MOST_SD, MOST_DISPERSION);
  }

  private double[] bounds(double intercept, double sd, double dispersion) {
    double[] bounds = new double[size];
    Arrays.fill(bounds, Math.log(sd));
    if (firstSd == 1) {
      bounds[0] = crudeLogRate + intercept;
    }
    dispersed.ifPresent(counts -> bounds[size - 1] = Math.log(dispersion));
    return bounds;
  }

  private void unpack(double[] parameters) {
    double[] groupSd = new double[design.width];
    int block = design.blocked ? 1 : 0;
    for (int g = 0; g < design.groupings.size(); g++) {
      groupSd[g] = Math.exp(parameters[firstSd + block + g]);
    }
    priors.ifPresent(prior -> groupSd[design.width - 1] = prior.interceptSd());
    double blockSd = design.blocked ? Math.exp(parameters[firstSd]) : 0;
    laplace.parameters(firstSd == 1 ? parameters[0] : 0, blockSd, groupSd);
    dispersed.ifPresent(counts -> counts.dispersion(Math.exp(parameters[size - 1])));
  }

  @Override
  public double evaluate(double[] parameters, double[] gradient) {
    // A search that ends, or begins anew, asks again where it stands.
    if (!Arrays.equals(parameters, evaluated)) {
      evaluated = parameters.clone();
      slopes = new double[size];
      value = evaluatedAnew(parameters, slopes);
    }
    System.arraycopy(slopes, 0, gradient, 0, size);
    return value;
  }

  private double evaluatedAnew(double[] parameters, double[] gradient) {
    unpack(parameters);
    logLikelihood = laplace.maximise();
    if (Double.isInfinite(logLikelihood)) {
      return Double.POSITIVE_INFINITY;
    }
    LaplaceGradient slope = new LaplaceGradient(laplace);
    curvature = new double[size];
    double density = -logLikelihood;
    if (firstSd == 1) {
      gradient[0] = -slope.byIntercept();
      curvature[0] = interceptCurvature(parameters);
    }
    for (int j = 0; j < sds; j++) {
      int at = firstSd + j;
      int group = j - (design.blocked ? 1 : 0);
      gradient[at] = -(group < 0 ? slope.byBlockSd() : slope.byGroupSd(group));
      double bend = group < 0 ? slope.blockSdCurvature() : slope.groupSdCurvature(group);
      // Of n effects seen exactly, with R times the variance supposed, the slope is (R - 1) n and
      // the bend 2 n. The way to go is ln R / 2, which (R - 1) / (R + 1) is nearer than
      // (R - 1) / 2.
      curvature[at] = bend + Math.max(-bend / 2, -gradient[at]);
      density += addSdPrior(j, parameters[at], gradient);
    }
    if (dispersed.isPresent()) {
      gradient[size - 1] = -slope.byLogDispersion(dispersed.get());
      curvature[size - 1] = DISPERSION_BEND * design.observations;
      density += addDispersionPrior(parameters[size - 1], gradient);
    }
    for (int j = 0; j < size; j++) {
      curvature[j] = Math.max(curvature[j], LEAST_CURVATURE);
    }
    return density;
  }

  /** How sharply the log likelihood bends in ln κ, for each count; about that of stint logs. */
  private static final double DISPERSION_BEND = 0.05;

  /** Keeps a first step finite where the counts say nothing of a parameter. */
  private static final double LEAST_CURVATURE = 0.1;

  /** Minus the log density of ln σ under the half-normal prior of σ, Jacobian included. */
  private double addSdPrior(int sd, double logSd, double[] gradient) {
    if (priors.isEmpty()) {
      return 0;
    }
    double ratio = Math.exp(2 * logSd) / (sdScale[sd] * sdScale[sd]);
    gradient[firstSd + sd] += ratio - 1;
    curvature[firstSd + sd] += 2 * ratio;
    return ratio / 2 - logSd + Math.log(sdScale[sd]) - Math.log(2 / Math.PI) / 2;
  }

  /** Minus the log density of ln κ. */
  private double addDispersionPrior(double logDispersion, double[] gradient) {
    if (priors.isEmpty()) {
      return 0;
    }
    double sd = priors.get().logDispersionSd();
    double away = (logDispersion - priors.get().logDispersionMean()) / sd;
    gradient[size - 1] += away / sd;
    curvature[size - 1] += 1 / (sd * sd);
    return away * away / 2 + Math.log(sd) + Math.log(2 * Math.PI) / 2;
  }

  /** The information of the mean of all counts, less what each grouping's own mean may be. */
  private double interceptCurvature(double[] parameters) {
    double information = 0;
    for (double weight : laplace.weights()) {
      information += weight;
    }
    double variance = 1 / Math.max(information, Double.MIN_NORMAL);
    for (int j = 0; j < sds; j++) {
      int group = j - (design.blocked ? 1 : 0);
      int levels = group < 0 ? design.blocks : design.levels(group);
      variance += Math.exp(2 * parameters[firstSd + j]) / levels;
    }
    return 1 / variance;
  }

  @Override
  public double[] curvatures() {
    return curvature.clone();
  }

  @Override
  public double noise(double value) {
    return laplace.noise(value) + laplace.hessian().doubt();
  }

  @Override
  public boolean estimated() {
    return laplace.hessian().doubt() > 0;
  }

  /** With probes there is nothing to gain from settling closer than they tell. */
  @Override
  public double settled() {
    return Math.max(SETTLED, laplace.hessian().doubt() * SETTLED_OF_DOUBT);
  }

  /** The log marginal likelihood, priors left out, at the parameters last evaluated. */
  double logLikelihood() {
    return logLikelihood;
  }

  LaplaceApproximation laplace() {
    return laplace;
  }

  CountDesign design() {
    return design;
  }

  /** β0 at the given parameters and the mode last found. */
  double intercept(double[] parameters) {
    return firstSd == 1 ? parameters[0] : laplace.effects().columns[design.columns - 1];
  }

  /** The standard deviations at the given parameters, the block's first. */
  double[] sds(double[] parameters) {
    double[] deviations = new double[sds];
    for (int j = 0; j < sds; j++) {
      deviations[j] = Math.exp(parameters[firstSd + j]);
    }
    return deviations;
  }

  /** κ at the given parameters; infinite for Poisson counts. */
  double dispersion(double[] parameters) {
    return dispersed.isPresent() ? Math.exp(parameters[size - 1]) : Double.POSITIVE_INFINITY;
  }
}

package traytally.numeric;

import java.util.Optional;
import java.util.function.Function;

/**
 * A mixed-effects model of counts: ln μ = ln exposure + β0 + the effects of an observation's
 * levels.
 *
 * <p>The effects of each grouping are independent and normal with one standard deviation. They are
 * integrated out by Laplace's approximation; the standard deviations and κ are set where the
 * marginal density of their logarithms is highest. With priors, the intercept is one more normal
 * effect; without, it is maximised too, and the fit is that of R's glmmTMB (Brooks et al., R
 * Journal 9(2), 2017, 378–400, doi:10.32614/RJ-2017-066).
 */
public final class MixedCountModel {
  /**
   * Of so many observations a search costs little, and ends near where the search of all of them
   * ends. Data of several times as many are searched from there, which saves most of the steps.
   */
  private static final int PART = 8000;

  private static final int FEWEST_PARTS = 4;

  private final boolean dispersion;
  private final Optional<Priors> priors;

  private MixedCountModel(boolean dispersion, Optional<Priors> priors) {
    this.dispersion = dispersion;
    this.priors = priors;
  }

  /** Counts with variance μ + μ²/κ, by maximum likelihood. */
  public static MixedCountModel negativeBinomial() {
    return new MixedCountModel(true, Optional.empty());
  }

  /** Counts with variance μ, by maximum likelihood. */
  public static MixedCountModel poisson() {
    return new MixedCountModel(false, Optional.empty());
  }

  /** Returns this model with priors; they must name every grouping of the data. */
  public MixedCountModel withPriors(Priors newPriors) {
    return new MixedCountModel(dispersion, Optional.of(newPriors));
  }

  /** Fits the model. */
  public MixedCountFit fit(CountData data) {
    return fit(data, Hessian::of);
  }

  /** Fits the model by this way of handling the Hessian. */
  MixedCountFit fit(CountData data, Function<CountDesign, Hessian> hessian) {
    MarginalPosterior posterior = new MarginalPosterior(data, dispersion, priors, hessian);
    double[] start = posterior.start();
    int parts = data.observations() / PART;
    if (parts >= FEWEST_PARTS) {
      CountData part = data.thinned(parts);
      if (part.observations() > 0) {
        start = search(new MarginalPosterior(part, dispersion, priors, hessian)).parameters();
      }
    }
    QuasiNewton.Minimum minimum = search(posterior, start);
    double value =
        posterior.evaluate(minimum.parameters(), new double[minimum.parameters().length]);
    return new MixedCountFit(data, posterior, minimum, -value);
  }

  private static QuasiNewton.Minimum search(MarginalPosterior posterior) {
    return search(posterior, posterior.start());
  }

  private static QuasiNewton.Minimum search(MarginalPosterior posterior, double[] start) {
    return QuasiNewton.minimise(posterior, start, posterior.lowest(), posterior.highest());
  }
}

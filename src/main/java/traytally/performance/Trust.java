package traytally.performance;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalInt;
import traytally.numeric.Gaussian;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * How far the log speaks for a colour, a plastic or a body.
 *
 * @param advantage θ, the log of its rate over the mean of all that was fished the same day
 */
public record Trust(Subject subject, Evidence evidence, Gaussian advantage, Standing standing) {
  /** Both ends of a 90 % interval. */
  private static final double LOW_END = 0.05;

  private static final double HIGH_END = 0.95;

  /** Most trusted first. */
  static final Comparator<Trust> ORDER =
      Comparator.comparingDouble(Trust::trust)
          .thenComparingDouble(Trust::rateRatio)
          .reversed()
          .thenComparing(t -> t.colour().orElse(Name.BLANK))
          .thenComparing(t -> t.body().orElse(Name.BLANK))
          .thenComparingInt(t -> t.lengthMm().orElse(0))
          .thenComparing(t -> t.plastic().map(Plastic::maker).orElse(Name.BLANK));

  /** The plastic, where one was judged. */
  public Optional<Plastic> plastic() {
    return subject.plastic();
  }

  /** The colour; empty where pooled over. */
  public Optional<Name> colour() {
    return subject.colour();
  }

  /** The body style; empty where pooled over. */
  public Optional<Name> body() {
    return subject.body();
  }

  /** Its length; empty where pooled over or not known. */
  public OptionalInt lengthMm() {
    return plastic().filter(Plastic::hasLength).stream().mapToInt(Plastic::lengthMm).findFirst();
  }

  /** Mean of θ, the log of the rate ratio. */
  public double logRatioMean() {
    return advantage.mean();
  }

  /** Standard deviation of θ: what the log leaves open. */
  public double logRatioSd() {
    return advantage.sd();
  }

  /** The probability that it out-fishes the mean. */
  public double trust() {
    return advantage.above(0);
  }

  /** How many times the mean's fish it has in the same time. */
  public double rateRatio() {
    return Math.exp(advantage.mean());
  }

  /** The lower end of the rate ratio's 90 % interval. */
  public double low() {
    return Math.exp(advantage.quantile(LOW_END));
  }

  /** The upper end of the rate ratio's 90 % interval. */
  public double high() {
    return Math.exp(advantage.quantile(HIGH_END));
  }
}

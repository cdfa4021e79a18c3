package traytally.restock;

import java.util.List;
import traytally.numeric.NegativeBinomial;

/**
 * The pieces of one plastic that the horizon's trips take, if its own tray never empties.
 *
 * <p>Given the loss rate and the share, trips are independent, each negative binomial about hours ×
 * share × rate × the day's luck. What is not known of rate and share is common to all of them. With
 * m_t a trip's mean, q_t the spread of its share, σ² the day's variance, κ the dispersion and A =
 * exp(v) (1 + r) − 1 the doubt about rate and share, the law of total variance gives
 *
 * <pre>Var = Σ m_t + Σ m_t² (1 + A) ((1 + 1/κ) q_t exp(σ²) − 1) + A (Σ m_t)²</pre>
 *
 * @param trips one for each trip of the horizon
 * @param dispersion κ of the losses in one turn
 * @param rateVariance v, variance of the log rate that days do not average out
 * @param shareVariance r, variance of the share's weight over its square
 */
public record Use(
    List<TripUse> trips, double dispersion, double rateVariance, double shareVariance) {
  private static final double BOUND = 0.9;

  public Use {
    trips = List.copyOf(trips);
  }

  /** Expected pieces. */
  public double mean() {
    return trips.stream().mapToDouble(TripUse::mean).sum();
  }

  /** Rod-hours it is tied on, on average. */
  double hours() {
    return trips.stream().mapToDouble(trip -> trip.rodHours() * trip.share()).sum();
  }

  /** Their variance. */
  public double variance() {
    double doubt = Math.exp(rateVariance) * (1 + shareVariance) - 1;
    double mean = 0;
    double variance = 0;
    for (TripUse trip : trips) {
      double m = trip.mean();
      double spread =
          (1 + 1 / dispersion) * trip.shareSpread() * Math.exp(trip.loss().dayVariance()) - 1;
      mean += m;
      variance += m + m * m * (1 + doubt) * spread;
    }
    return variance + doubt * mean * mean;
  }

  /** Their distribution: negative binomial with these moments. */
  public NegativeBinomial distribution() {
    return NegativeBinomial.ofMoments(mean(), variance());
  }

  /** The count that nine times in ten is not exceeded. */
  public int ninetyPercentBound() {
    return distribution().quantile(BOUND);
  }
}

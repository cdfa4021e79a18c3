package traytally.restock;

import java.util.List;

/**
 * The forecasts that {@link Audit} compares with: a plastic's use on the coming trips from its use
 * on each past trip, and nothing else. Their quantiles are those of a Poisson count.
 */
final class Croston {
  /** Weight of the newest size and interval (Croston suggests 0.1 to 0.2). */
  private static final double ALPHA = 0.1;

  private Croston() {}

  /**
   * Croston's method (Croston, Operational Research Quarterly 23(3), 1972, 289–303): the size of a
   * demand and the interval between two are smoothed by themselves.
   *
   * @param uses pieces by trip, oldest first
   * @return pieces a trip
   */
  static double perTrip(List<Integer> uses) {
    double size = 0;
    double interval = 0;
    int since = 0;
    for (int use : uses) {
      since++;
      if (use > 0) {
        size = size == 0 ? use : size + ALPHA * (use - size);
        interval = interval == 0 ? since : interval + ALPHA * (since - interval);
        since = 0;
      }
    }
    return size == 0 ? 0 : size / interval;
  }
}

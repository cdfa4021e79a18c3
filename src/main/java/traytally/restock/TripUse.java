package traytally.restock;

import java.time.LocalDate;
import traytally.plastic.Name;

/**
 * What one coming trip takes of one plastic.
 *
 * @param rodHours hours of all rods on the trip
 * @param share the part of them the plastic is tied on, on average
 * @param turns independent choices the trip is worth, so how far the share strays
 * @param loss the plastic's rate on this water
 */
public record TripUse(
    LocalDate date, Name water, double rodHours, double share, double turns, LossRate loss) {

  /** Pieces the trip takes on average. */
  public double mean() {
    return rodHours * share * loss.perHour();
  }

  /**
   * E S² / (E S)² of the share S, the number of {@code turns} that fall to the plastic being
   * binomial.
   */
  double shareSpread() {
    return 1 + (1 - share) / (share * turns);
  }
}

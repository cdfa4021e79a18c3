package traytally.restock;

import java.time.LocalDate;
import java.util.List;
import traytally.trip.PlannedTrip;

/**
 * The trips that what is bought now must last for.
 *
 * @param from today
 * @param to when what is ordered at the next chance to order would be in the tray
 * @param trips planned, or at the angler's usual pace
 * @param planned how many of them the angler planned; the others are at the usual pace
 * @param words how it was settled, as the angler would say it
 */
public record Horizon(
    LocalDate from, LocalDate to, List<PlannedTrip> trips, int planned, String words) {
  public Horizon {
    trips = List.copyOf(trips);
    if (to.isBefore(from)) {
      throw new IllegalArgumentException("a horizon ends after it begins: " + from + ", " + to);
    }
  }

  /** Hours of all rods on all trips. */
  public double rodHours() {
    return trips.stream().mapToDouble(PlannedTrip::rodHours).sum();
  }
}

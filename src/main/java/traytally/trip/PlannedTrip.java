package traytally.trip;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import traytally.plastic.Name;

/**
 * A trip to come.
 *
 * @param water where; blank if not said
 * @param species the fish sought; blank if not said
 * @param hours time each rod will fish, hours, above 0
 * @param rods rods fishing, at least 1
 */
public record PlannedTrip(
    LocalDate date,
    Name water,
    Name species,
    Optional<Clarity> clarity,
    double hours,
    int rods,
    String note)
    implements Comparable<PlannedTrip> {
  private static final Comparator<PlannedTrip> ORDER =
      Comparator.comparing(PlannedTrip::date)
          .thenComparing(PlannedTrip::water)
          .thenComparing(PlannedTrip::species);

  public PlannedTrip {
    if (!(hours > 0 && hours <= 240)) {
      throw new IllegalArgumentException("hours must be above 0 and at most 240: " + hours);
    }
    if (rods < 1) {
      throw new IllegalArgumentException("at least one rod fishes: " + rods);
    }
  }

  /** Hours of all rods together. */
  public double rodHours() {
    return hours * rods;
  }

  @Override
  public int compareTo(PlannedTrip other) {
    return ORDER.compare(this, other);
  }
}

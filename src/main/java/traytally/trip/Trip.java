package traytally.trip;

import java.time.LocalDate;
import java.util.Comparator;
import traytally.plastic.Name;

/**
 * A day on one water.
 *
 * @param water where; blank if the log does not say
 */
public record Trip(LocalDate date, Name water) implements Comparable<Trip> {
  private static final Comparator<Trip> ORDER =
      Comparator.comparing(Trip::date).thenComparing(Trip::water);

  @Override
  public int compareTo(Trip other) {
    return ORDER.compare(this, other);
  }
}

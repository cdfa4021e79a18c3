package traytally.restock;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.trip.PlannedTrip;

/**
 * How often and how long the angler usually fishes.
 *
 * @param gapDays days from one trip to the next
 * @param rodHours hours of all rods on a trip
 */
record Pace(double gapDays, double rodHours) {
  /** Days between trips where one trip is all there is: a month, an assumption of this tool. */
  private static final double SINGLE_TRIP_GAP = 30;

  private static final double LONGEST_TRIP = 240; // as PlannedTrip allows

  /** The pace of the year before {@code asOf}, or of the whole log where that year had no trip. */
  static Optional<Pace> of(List<Turn> turns, LocalDate asOf) {
    TreeMap<LocalDate, Double> hoursByDay = new TreeMap<>();
    turns.forEach(turn -> hoursByDay.merge(turn.trip().date(), turn.rodHours(), Double::sum));
    hoursByDay.values().removeIf(hours -> hours <= 0);
    if (hoursByDay.isEmpty()) {
      return Optional.empty();
    }
    Map<LocalDate, Double> lastYear = hoursByDay.tailMap(asOf.minusYears(1), false);
    TreeMap<LocalDate, Double> days = lastYear.isEmpty() ? hoursByDay : new TreeMap<>(lastYear);
    return Optional.of(new Pace(gap(days, asOf), median(days)));
  }

  /** The mean gap, or longer if the angler has since stayed at home. */
  private static double gap(TreeMap<LocalDate, Double> days, LocalDate asOf) {
    int trips = days.size();
    double between = ChronoUnit.DAYS.between(days.firstKey(), days.lastKey());
    double sinceFirst = ChronoUnit.DAYS.between(days.firstKey(), asOf);
    double gap = trips == 1 ? SINGLE_TRIP_GAP : between / (trips - 1);
    return Math.max(gap, sinceFirst / trips);
  }

  private static double median(Map<LocalDate, Double> days) {
    double[] hours = days.values().stream().mapToDouble(Double::doubleValue).sorted().toArray();
    int middle = hours.length / 2;
    double median = hours.length % 2 == 1 ? hours[middle] : (hours[middle - 1] + hours[middle]) / 2;
    return Math.min(median, LONGEST_TRIP);
  }

  /** Trips at this pace after {@code from}, up to and including {@code to}; at least one. */
  List<PlannedTrip> tripsBetween(LocalDate from, LocalDate to) {
    List<PlannedTrip> within = tripsWithin(from, to);
    return within.isEmpty() ? List.of(on(to)) : within;
  }

  /** Trips at this pace after {@code from}, up to and including {@code to}. */
  List<PlannedTrip> tripsWithin(LocalDate from, LocalDate to) {
    int count = (int) (ChronoUnit.DAYS.between(from, to) / gapDays);
    return trips(from, count).stream()
        .map(trip -> trip.date().isAfter(to) ? on(to) : trip)
        .toList();
  }

  /** The next {@code count} trips at this pace after {@code from}. */
  List<PlannedTrip> trips(LocalDate from, int count) {
    List<PlannedTrip> trips = new ArrayList<>(count);
    for (int i = 1; i <= count; i++) {
      trips.add(on(from.plusDays(Math.max(1, Math.round(i * gapDays)))));
    }
    return trips;
  }

  private PlannedTrip on(LocalDate date) {
    return new PlannedTrip(date, Name.BLANK, Name.BLANK, Optional.empty(), rodHours, 1, "");
  }
}

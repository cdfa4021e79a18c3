package traytally.performance;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import traytally.plastic.Name;
import traytally.trip.Trip;

/**
 * How a colour did on one trip beside all else that was fished on it.
 *
 * @param minutes rod-minutes of the colour
 * @param counted its fish, by the measure
 * @param othersMinutes rod-minutes of all other colours
 * @param othersCounted their fish
 */
public record DayRecord(
    Trip trip, double minutes, long counted, double othersMinutes, long othersCounted) {

  /** The trips on which a colour was fished, in order. */
  static List<DayRecord> of(List<Turn> turns, Name colour, Measure measure) {
    Map<Trip, double[]> sums = new TreeMap<>(); // its minutes and fish, the others'
    for (Turn turn : turns) {
      int at = turn.plastic().colour().equals(colour) ? 0 : 2;
      double[] sum = sums.computeIfAbsent(turn.trip(), trip -> new double[4]);
      sum[at] += turn.rodMinutes();
      sum[at + 1] += measure.of(turn.fish());
    }
    List<DayRecord> days = new ArrayList<>();
    sums.forEach(
        (trip, sum) -> {
          if (sum[0] > 0) {
            days.add(new DayRecord(trip, sum[0], (long) sum[1], sum[2], (long) sum[3]));
          }
        });
    return List.copyOf(days);
  }

  /** Its fish a rod-hour. */
  public double perHour() {
    return counted / (minutes / 60);
  }

  /** Whether anything else was fished. */
  public boolean hasOthers() {
    return othersMinutes > 0;
  }

  /** The others' fish a rod-hour; 0 without others. */
  public double othersPerHour() {
    return hasOthers() ? othersCounted / (othersMinutes / 60) : 0;
  }

  /**
   * Its fish over what it would have had at the others' rates, over the trips that had others; 0
   * where they had nothing.
   */
  public static double sameDayRatio(List<DayRecord> days) {
    double own = 0;
    double expected = 0;
    for (DayRecord day : days) {
      if (day.hasOthers()) {
        own += day.counted();
        expected += day.minutes() / 60 * day.othersPerHour();
      }
    }
    return expected > 0 ? own / expected : 0;
  }
}

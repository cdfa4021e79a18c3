package traytally.trip;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The minutes each stint of a log fished, as noted or as assumed.
 *
 * @param minutes one rod's minutes
 * @param assumed whether they were worked out from casts or from other stints
 */
public record FishingTime(double minutes, boolean assumed) {
  /** A stint's length where a whole log states none: half an hour, an assumption of this tool. */
  private static final double UNKNOWN_LOG_MINUTES = 30;

  /**
   * One value per stint, in the stints' order. A stint with casts and no minutes is converted at
   * {@code minutesPerCast}; one with neither takes the median length of its trip's other stints, or
   * else of the log's.
   */
  public static List<FishingTime> of(List<Stint> log, double minutesPerCast) {
    Map<Trip, List<Double>> byTrip = new HashMap<>();
    List<Double> all = new ArrayList<>();
    for (Stint stint : log) {
      known(stint, minutesPerCast)
          .ifPresent(
              minutes -> {
                byTrip.computeIfAbsent(stint.trip(), t -> new ArrayList<>()).add(minutes);
                all.add(minutes);
              });
    }
    double usual = all.isEmpty() ? UNKNOWN_LOG_MINUTES : median(all);
    List<FishingTime> times = new ArrayList<>(log.size());
    for (Stint stint : log) {
      OptionalDouble known = known(stint, minutesPerCast);
      if (known.isPresent()) {
        times.add(new FishingTime(known.getAsDouble(), stint.minutes().isEmpty()));
      } else {
        List<Double> sameTrip = byTrip.getOrDefault(stint.trip(), List.of());
        times.add(new FishingTime(sameTrip.isEmpty() ? usual : median(sameTrip), true));
      }
    }
    return List.copyOf(times);
  }

  private static OptionalDouble known(Stint stint, double minutesPerCast) {
    if (stint.minutes().isPresent()) {
      return stint.minutes();
    }
    return stint.casts().isPresent()
        ? OptionalDouble.of(stint.casts().getAsInt() * minutesPerCast)
        : OptionalDouble.empty();
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}

package traytally.performance;

import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import traytally.trip.PlannedTrip;

/**
 * How conditions are weighted where trust is pooled over them.
 *
 * @param weights of each side's levels, summing to one
 */
record Mix(Map<Context, SortedMap<String, Double>> weights) {

  /** The conditions of a log's turns, by their hours. */
  static Mix of(Collection<Turn> turns, boolean southern) {
    Map<Context, SortedMap<String, Double>> all = new EnumMap<>(Context.class);
    for (Context context : Context.values()) {
      SortedMap<String, Double> hours = new TreeMap<>();
      turns.forEach(turn -> hours.merge(context.of(turn, southern), turn.rodHours(), Double::sum));
      all.put(context, shares(hours));
    }
    return new Mix(all);
  }

  /** These conditions, where {@code asked} does not say otherwise. */
  Mix with(Conditions asked, boolean southern) {
    Map<Context, SortedMap<String, Double>> all = new EnumMap<>(Context.class);
    weights.forEach(
        (context, usual) -> all.put(context, toldOr(asked.level(context, southern), usual)));
    return new Mix(all);
  }

  private static SortedMap<String, Double> toldOr(
      Optional<String> told, SortedMap<String, Double> usual) {
    return told.<SortedMap<String, Double>>map(level -> new TreeMap<>(Map.of(level, 1.0)))
        .orElse(usual);
  }

  /** The conditions of planned trips, by their hours; what a plan leaves open is as here. */
  Mix of(List<PlannedTrip> plan, boolean southern) {
    if (plan.isEmpty()) {
      return this;
    }
    Map<Context, SortedMap<String, Double>> all = new EnumMap<>(Context.class);
    weights.forEach(
        (context, usual) -> {
          SortedMap<String, Double> hours = new TreeMap<>();
          for (PlannedTrip trip : plan) {
            toldOr(Conditions.of(trip).level(context, southern), usual)
                .forEach(
                    (level, share) -> hours.merge(level, share * trip.rodHours(), Double::sum));
          }
          all.put(context, shares(hours));
        });
    return new Mix(all);
  }

  private static SortedMap<String, Double> shares(SortedMap<String, Double> hours) {
    double sum = hours.values().stream().mapToDouble(Double::doubleValue).sum();
    hours.replaceAll((level, own) -> own / sum);
    return hours;
  }

  /** The weights of one side's levels. */
  SortedMap<String, Double> of(Context context) {
    return weights.getOrDefault(context, new TreeMap<>());
  }
}

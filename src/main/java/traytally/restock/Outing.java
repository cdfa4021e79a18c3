package traytally.restock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * A past trip as a choice among plastics.
 *
 * @param species the fish most of its stints sought; blank if none says
 * @param clarity the clarity most of its stints note, if any does
 * @param share of its time that each plastic was tied on, summing to one
 * @param until the part of its time that was over when each plastic was taken off
 */
record Outing(
    Trip trip,
    Name species,
    Optional<Clarity> clarity,
    SortedMap<Plastic, Double> share,
    Map<Plastic, Double> until) {
  // How much a trip under other conditions says of this one (method, section 2).
  private static final double OTHER_SPECIES = 0.3;
  private static final double OTHER_WATER = 0.6;
  private static final double OTHER_CLARITY = 0.8;

  /** The outings of a log that had time to them, in order. */
  static List<Outing> of(List<Turn> turns, List<Stint> log) {
    Map<Trip, Map<Plastic, Integer>> places = new HashMap<>();
    SortedMap<Trip, SortedMap<Plastic, Double>> hours = new TreeMap<>();
    for (Turn turn : turns) {
      if (turn.rodMinutes() > 0) {
        hours
            .computeIfAbsent(turn.trip(), t -> new TreeMap<>())
            .merge(turn.plastic(), turn.rodHours(), Double::sum);
        places.computeIfAbsent(turn.trip(), t -> new HashMap<>()).put(turn.plastic(), turn.place());
      }
    }
    Map<Trip, Map<Name, Integer>> species = new HashMap<>();
    Map<Trip, Map<Clarity, Integer>> clarity = new HashMap<>();
    for (Stint stint : log) {
      if (!stint.species().isBlank()) {
        count(species, stint.trip(), stint.species());
      }
      stint.clarity().ifPresent(seen -> count(clarity, stint.trip(), seen));
    }
    List<Outing> outings = new ArrayList<>(hours.size());
    hours.forEach(
        (trip, byPlastic) -> {
          double all = byPlastic.values().stream().mapToDouble(Double::doubleValue).sum();
          byPlastic.replaceAll((plastic, own) -> own / all);
          outings.add(
              new Outing(
                  trip,
                  most(species, trip).orElse(Name.BLANK),
                  most(clarity, trip),
                  byPlastic,
                  until(byPlastic, places.getOrDefault(trip, Map.of()))));
        });
    return List.copyOf(outings);
  }

  private static Map<Plastic, Double> until(
      SortedMap<Plastic, Double> share, Map<Plastic, Integer> places) {
    List<Plastic> order = new ArrayList<>(share.keySet());
    order.sort(Comparator.comparing(plastic -> places.getOrDefault(plastic, 0)));
    Map<Plastic, Double> until = new HashMap<>();
    double over = 0;
    for (Plastic plastic : order) {
      over += share.getOrDefault(plastic, 0.0);
      until.put(plastic, over);
    }
    return until;
  }

  /**
   * The outing as it would have been, had the trays that emptied not ended a turn: each such turn
   * goes on for what was to be expected of it within the day, and the day is so much longer.
   *
   * <p>A turn that ends with the last piece is cut short while the plastic is on; what was on
   * before it was not. Counted as they are, such trips say too little of what empties.
   *
   * @param spell mean length of a turn, as a part of a trip
   * @param emptied chance that the trip took the last piece of a plastic
   */
  Outing goneOn(double spell, ToDoubleFunction<Plastic> emptied) {
    List<Plastic> order = new ArrayList<>(share.keySet());
    order.sort(Comparator.comparing(plastic -> until.getOrDefault(plastic, 1.0)));
    SortedMap<Plastic, Double> longer = new TreeMap<>(share);
    Map<Plastic, Double> later = new HashMap<>();
    double more = 0;
    for (Plastic plastic : order) {
      double over = until.getOrDefault(plastic, 1.0);
      double rest = Math.max(0, 1 - over);
      double own = Double.isInfinite(spell) ? rest : spell * -Math.expm1(-rest / spell);
      own *= emptied.applyAsDouble(plastic);
      more += own;
      longer.merge(plastic, own, Double::sum);
      later.put(plastic, over + more);
    }
    double day = 1 + more;
    longer.replaceAll((plastic, own) -> own / day);
    later.replaceAll((plastic, over) -> over / day);
    return new Outing(trip, species, clarity, longer, later);
  }

  private static <T> void count(Map<Trip, Map<T, Integer>> counts, Trip trip, T value) {
    counts.computeIfAbsent(trip, t -> new LinkedHashMap<>()).merge(value, 1, Integer::sum);
  }

  private static <T> Optional<T> most(Map<Trip, Map<T, Integer>> counts, Trip trip) {
    return counts.getOrDefault(trip, Map.of()).entrySet().stream()
        .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
        .map(Map.Entry::getKey);
  }

  /** How like {@code plan} it was, from 0 to 1; what either leaves unsaid counts as alike. */
  double likeness(PlannedTrip plan) {
    double likeness = 1;
    if (differ(species, plan.species())) {
      likeness *= OTHER_SPECIES;
    }
    if (differ(trip.water(), plan.water())) {
      likeness *= OTHER_WATER;
    }
    if (clarity.isPresent() && plan.clarity().isPresent() && !clarity.equals(plan.clarity())) {
      likeness *= OTHER_CLARITY;
    }
    return likeness;
  }

  private static boolean differ(Name a, Name b) {
    return !a.isBlank() && !b.isBlank() && !a.equals(b);
  }
}

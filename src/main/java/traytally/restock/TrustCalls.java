package traytally.restock;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import traytally.performance.Performance;
import traytally.performance.Standing;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.trip.Trip;

/** The days on which colours were first called trusted, and how they did from then on. */
final class TrustCalls {
  private final Map<Name, LocalDate> first = new TreeMap<>();

  /** Takes down the colours trusted at the end of {@code day}; days come in order. */
  void at(LocalDate day, Performance then, Collection<Name> colours) {
    for (Name colour : colours) {
      if (then.colour(colour).standing() == Standing.TRUSTED) {
        first.putIfAbsent(colour, day);
      }
    }
  }

  /**
   * Compares each, on every later trip, with what was fished beside it.
   *
   * @param now what the whole log says
   */
  Audit.Calls held(List<Turn> turns, Performance now) {
    int compared = 0;
    int held = 0;
    int trusted = 0;
    double up = 0;
    double down = 0;
    for (Map.Entry<Name, LocalDate> call : first.entrySet()) {
      double[] ratio = ratio(call.getKey(), call.getValue(), turns);
      if (ratio[0] + ratio[1] > 0) {
        compared++;
        held += ratio[0] > ratio[1] ? 1 : 0;
        up += ratio[0];
        down += ratio[1];
      }
      trusted += now.colour(call.getKey()).standing() == Standing.TRUSTED ? 1 : 0;
    }
    return new Audit.Calls(
        first.size(),
        compared,
        held,
        trusted,
        down > 0 ? OptionalDouble.of(up / down) : OptionalDouble.empty());
  }

  /** Σ a T₀ / T and Σ b T₁ / T over the later trips: a takes of the colour in T₁ of T hours. */
  private static double[] ratio(Name colour, LocalDate after, List<Turn> turns) {
    Map<Trip, double[]> trips = new TreeMap<>(); // its takes, its hours, other takes, other hours
    for (Turn turn : turns) {
      if (turn.trip().date().isAfter(after)) {
        double[] sums = trips.computeIfAbsent(turn.trip(), t -> new double[4]);
        int at = turn.plastic().colour().equals(colour) ? 0 : 2;
        sums[at] += turn.fish().takes();
        sums[at + 1] += turn.rodHours();
      }
    }
    double[] ratio = new double[2];
    for (double[] sums : trips.values()) {
      double hours = sums[1] + sums[3];
      if (sums[1] > 0 && sums[3] > 0) {
        ratio[0] += sums[0] * sums[3] / hours;
        ratio[1] += sums[2] * sums[1] / hours;
      }
    }
    return ratio;
  }
}

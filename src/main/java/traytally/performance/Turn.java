package traytally.performance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.FishingTime;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * All of one trip's stints with one plastic, put together: a changed mind is not new evidence.
 *
 * @param species the fish its first stint that names one sought, else the trip's; blank if none
 *     does
 * @param clarity the same of the water
 * @param place of the plastic among those of the trip in the order first tied on, from 1
 * @param rodMinutes minutes of all rods together; 0 only if nothing happened in them
 */
public record Turn(
    Trip trip,
    Plastic plastic,
    Name species,
    Optional<Clarity> clarity,
    int place,
    double rodMinutes,
    Fish fish,
    int lost,
    int worn) {
  /** A turn's length where a whole log states none: half an hour, an assumption of this tool. */
  private static final double UNKNOWN_LOG_MINUTES = 30;

  private record Key(Trip trip, Plastic plastic) implements Comparable<Key> {
    @Override
    public int compareTo(Key other) {
      int byTrip = trip.compareTo(other.trip);
      return byTrip != 0 ? byTrip : plastic.compareTo(other.plastic);
    }
  }

  /**
   * The turns of a log, by trip and plastic; the stints of a trip in the order fished. Where fish
   * or losses are noted beside no minutes at all, the minutes cannot be right, and the median of
   * the log's turns stands in.
   */
  public static List<Turn> of(List<Stint> log, double minutesPerCast) {
    List<FishingTime> times = FishingTime.of(log, minutesPerCast);
    SortedMap<Key, Turn> turns = new TreeMap<>();
    Map<Trip, Name> species = new HashMap<>();
    Map<Trip, Clarity> clarity = new HashMap<>();
    Map<Trip, Integer> places = new HashMap<>();
    for (int i = 0; i < log.size(); i++) {
      Stint stint = log.get(i);
      if (!stint.species().isBlank()) {
        species.putIfAbsent(stint.trip(), stint.species());
      }
      stint.clarity().ifPresent(seen -> clarity.putIfAbsent(stint.trip(), seen));
      Key key = new Key(stint.trip(), stint.plastic());
      int place = turns.containsKey(key) ? 0 : places.merge(stint.trip(), 1, Integer::sum);
      Turn turn =
          new Turn(
              stint.trip(),
              stint.plastic(),
              stint.species(),
              stint.clarity(),
              place,
              times.get(i).minutes() * stint.rods(),
              stint.fish(),
              stint.lost(),
              stint.worn());
      turns.merge(key, turn, Turn::plus);
    }
    double usual = usualMinutes(turns);
    List<Turn> believable = new ArrayList<>(turns.size());
    for (Turn turn : turns.values()) {
      double minutes = turn.rodMinutes == 0 && turn.happened() ? usual : turn.rodMinutes;
      believable.add(
          turn.lasting(minutes)
              .under(
                  species.getOrDefault(turn.trip, Name.BLANK),
                  Optional.ofNullable(clarity.get(turn.trip))));
    }
    return List.copyOf(believable);
  }

  private static double usualMinutes(SortedMap<Key, Turn> turns) {
    double[] minutes =
        turns.values().stream().mapToDouble(Turn::rodMinutes).filter(m -> m > 0).sorted().toArray();
    return minutes.length == 0 ? UNKNOWN_LOG_MINUTES : minutes[minutes.length / 2];
  }

  /** Pieces that left the tray: lost and worn. */
  public int use() {
    return Math.addExact(lost, worn);
  }

  public double rodHours() {
    return rodMinutes / 60;
  }

  private boolean happened() {
    return lost > 0 || worn > 0 || fish.follows() > 0 || fish.takes() > 0;
  }

  private Turn lasting(double minutes) {
    return new Turn(trip, plastic, species, clarity, place, minutes, fish, lost, worn);
  }

  /** This turn; where it does not say what was sought in which water, it was this. */
  private Turn under(Name tripSpecies, Optional<Clarity> tripClarity) {
    return new Turn(
        trip,
        plastic,
        species.isBlank() ? tripSpecies : species,
        clarity.or(() -> tripClarity),
        place,
        rodMinutes,
        fish,
        lost,
        worn);
  }

  private Turn plus(Turn other) {
    return new Turn(
        trip,
        plastic,
        species.isBlank() ? other.species : species,
        clarity.or(() -> other.clarity),
        place,
        rodMinutes + other.rodMinutes,
        new Fish(
            Math.addExact(fish.follows(), other.fish.follows()),
            Math.addExact(fish.takes(), other.fish.takes()),
            Math.addExact(fish.hooked(), other.fish.hooked()),
            Math.addExact(fish.landed(), other.fish.landed())),
        Math.addExact(lost, other.lost),
        Math.addExact(worn, other.worn));
  }
}

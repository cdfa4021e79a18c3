package traytally.restock;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Function;
import traytally.numeric.Contrast;
import traytally.numeric.CountData;
import traytally.numeric.Estimate;
import traytally.numeric.MixedCountFit;
import traytally.numeric.MixedCountModel;
import traytally.numeric.Priors;
import traytally.performance.Levels;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Trip;

/**
 * Losses per rod-hour: pieces lost and worn in a turn are negative binomial (NB2) with ln mean =
 * ln(hours) + β0 + day + body + length + water + plastic, all normal random effects.
 *
 * <p>exp(mean + v/2) of the fitted level is too high when refitted logs are few and skewed, so all
 * rates are multiplied by (pieces lost + 1) / (forecast for the log's own turns + 1).
 */
final class LossModel {
  private static final String DAY = "day";
  private static final String BODY = "body";
  private static final String LENGTH = "length";
  private static final String WATER = "water";
  private static final String PLASTIC = "plastic";

  /**
   * Half-normal scales of the standard deviations: days and grounds differ more than bodies, bodies
   * more than lengths or single plastics (assumption; wider ones made few trips' bounds too wide in
   * simulated logs).
   */
  private static final Priors PRIORS =
      Priors.halfNormal(Map.of(DAY, 0.5, BODY, 0.3, LENGTH, 0.2, WATER, 0.4, PLASTIC, 0.2));

  /** What is not known of an assumed rate: a factor of 1.6 either way (assumption). */
  private static final double ASSUMED_LOG_SD = 0.5;

  /**
   * Turns that rates are learnt from, the last ones: twelve years of a keen angler's. Weighing more
   * would take longer than anyone waits for a list, to learn of what is fished no more.
   */
  private static final int MOST_TURNS = 8_000;

  /**
   * Plastics with a rate of their own, those with most of these turns; the others are taken as
   * their body, length and water are. A matrix of the squared number is factorised for each fit.
   */
  private static final int MOST_PLASTICS = 300;

  /** Dispersion before there is a log: the prior's middle. */
  private static final double ASSUMED_DISPERSION = 2;

  private record Place(Plastic plastic, Name water) {}

  private final double assumedPerHour;
  private final List<Turn> fished;
  private final Levels<Name> bodies;
  private final Levels<Integer> lengths;
  private final Levels<Name> waters;
  private final Levels<Plastic> plastics; // with a rate of their own
  private final boolean pooled; // whether there are others, which share the level after these
  private final Contrast usualWater; // the log's waters, by their hours
  private final Optional<MixedCountFit> fit;
  private final double scale;
  private final Map<Place, LossRate> unscaled = new HashMap<>();

  /**
   * Learns from a log's turns.
   *
   * @param assumedPerHour pieces a rod-hour where the log is empty
   */
  LossModel(List<Turn> turns, double assumedPerHour) {
    this.assumedPerHour = assumedPerHour;
    List<Turn> all = turns.stream().filter(turn -> turn.rodMinutes() > 0).toList();
    this.fished = all.subList(Math.max(0, all.size() - MOST_TURNS), all.size());
    this.bodies = levels(turn -> turn.plastic().body());
    this.lengths = levels(turn -> turn.plastic().lengthClass());
    this.waters = levels(turn -> turn.trip().water());
    this.plastics = new Levels<>(mostFished());
    this.pooled = fished.stream().anyMatch(turn -> plastics.find(turn.plastic()).isEmpty());
    this.usualWater = usualWater();
    this.fit = fished.isEmpty() ? Optional.empty() : Optional.of(fit());
    this.scale = fit.isEmpty() ? 1 : scale();
  }

  private <T extends Comparable<T>> Levels<T> levels(Function<Turn, T> level) {
    return new Levels<>(fished.stream().map(level).toList());
  }

  private List<Plastic> mostFished() {
    Map<Plastic, Integer> turns = new TreeMap<>();
    fished.forEach(turn -> turns.merge(turn.plastic(), 1, Integer::sum));
    return turns.entrySet().stream()
        .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
        .limit(MOST_PLASTICS)
        .map(Map.Entry::getKey)
        .toList();
  }

  private int level(Turn turn) {
    return plastics.find(turn.plastic()).orElse(plastics.size());
  }

  private MixedCountFit fit() {
    Levels<Trip> days = levels(Turn::trip);
    int[] counts = fished.stream().mapToInt(Turn::use).toArray();
    double[] logHours = fished.stream().mapToDouble(t -> Math.log(t.rodHours())).toArray();
    int[] own = fished.stream().mapToInt(this::level).toArray();
    CountData data =
        CountData.of(counts, logHours)
            .blockedBy(DAY, numbers(days, Turn::trip), days.size())
            .groupedBy(BODY, numbers(bodies, t -> t.plastic().body()), bodies.size())
            .groupedBy(LENGTH, numbers(lengths, t -> t.plastic().lengthClass()), lengths.size())
            .groupedBy(WATER, numbers(waters, t -> t.trip().water()), waters.size())
            .groupedBy(PLASTIC, own, plastics.size() + (pooled ? 1 : 0));
    return MixedCountModel.negativeBinomial().withPriors(PRIORS).fit(data);
  }

  private <T extends Comparable<T>> int[] numbers(Levels<T> levels, Function<Turn, T> level) {
    return fished.stream().mapToInt(turn -> levels.of(level.apply(turn))).toArray();
  }

  /** Where nobody says which water, it is taken as the mean of those fished. */
  private Contrast usualWater() {
    double hours = fished.stream().mapToDouble(Turn::rodHours).sum();
    Map<Integer, Double> byWater = new TreeMap<>();
    fished.forEach(t -> byWater.merge(waters.of(t.trip().water()), t.rodHours(), Double::sum));
    Contrast sum = Contrast.none();
    for (Map.Entry<Integer, Double> water : byWater.entrySet()) {
      sum = sum.plus(WATER, water.getKey(), water.getValue() / hours);
    }
    return sum;
  }

  private double scale() {
    double lost = 0;
    double forecast = 0;
    for (Turn turn : fished) {
      lost += turn.use();
      forecast += turn.rodHours() * unscaled(turn.plastic(), turn.trip().water()).perHour();
    }
    return (lost + 1) / (forecast + 1);
  }

  /** Whether there was no log and the rates are the angler's setting. */
  boolean assumed() {
    return fit.isEmpty();
  }

  /** κ, how far one turn's count strays beyond chance. */
  double dispersion() {
    return fit.map(f -> f.dispersion().orElse(Double.POSITIVE_INFINITY)).orElse(ASSUMED_DISPERSION);
  }

  /** The rate of a plastic on a water, whether or not the log knows either. */
  LossRate rate(Plastic plastic, Name water) {
    LossRate rate = unscaled(plastic, water);
    return new LossRate(
        rate.perHour() * scale, rate.logMean(), rate.logVariance(), rate.dayVariance(), scale);
  }

  private LossRate unscaled(Plastic plastic, Name water) {
    return unscaled.computeIfAbsent(new Place(plastic, water), this::predicted);
  }

  private LossRate predicted(Place place) {
    if (fit.isEmpty()) {
      double variance = ASSUMED_LOG_SD * ASSUMED_LOG_SD;
      double logMean = Math.log(assumedPerHour) - variance / 2;
      return new LossRate(assumedPerHour, logMean, variance, 0, 1);
    }
    Contrast sum = Contrast.intercept().plusUnseen(DAY, "another", 1);
    sum = plus(sum, BODY, bodies.find(place.plastic().body()));
    sum = plus(sum, LENGTH, lengths.find(place.plastic().lengthClass()));
    sum =
        place.water().isBlank()
            ? sum.plus(usualWater, 1)
            : plus(sum, WATER, waters.find(place.water()));
    sum = plus(sum, PLASTIC, plastics.find(place.plastic()));
    if (pooled && plastics.find(place.plastic()).isEmpty()) {
      sum = sum.plus(PLASTIC, plastics.size(), 1);
    }
    Estimate log = fit.get().estimate(sum);
    double daySd = fit.get().sd(DAY);
    return new LossRate(
        Math.exp(log.mean() + log.variance() / 2), log.mean(), log.variance(), daySd * daySd, 1);
  }

  private static Contrast plus(Contrast sum, String grouping, OptionalInt level) {
    return level.isPresent()
        ? sum.plus(grouping, level.getAsInt(), 1)
        : sum.plusUnseen(grouping, "another", 1);
  }
}

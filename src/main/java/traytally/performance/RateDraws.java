package traytally.performance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import traytally.numeric.Contrast;
import traytally.numeric.MixedCountFit;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * Takes a rod-hour of plastics, drawn jointly from what a log leaves open.
 *
 * <p>A plastic's rate is level × exp(body + colour), both effects from the joint posterior; one the
 * log does not know is drawn from its family's deviation, the same draw for all that share it. The
 * level of each draw is the one at which the log's own hours give the log's own count.
 */
final class RateDraws {
  private final Optional<MixedCountFit> fit;
  private final List<Turn> fished;
  private final Measure measure;
  private final Map<String, Double> assumedSds;

  /**
   * Draws from a fit, or where there is none yet from {@code assumedSds} by grouping.
   *
   * @param fished the turns the fit rests on
   */
  RateDraws(
      Optional<MixedCountFit> fit,
      List<Turn> fished,
      Measure measure,
      Map<String, Double> assumedSds) {
    this.fit = fit;
    this.fished = fished;
    this.measure = measure;
    this.assumedSds = assumedSds;
  }

  /**
   * The draws, draws × plastics.
   *
   * @param effects the groupings by which plastics differ, and each plastic's level in them
   */
  double[][] of(List<Plastic> plastics, List<Family> effects, int draws, long seed) {
    Map<Plastic, Integer> column = new HashMap<>();
    List<Plastic> all = new ArrayList<>(plastics);
    fished.forEach(turn -> all.add(turn.plastic()));
    for (Plastic plastic : all) {
      column.putIfAbsent(plastic, column.size());
    }
    double[][] logRate = new double[draws][column.size()];
    add(logRate, column, effects, draws, seed);
    double[][] rates = new double[draws][plastics.size()];
    for (int d = 0; d < draws; d++) {
      double level = level(logRate[d], column);
      for (int p = 0; p < plastics.size(); p++) {
        rates[d][p] = level * Math.exp(logRate[d][column.getOrDefault(plastics.get(p), 0)]);
      }
    }
    return rates;
  }

  /** A family of effects: its grouping in the fit, and how to tell a plastic's level. */
  record Family(String grouping, Levels<Name> known, Kind kind) {}

  /** What a family tells plastics apart by. */
  interface Kind {
    Name of(Plastic plastic);
  }

  private void add(
      double[][] logRate,
      Map<Plastic, Integer> column,
      List<Family> families,
      int draws,
      long seed) {
    List<Contrast> contrasts = new ArrayList<>();
    List<Double> sds = new ArrayList<>();
    List<Map<Name, Integer>> places = new ArrayList<>();
    for (Family family : families) {
      Map<Name, Integer> place = new HashMap<>();
      List<Plastic> inOrder = column.keySet().stream().sorted().toList();
      for (Plastic plastic : inOrder) {
        Name name = family.kind().of(plastic);
        if (!place.containsKey(name)) {
          place.put(name, contrasts.size());
          contrasts.add(contrast(family, name));
          sds.add(assumedSds.getOrDefault(family.grouping(), 0.0));
        }
      }
      places.add(place);
    }
    double[][] drawn =
        fit.isPresent() ? fit.get().draw(contrasts, draws, seed) : assumed(sds, draws, seed);
    column.forEach(
        (plastic, c) -> {
          for (int f = 0; f < places.size(); f++) {
            int at = places.get(f).getOrDefault(families.get(f).kind().of(plastic), 0);
            for (int d = 0; d < draws; d++) {
              logRate[d][c] += drawn[d][at];
            }
          }
        });
  }

  private static Contrast contrast(Family family, Name name) {
    return family.known().find(name).isPresent()
        ? Contrast.none().plus(family.grouping(), family.known().of(name), 1)
        : Contrast.none().plusUnseen(family.grouping(), 1);
  }

  private static double[][] assumed(List<Double> sds, int draws, long seed) {
    Random random = new Random(seed);
    double[][] drawn = new double[draws][sds.size()];
    for (double[] draw : drawn) {
      for (int c = 0; c < draw.length; c++) {
        draw[c] = sds.get(c) * random.nextGaussian();
      }
    }
    return drawn;
  }

  /** (count + ½) / Σ hours × exp(effects): half a fish keeps a blank log above none. */
  private double level(double[] logRate, Map<Plastic, Integer> column) {
    double count = 0.5;
    double forecast = 0;
    for (Turn turn : fished) {
      count += measure.of(turn.fish());
      forecast += turn.rodHours() * Math.exp(logRate[column.getOrDefault(turn.plastic(), 0)]);
    }
    return fished.isEmpty() ? ASSUMED_PER_HOUR : count / forecast;
  }

  /** Takes in a rod-hour where there is no log (assumption); it orders nothing, only scales. */
  private static final double ASSUMED_PER_HOUR = 1;
}

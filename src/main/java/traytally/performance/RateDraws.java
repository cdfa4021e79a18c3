package traytally.performance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import traytally.numeric.Contrast;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * Takes a rod-hour of plastics, drawn jointly from what a log leaves open.
 *
 * <p>A plastic's rate is level × exp(its terms), from the joint posterior; what the log does not
 * know is drawn from its family's deviation, the same draw for all that share it. The level of each
 * draw is the one at which the log's own hours give the log's own count.
 */
final class RateDraws {
  /** Takes in a rod-hour where there is no log (assumption); it orders nothing, only scales. */
  private static final double ASSUMED_PER_HOUR = 1;

  private final Optional<CatchModel> model;
  private final Mix mix;
  private final List<Turn> fished;
  private final Measure measure;

  /**
   * Draws from a fitted model, or where there is none yet from the priors' scales.
   *
   * @param mix the conditions the rates are wanted for
   * @param fished the turns the fit rests on
   */
  RateDraws(Optional<CatchModel> model, Mix mix, List<Turn> fished, Measure measure) {
    this.model = model;
    this.mix = mix;
    this.fished = fished;
    this.measure = measure;
  }

  /** The draws, draws × plastics. */
  double[][] of(List<Plastic> plastics, int draws, long seed) {
    Map<Plastic, Integer> column = new HashMap<>();
    List<Plastic> all = new ArrayList<>();
    plastics.stream().sorted().forEach(all::add);
    fished.forEach(turn -> all.add(turn.plastic()));
    List<Plastic> distinct = all.stream().distinct().toList();
    distinct.forEach(plastic -> column.put(plastic, column.size()));
    double[][] logRate =
        model.isPresent()
            ? drawn(model.get(), distinct, draws, seed)
            : assumed(distinct, draws, seed);
    int[] wanted = plastics.stream().mapToInt(p -> column.getOrDefault(p, 0)).toArray();
    double[] hours = new double[distinct.size()];
    fished.forEach(turn -> hours[column.getOrDefault(turn.plastic(), 0)] += turn.rodHours());
    double count = fished.stream().mapToInt(turn -> measure.of(turn.fish())).sum();
    double[][] rates = new double[draws][plastics.size()];
    for (int d = 0; d < draws; d++) {
      double level = level(logRate[d], hours, count);
      for (int p = 0; p < wanted.length; p++) {
        rates[d][p] = level * Math.exp(logRate[d][wanted[p]]);
      }
    }
    return rates;
  }

  private double[][] drawn(CatchModel fitted, List<Plastic> plastics, int draws, long seed) {
    List<Contrast> terms = plastics.stream().map(p -> fitted.plastic(p, mix)).toList();
    return fitted.fit().draw(terms, draws, seed);
  }

  /** Before there is a log: bodies and colours differ as far as they usually do. */
  private static double[][] assumed(List<Plastic> plastics, int draws, long seed) {
    Random random = new Random(seed);
    double[][] drawn = new double[draws][plastics.size()];
    for (double[] draw : drawn) {
      Map<Name, Double> bodies = new HashMap<>();
      Map<Name, Double> colours = new HashMap<>();
      for (int p = 0; p < draw.length; p++) {
        double body =
            bodies.computeIfAbsent(
                plastics.get(p).body(), b -> scale(CatchModel.Trait.BODY) * random.nextGaussian());
        double colour =
            colours.computeIfAbsent(
                plastics.get(p).colour(),
                c -> scale(CatchModel.Trait.COLOUR) * random.nextGaussian());
        draw[p] = body + colour;
      }
    }
    return drawn;
  }

  private static double scale(CatchModel.Trait trait) {
    return CatchModel.SCALES.getOrDefault(trait.grouping(), 0.0);
  }

  /**
   * (count + ½) / Σ hours × exp(terms): half a fish keeps a blank log above none.
   *
   * @param logRate the terms, one per plastic
   * @param hours fished with each
   */
  private double level(double[] logRate, double[] hours, double count) {
    double forecast = 0;
    for (int p = 0; p < hours.length; p++) {
      forecast += hours[p] * Math.exp(logRate[p]);
    }
    return fished.isEmpty() ? ASSUMED_PER_HOUR : (count + 0.5) / forecast;
  }
}

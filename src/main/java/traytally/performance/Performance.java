package traytally.performance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import traytally.numeric.Contrast;
import traytally.numeric.CountData;
import traytally.numeric.Estimate;
import traytally.numeric.Gaussian;
import traytally.numeric.MixedCountFit;
import traytally.numeric.MixedCountModel;
import traytally.numeric.Priors;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * What a log says of every colour, plastic and body in it.
 *
 * <p>A turn's count y over m rod-minutes is negative binomial (NB2) with ln mean = ln(m/60) + β0 +
 * day + body + colour, all three normal random effects. Colours fished on one day are so compared
 * with each other first: fish that are biting bite on anything.
 */
public final class Performance {
  private static final String DAY = "day";
  private static final String BODY = "body";
  private static final String COLOUR = "colour";

  /**
   * Half-normal scales of the standard deviations: graded, as calibrated best in simulated logs.
   */
  private static final Map<String, Double> SCALES = Map.of(DAY, 1.5, BODY, 0.3, COLOUR, 0.4);

  private static final Priors PRIORS = Priors.halfNormal(SCALES);

  private final Measure measure;
  private final StandingRule rule;
  private final List<Turn> turns;
  private final List<Turn> fished; // those with time to them
  private final Levels<Name> colours;
  private final Levels<Name> bodies;
  private final Optional<MixedCountFit> fit;
  private final Map<Name, Trust> byColour = new HashMap<>();

  private Performance(List<Turn> turns, Measure measure, StandingRule rule) {
    this.measure = measure;
    this.rule = rule;
    this.turns = turns;
    this.fished = turns.stream().filter(turn -> turn.rodMinutes() > 0).toList();
    this.colours = new Levels<>(fished.stream().map(t -> t.plastic().colour()).toList());
    this.bodies = new Levels<>(fished.stream().map(t -> t.plastic().body()).toList());
    this.fit = fished.isEmpty() ? Optional.empty() : Optional.of(fit());
    judge(Grain.COLOUR).forEach(trust -> byColour.put(trust.colour().orElseThrow(), trust));
  }

  /**
   * Reads a log.
   *
   * @param log the stints to learn from, in any order
   * @param minutesPerCast turns casts into minutes where no minutes were noted
   * @param measure which of the fish count
   */
  public static Performance of(
      List<Stint> log, double minutesPerCast, Measure measure, StandingRule rule) {
    return new Performance(Turn.of(log, minutesPerCast), measure, rule);
  }

  private MixedCountFit fit() {
    Levels<Trip> days = new Levels<>(fished.stream().map(Turn::trip).toList());
    int[] counts = fished.stream().mapToInt(t -> measure.of(t.fish())).toArray();
    double[] logHours = fished.stream().mapToDouble(t -> Math.log(t.rodHours())).toArray();
    CountData data =
        CountData.of(counts, logHours)
            .blockedBy(DAY, numbers(days, Turn::trip), days.size())
            .groupedBy(BODY, numbers(bodies, t -> t.plastic().body()), bodies.size())
            .groupedBy(COLOUR, numbers(colours, t -> t.plastic().colour()), colours.size());
    return MixedCountModel.negativeBinomial().withPriors(PRIORS).fit(data);
  }

  private <T extends Comparable<T>> int[] numbers(Levels<T> levels, Function<Turn, T> level) {
    return fished.stream().mapToInt(turn -> levels.of(level.apply(turn))).toArray();
  }

  /** All that was fished, at this grain, most trusted first. */
  public List<Trust> by(Grain grain) {
    return judge(grain);
  }

  /** The trust in a colour; one half, unproven, where the log does not know it. */
  public Trust colour(Name colour) {
    Trust known = byColour.get(colour);
    return known != null
        ? known
        : new Trust(
            new Subject(Optional.empty(), Optional.of(colour), Optional.empty()),
            Evidence.NONE,
            unknown(),
            Standing.UNPROVEN);
  }

  /**
   * Draws of what plastics have in a rod-hour, by the measure, jointly from what the log leaves
   * open; plastics the log does not know are drawn from how far those it knows differ.
   *
   * @param seed the same seed gives the same draws of the same log
   * @return draws × plastics
   */
  public double[][] drawRates(List<Plastic> plastics, int draws, long seed) {
    List<RateDraws.Family> families =
        List.of(
            new RateDraws.Family(BODY, bodies, Plastic::body),
            new RateDraws.Family(COLOUR, colours, Plastic::colour));
    return new RateDraws(fit, fished, measure, SCALES).of(plastics, families, draws, seed);
  }

  /** The log's turns, by trip and plastic. */
  public List<Turn> turns() {
    return turns;
  }

  private Contrast term(Subject subject) {
    Contrast term = Contrast.none();
    if (subject.colour().isPresent()) {
      term = term.plus(COLOUR, colours.of(subject.colour().get()), 1);
    }
    if (subject.body().isPresent()) {
      term = term.plus(BODY, bodies.of(subject.body().get()), 1);
    }
    return term;
  }

  /** Judges each subject of this grain against the plain mean of all that had time to them. */
  private List<Trust> judge(Grain grain) {
    Map<Subject, Gaussian> advantages = advantages(grain);
    Map<Subject, List<Turn>> bySubject =
        turns.stream().collect(Collectors.groupingBy(t -> Subject.of(grain, t.plastic())));
    List<Trust> trusts = new ArrayList<>(bySubject.size());
    bySubject.forEach(
        (subject, its) -> {
          Evidence evidence = Evidence.of(its, measure);
          Gaussian advantage = advantages.getOrDefault(subject, unknown());
          Standing standing =
              subject.plastic().isPresent()
                  ? colour(subject.plastic().get().colour()).standing()
                  : rule.standing(advantage.above(0), evidence);
          trusts.add(new Trust(subject, evidence, advantage, standing));
        });
    trusts.sort(Trust.ORDER);
    return List.copyOf(trusts);
  }

  /** θ: a term less the mean of all; its variance is var a − 2 cov(a, m) + var m. */
  private Map<Subject, Gaussian> advantages(Grain grain) {
    Map<Subject, Gaussian> advantages = new LinkedHashMap<>();
    fished.forEach(turn -> advantages.put(Subject.of(grain, turn.plastic()), unknown()));
    if (fit.isEmpty()) {
      return advantages;
    }
    Contrast mean = Contrast.none();
    for (Subject subject : advantages.keySet()) {
      mean = mean.plus(term(subject), 1.0 / advantages.size());
    }
    Contrast all = mean;
    Estimate average = fit.get().estimate(all);
    advantages.replaceAll(
        (subject, unknown) -> {
          Contrast term = term(subject);
          Estimate own = fit.get().estimate(term);
          double variance =
              own.variance() - 2 * fit.get().covariance(term, all) + average.variance();
          return new Gaussian(own.mean() - average.mean(), Math.sqrt(Math.max(0, variance)));
        });
    return advantages;
  }

  /** What is thought of a colour without evidence: as likely above the mean as below. */
  private Gaussian unknown() {
    return new Gaussian(0, fit.map(f -> f.sd(COLOUR)).orElse(0.0));
  }
}

package traytally.performance;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import traytally.numeric.Contrast;
import traytally.numeric.Estimate;
import traytally.numeric.Gaussian;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.PlannedTrip;
import traytally.trip.Season;
import traytally.trip.Stint;

/**
 * What a log says of every colour, plastic and body in it, under some conditions.
 *
 * <p>The model is {@link CatchModel}'s; θ for a colour is its summed terms under the conditions,
 * less their plain mean over the colours fished.
 */
public final class Performance {
  private final Measure measure;
  private final StandingRule rule;
  private final LogReading reading;
  private final List<Turn> turns;

  /** Each draw goes through the whole log, and so long a one leaves little open (assumptions). */
  private static final int LONG_LOG = 50_000;

  private static final int FEWER = 4;

  private final List<Turn> fished; // those with time to them
  private final Optional<CatchModel> model;
  private final Mix mix;
  private final Conditions asked; // what evidence is shown of
  private final Map<Name, Trust> byColour = new HashMap<>(); // once a colour is asked for

  private Performance(
      Measure measure,
      StandingRule rule,
      LogReading reading,
      List<Turn> turns,
      Optional<CatchModel> model,
      Mix mix,
      Conditions asked) {
    this.measure = measure;
    this.rule = rule;
    this.reading = reading;
    this.turns = turns;
    this.fished = fished(turns);
    this.model = model;
    this.mix = mix;
    this.asked = asked;
  }

  private Map<Name, Trust> byColour() {
    if (byColour.isEmpty()) {
      judge(Grain.COLOUR).forEach(trust -> byColour.put(trust.colour().orElseThrow(), trust));
    }
    return byColour;
  }

  private static List<Turn> fished(List<Turn> turns) {
    return turns.stream().filter(turn -> turn.rodMinutes() > 0).toList();
  }

  /**
   * Reads a log, its conditions weighted by its hours.
   *
   * @param log the stints to learn from, those of a trip in the order fished
   * @param measure which of the fish count
   */
  public static Performance of(
      List<Stint> log, LogReading reading, Measure measure, StandingRule rule) {
    List<Turn> turns = Turn.of(log, reading.minutesPerCast());
    List<Turn> fished = fished(turns);
    Optional<CatchModel> model =
        fished.isEmpty() ? Optional.empty() : Optional.of(new CatchModel(fished, measure, reading));
    Mix mix = Mix.of(fished, reading.southern());
    return new Performance(measure, rule, reading, turns, model, mix, Conditions.ANY);
  }

  /** The same under these conditions, the evidence too. */
  public Performance under(Conditions conditions) {
    Mix asWell = Mix.of(fished, reading.southern()).with(conditions, reading.southern());
    return new Performance(measure, rule, reading, turns, model, asWell, conditions);
  }

  /** The same under the conditions of planned trips, by their hours; all the log is evidence. */
  public Performance under(List<PlannedTrip> plan) {
    Mix planned = Mix.of(fished, reading.southern()).of(plan, reading.southern());
    return new Performance(measure, rule, reading, turns, model, planned, Conditions.ANY);
  }

  /** What the log would say, under the same conditions, with these turns in it too. */
  Performance supposing(List<Turn> more) {
    List<Turn> all = new ArrayList<>(turns);
    all.addAll(more);
    CatchModel refitted = new CatchModel(fished(all), measure, reading);
    return new Performance(
        measure, rule, reading, List.copyOf(all), Optional.of(refitted), mix, asked);
  }

  /** How a colour did on each trip it was fished on, beside the other colours, in order. */
  public List<DayRecord> days(Name colour) {
    return DayRecord.of(turns, colour, measure);
  }

  /**
   * The trust in a colour for each fish, clarity and season by itself, where it was fished under it
   * and the log has others of the kind; by word, with the evidence of it.
   */
  public Map<String, Trust> byCondition(Name colour) {
    Map<String, Trust> trusts = new LinkedHashMap<>();
    for (Conditions conditions : Conditions.each(fished, reading.southern())) {
      Trust trust = under(conditions).colour(colour);
      if (trust.evidence().days() > 0) {
        trusts.put(conditions.words(reading.southern()), trust);
      }
    }
    return trusts;
  }

  /** Whether any turn was fished under the conditions asked for. */
  public boolean hasEvidence() {
    return turns.stream().anyMatch(turn -> asked.fit(turn, reading.southern()));
  }

  /** The season asked for. */
  public Optional<Season> season() {
    return asked.month().map(month -> Season.of(month, reading.southern()));
  }

  /** All that was fished, at this grain, most trusted first. */
  public List<Trust> by(Grain grain) {
    return judge(grain);
  }

  /** The trust in a colour; one half, unproven, where the log does not know it. */
  public Trust colour(Name colour) {
    Trust known = byColour().get(colour);
    return known != null
        ? known
        : new Trust(
            new Subject(Optional.empty(), Optional.of(colour), Optional.empty()),
            Evidence.NONE,
            unknown(),
            Standing.UNPROVEN);
  }

  /**
   * Draws of what plastics have in a rod-hour under the conditions, by the measure, jointly from
   * what the log leaves open; plastics the log does not know are drawn from how far those it knows
   * differ.
   *
   * @param draws how many; a quarter of them where the log holds more than 50,000 turns
   * @param seed the same seed gives the same draws of the same log
   * @return draws × plastics
   */
  public double[][] drawRates(List<Plastic> plastics, int draws, long seed) {
    int enough = fished.size() > LONG_LOG ? draws / FEWER : draws;
    return new RateDraws(model, mix, fished, measure).of(plastics, enough, seed);
  }

  /**
   * θ of whole plastics, body and length too, fished or not: less the mean of all plastics fished.
   */
  public Map<Plastic, Gaussian> advantages(List<Plastic> plastics) {
    Map<Plastic, Gaussian> advantages = new HashMap<>();
    if (model.isEmpty()) {
      plastics.forEach(plastic -> advantages.put(plastic, unknown()));
      return advantages;
    }
    List<Plastic> known = fished.stream().map(Turn::plastic).distinct().toList();
    Contrast mean = Contrast.mean(terms(model.get(), Grain.PLASTIC, known));
    List<Contrast> terms = terms(model.get(), Grain.PLASTIC, plastics);
    List<Estimate> compared = model.get().fit().compared(terms, mean);
    for (int p = 0; p < compared.size(); p++) {
      advantages.put(plastics.get(p), new Gaussian(compared.get(p).mean(), compared.get(p).sd()));
    }
    return advantages;
  }

  /** The log's turns, by trip and plastic. */
  public List<Turn> turns() {
    return turns;
  }

  /** Judges each subject of this grain against the plain mean of all that had time to them. */
  private List<Trust> judge(Grain grain) {
    Map<Subject, Gaussian> advantages = advantages(grain);
    Map<Subject, List<Turn>> bySubject =
        turns.stream()
            .filter(turn -> asked.fit(turn, reading.southern()))
            .collect(Collectors.groupingBy(t -> Subject.of(grain, t.plastic())));
    turns.forEach(t -> bySubject.putIfAbsent(Subject.of(grain, t.plastic()), List.of()));
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

  /** θ of all that had time to them; of nothing where nothing had. */
  private Map<Subject, Gaussian> advantages(Grain grain) {
    if (model.isEmpty()) {
      return Map.of();
    }
    Map<Subject, Plastic> example = new LinkedHashMap<>();
    fished.forEach(t -> example.putIfAbsent(Subject.of(grain, t.plastic()), t.plastic()));
    Map<Subject, Gaussian> advantages = new HashMap<>();
    List<Contrast> terms = terms(model.get(), grain, example.values());
    Contrast mean = Contrast.mean(terms);
    List<Estimate> compared = model.get().fit().compared(terms, mean);
    int next = 0;
    for (Subject subject : example.keySet()) {
      Estimate theta = compared.get(next++);
      advantages.put(subject, new Gaussian(theta.mean(), theta.sd()));
    }
    return advantages;
  }

  private List<Contrast> terms(CatchModel fitted, Grain grain, Collection<Plastic> plastics) {
    return plastics.stream()
        .map(
            plastic ->
                switch (grain) {
                  case COLOUR -> fitted.colour(plastic, mix);
                  case BODY -> fitted.body(plastic);
                  case PLASTIC -> fitted.plastic(plastic, mix);
                })
        .toList();
  }

  /** What is thought of a colour without evidence: as likely above the mean as below. */
  private Gaussian unknown() {
    return new Gaussian(0, model.map(CatchModel::unknownColourSd).orElse(0.0));
  }
}

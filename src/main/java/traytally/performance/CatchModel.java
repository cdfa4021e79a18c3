package traytally.performance;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import traytally.numeric.Contrast;
import traytally.numeric.CountData;
import traytally.numeric.MixedCountFit;
import traytally.numeric.MixedCountModel;
import traytally.numeric.Priors;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Tone;
import traytally.trip.Trip;

/**
 * The mixed model of a log's catches, fitted.
 *
 * <p>A turn's count y over m rod-minutes is negative binomial (NB2) with
 *
 * <pre>ln mean = ln(m/60) + β0 + day + place in the day + body + length + tone + colour
 *          + tone:c + colour:c   for c in species, clarity, season</pre>
 *
 * <p>all normal random effects, one standard deviation a family. Colours fished on one day are so
 * compared with each other first: fish that are biting bite on anything. A family that the log
 * cannot tell from another (one body only; no two colours of one tone; one species) is left out.
 */
final class CatchModel {
  static final String DAY = "day";
  static final String ORDER = "order";

  /** From the fourth plastic of a day on, one is as late as another (assumption). */
  private static final int LATE = 4;

  /**
   * Half-normal scales of the standard deviations: graded, as calibrated best in simulated logs.
   */
  static final Map<String, Double> SCALES = scales();

  /** What tells plastics apart. */
  enum Trait {
    BODY(0.3),
    LENGTH(0.2),
    TONE(0.25),
    COLOUR(0.4);

    private final double scale;

    Trait(double scale) {
      this.scale = scale;
    }

    String grouping() {
      return name().toLowerCase(Locale.ROOT);
    }

    String grouping(Context context) {
      return grouping() + ":" + context.word();
    }
  }

  private static final double CONTEXT_SCALE = 0.2;

  /** Fish grow wary or the tide turns, but not by much (assumption). */
  private static final double ORDER_SCALE = 0.1;

  private static final Priors PRIORS = Priors.halfNormal(SCALES);

  /** A level of a family: what the plastic has, and where it is a matter of conditions, which. */
  private record Level(String trait, String context) implements Comparable<Level> {
    private static final Comparator<Level> ORDER =
        Comparator.comparing(Level::trait).thenComparing(Level::context);

    @Override
    public int compareTo(Level other) {
      return ORDER.compare(this, other);
    }
  }

  private final List<Turn> fished;
  private final boolean southern;
  private final Map<Name, Tone> tones;
  private final Map<String, Levels<Level>> families = new LinkedHashMap<>();
  private final Set<Trait> traits = EnumSet.noneOf(Trait.class);
  private final Set<Context> contexts = EnumSet.noneOf(Context.class);
  private final MixedCountFit fit;

  /**
   * Fits the model.
   *
   * @param fished turns with time to them, at least one
   */
  CatchModel(List<Turn> fished, Measure measure, LogReading reading) {
    this.fished = fished;
    this.southern = reading.southern();
    this.tones = reading.tones();
    chooseFamilies();
    int[] counts = fished.stream().mapToInt(t -> measure.of(t.fish())).toArray();
    double[] logHours = fished.stream().mapToDouble(t -> Math.log(t.rodHours())).toArray();
    Levels<Trip> days = new Levels<>(fished.stream().map(Turn::trip).toList());
    CountData data =
        CountData.of(counts, logHours).blockedBy(DAY, numbers(days, Turn::trip), days.size());
    int[] places = fished.stream().mapToInt(turn -> Math.min(turn.place(), LATE) - 1).toArray();
    if (new HashSet<>(fished.stream().map(Turn::place).toList()).size() > 1) {
      data = data.groupedBy(ORDER, places, LATE);
    }
    for (Trait trait : traits) {
      data = grouped(data, trait);
    }
    for (Trait trait : traits) {
      for (Context context : contexts) {
        data = byContext(trait) ? grouped(data, trait, context) : data;
      }
    }
    this.fit = MixedCountModel.negativeBinomial().withPriors(PRIORS).fit(data);
  }

  private static Map<String, Double> scales() {
    Map<String, Double> scales = new HashMap<>(Map.of(DAY, 1.5, ORDER, ORDER_SCALE));
    for (Trait trait : Trait.values()) {
      scales.put(trait.grouping(), trait.scale);
      for (Context context : Context.values()) {
        scales.put(trait.grouping(context), CONTEXT_SCALE);
      }
    }
    return Map.copyOf(scales);
  }

  private static boolean byContext(Trait trait) {
    return trait == Trait.TONE || trait == Trait.COLOUR;
  }

  private void chooseFamilies() {
    for (Trait trait : Trait.values()) {
      long levels = fished.stream().map(t -> level(trait, t.plastic(), "")).distinct().count();
      if (trait == Trait.COLOUR || levels > 1) {
        traits.add(trait);
      }
      if (trait == Trait.TONE && levels == distinctColours()) {
        traits.remove(trait);
      }
    }
    for (Context context : Context.values()) {
      if (fished.stream().map(turn -> context.of(turn, southern)).distinct().count() > 1) {
        contexts.add(context);
      }
    }
  }

  private long distinctColours() {
    return fished.stream().map(turn -> turn.plastic().colour()).distinct().count();
  }

  private CountData grouped(CountData data, Trait trait) {
    Function<Turn, Level> level = turn -> level(trait, turn.plastic(), "");
    Levels<Level> levels = levels(trait.grouping(), level);
    return data.groupedBy(trait.grouping(), numbers(levels, level), levels.size());
  }

  private CountData grouped(CountData data, Trait trait, Context context) {
    String name = trait.grouping(context);
    Function<Turn, Level> level = turn -> level(trait, turn.plastic(), context.of(turn, southern));
    Levels<Level> levels = levels(name, level);
    int[] numbers = numbers(levels, level);
    return trait == Trait.COLOUR
        ? data.groupedWithin(trait.grouping(), name, numbers, levels.size())
        : data.groupedBy(name, numbers, levels.size());
  }

  private Levels<Level> levels(String grouping, Function<Turn, Level> level) {
    Levels<Level> levels = new Levels<>(fished.stream().map(level).toList());
    families.put(grouping, levels);
    return levels;
  }

  private <T extends Comparable<T>> int[] numbers(Levels<T> levels, Function<Turn, T> level) {
    return fished.stream().mapToInt(turn -> levels.of(level.apply(turn))).toArray();
  }

  /** A colour of unknown looks is the only one of its tone. */
  private Level level(Trait trait, Plastic plastic, String context) {
    return new Level(
        switch (trait) {
          case BODY -> plastic.body().key();
          case LENGTH -> Integer.toString(plastic.lengthClass());
          case TONE -> tone(plastic.colour());
          case COLOUR -> plastic.colour().key();
        },
        context);
  }

  private String tone(Name colour) {
    Tone known = tones.get(colour);
    return known == null ? "like " + colour.key() : known.word();
  }

  MixedCountFit fit() {
    return fit;
  }

  /** The sides of the conditions that the log tells colours apart by. */
  Set<Context> contexts() {
    return contexts;
  }

  /** What a colour adds to the log rate under these conditions. */
  Contrast colour(Plastic plastic, Mix mix) {
    return sum(plastic, mix, EnumSet.of(Trait.TONE, Trait.COLOUR));
  }

  /** What a body style adds to the log rate. */
  Contrast body(Plastic plastic) {
    return plusTrait(Contrast.none(), Trait.BODY, plastic);
  }

  /** What a plastic adds to the log rate under these conditions. */
  Contrast plastic(Plastic plastic, Mix mix) {
    return sum(plastic, mix, EnumSet.allOf(Trait.class));
  }

  private Contrast sum(Plastic plastic, Mix mix, Set<Trait> some) {
    Contrast sum = Contrast.none();
    for (Trait trait : some) {
      sum = plusTrait(sum, trait, plastic);
      if (traits.contains(trait) && byContext(trait)) {
        sum = plusContexts(sum, trait, plastic, mix);
      }
    }
    return sum;
  }

  private Contrast plusTrait(Contrast sum, Trait trait, Plastic plastic) {
    return traits.contains(trait) ? plus(sum, trait.grouping(), level(trait, plastic, ""), 1) : sum;
  }

  private Contrast plusContexts(Contrast sum, Trait trait, Plastic plastic, Mix mix) {
    Contrast more = sum;
    for (Context context : contexts) {
      for (Map.Entry<String, Double> share : mix.of(context).entrySet()) {
        Level level = level(trait, plastic, share.getKey());
        more = plus(more, trait.grouping(context), level, share.getValue());
      }
    }
    return more;
  }

  private Contrast plus(Contrast sum, String grouping, Level level, double weight) {
    Levels<Level> known = families.get(grouping);
    OptionalInt number = known == null ? OptionalInt.empty() : known.find(level);
    return number.isPresent()
        ? sum.plus(grouping, number.getAsInt(), weight)
        : sum.plusUnseen(grouping, level.trait() + "\n" + level.context(), weight);
  }

  /** What is open of a colour that the log does not know. */
  double unknownColourSd() {
    double variance = 0;
    for (Trait trait : List.of(Trait.TONE, Trait.COLOUR)) {
      variance += traits.contains(trait) ? Math.pow(fit.sd(trait.grouping()), 2) : 0;
    }
    return Math.sqrt(variance);
  }
}

package traytally.simulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Tone;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * A log far longer than a life: four stints a day, three fish, four clarities, all seasons; all
 * effects drawn as the model has them. Some colours are fished much more than others.
 */
public final class LongLog {
  private static final String[] SPECIES = {"pollack", "bass", "wrasse"};
  private static final String[] BODIES = {"paddle", "craw", "straight", "curl", "shrimp"};
  private static final int[] LENGTHS = {60, 75, 100, 120};
  private static final List<Clarity> CLARITIES = List.of(Clarity.values());
  private static final List<Tone> TONES = List.of(Tone.values());
  private static final int STINTS_A_DAY = 4;

  private final Random random;
  private final int colours;
  private final Map<String, Double> effects = new HashMap<>();

  private LongLog(int colours, long seed) {
    this.random = new Random(seed);
    this.colours = colours;
  }

  /** A log of this many stints in this many colours. */
  public static List<Stint> of(int stints, int colours, long seed) {
    return new LongLog(colours, seed).stints(stints);
  }

  /** The tones of its colours. */
  public static Map<Name, Tone> tones(int colours) {
    Map<Name, Tone> tones = new HashMap<>();
    for (int c = 0; c < colours; c++) {
      tones.put(colour(c), TONES.get(c % TONES.size()));
    }
    return tones;
  }

  private static Name colour(int number) {
    return Name.of("colour " + number);
  }

  private double effect(String level, double sd) {
    return effects.computeIfAbsent(level, l -> sd * random.nextGaussian());
  }

  private List<Stint> stints(int count) {
    List<Stint> log = new ArrayList<>();
    LocalDate date = LocalDate.of(1800, 1, 1);
    while (log.size() < count) {
      date = date.plusDays(1 + random.nextInt(3));
      String species = SPECIES[random.nextInt(SPECIES.length)];
      Clarity clarity = CLARITIES.get(random.nextInt(CLARITIES.size()));
      double day = 0.8 * random.nextGaussian();
      for (int s = 0; s < STINTS_A_DAY && log.size() < count; s++) {
        log.add(stint(date, species, clarity, day));
      }
    }
    return log;
  }

  private Stint stint(LocalDate date, String species, Clarity clarity, double day) {
    int number = (int) (colours * Math.pow(random.nextDouble(), 1.5));
    String body = BODIES[random.nextInt(BODIES.length)];
    double minutes = 10 + 110 * random.nextDouble();
    int quarter = date.getMonthValue() % 12 / 3;
    double logRate =
        0.3
            + day
            + effect("body " + body, 0.3)
            + effect("tone " + number % TONES.size(), 0.2)
            + effect("colour " + number, 0.4)
            + effect("colour " + number + species, 0.15)
            + effect("colour " + number + clarity, 0.15)
            + effect("colour " + number + " in " + quarter, 0.1);
    double gamma = -Math.log(1 - random.nextDouble()) - Math.log(1 - random.nextDouble());
    double left = minutes / 60 * Math.exp(logRate) * gamma / 2;
    int takes = 0;
    for (double wait = next(); wait < left; wait += next()) {
      takes++;
    }
    return new Stint(
        new Trip(date, Name.of("Gull Rocks")),
        Name.of(species),
        Optional.of(clarity),
        new Plastic(
            Name.BLANK, Name.of(body), colour(number), LENGTHS[random.nextInt(LENGTHS.length)]),
        OptionalDouble.of(minutes),
        OptionalInt.empty(),
        new Fish(takes, takes, 0, 0),
        0,
        Optional.empty(),
        0,
        1,
        "");
  }

  private double next() {
    return -Math.log(1 - random.nextDouble());
  }
}

package traytally.simulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Recorded;
import traytally.ledger.Settings;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * An angler with habits and hidden truths, who fishes day by day.
 *
 * <p>Starts a day with a favourite, stays while it takes and rotates when it does not; learns from
 * his own raw takes an hour; loses pieces by chance, ground and body; orders once a month what he
 * happens to miss, so that some trays stay empty.
 */
public final class SimulatedAngler {
  private static final LocalDate START = LocalDate.of(2024, 3, 2);
  private static final String[] COLOURS = {
    "ink", "olive", "amber", "teal", "rust", "pearl", "moss", "rose", "smoke", "sand", "plum",
    "lime"
  };
  private static final String[] BODIES = {"paddle", "craw", "straight", "curl", "shrimp"};
  private static final String[] WATERS = {"Gull Rocks", "Harbour Mouth", "Long Ledge"};
  private static final int[] LENGTHS = {60, 75, 100, 120};
  private static final int PACK = 8;

  private final Random random;
  private final List<Plastic> plastics;
  private final double[] colourEffect; // of each of COLOURS, log rate
  private final double[] takeRate; // plastics, takes an hour on a middling day
  private final double[] lossRate; // plastics, pieces an hour on a middling day
  private final double[] liking; // plastics, log weight
  private final double[] waterLoss; // waters, log rate
  private final double daySd;
  private final double lossDaySd;
  private final double takeDispersion;
  private final double lossDispersion;
  private final Set<Plastic> kept = new TreeSet<>();

  private final int[] pieces;
  private final double[] hours;
  private final int[] takes;
  private final List<Stint> log = new ArrayList<>();
  private final List<Movement> moves = new ArrayList<>();
  private final List<Fact.Counted> counts = new ArrayList<>();
  private LocalDate today = START;
  private LocalDate lastOrder = START;

  /**
   * An angler whose colours, bodies and days differ as much as the model expects of an angler: the
   * deviations are drawn from its priors.
   */
  public static SimulatedAngler ordinary(long seed) {
    Random random = random(seed);
    double colourSd = 0.4 * Math.abs(random.nextGaussian());
    double bodySd = 0.3 * Math.abs(random.nextGaussian());
    double daySd = 1.5 * Math.abs(random.nextGaussian());
    double dispersion = Math.exp(Math.log(2) + random.nextGaussian());
    return new SimulatedAngler(random, colourSd, bodySd, daySd, dispersion);
  }

  /** An angler whose colours often differ by more than the model expects. */
  public static SimulatedAngler withColoursFarApart(long seed) {
    Random random = random(seed);
    double colourSd = 0.1 + 0.6 * random.nextDouble();
    double bodySd = 0.05 + 0.4 * random.nextDouble();
    double daySd = 0.4 + 1.1 * random.nextDouble();
    double dispersion = Math.exp(Math.log(2) + 0.7 * random.nextGaussian());
    return new SimulatedAngler(random, colourSd, bodySd, daySd, dispersion);
  }

  private SimulatedAngler(
      Random random, double colourSd, double bodySd, double daySd, double takeDispersion) {
    this.random = random;
    this.daySd = daySd;
    this.takeDispersion = takeDispersion;
    lossDaySd = 0.6 * random.nextDouble();
    lossDispersion = 4;
    colourEffect = gaussians(COLOURS.length, colourSd);
    double[] bodyEffect = gaussians(BODIES.length, bodySd);
    double[] bodyLoss = gaussians(BODIES.length, 0.4);
    waterLoss = gaussians(WATERS.length, 0.4);
    plastics = new ArrayList<>();
    int kinds = 16 + random.nextInt(16);
    double base = 0.6 + 2 * random.nextDouble();
    double baseLoss = 0.3 + 0.5 * random.nextDouble();
    takeRate = new double[kinds];
    lossRate = new double[kinds];
    liking = gaussians(kinds, 1.2);
    pieces = new int[kinds];
    hours = new double[kinds];
    takes = new int[kinds];
    while (plastics.size() < kinds) {
      int colour = random.nextInt(COLOURS.length);
      int body = random.nextInt(BODIES.length);
      int length = LENGTHS[random.nextInt(LENGTHS.length)];
      Plastic plastic = Plastic.of("", BODIES[body], COLOURS[colour], length);
      if (!plastics.contains(plastic)) {
        int p = plastics.size();
        takeRate[p] = base * Math.exp(colourEffect[colour] + bodyEffect[body]);
        lossRate[p] = baseLoss * Math.exp(bodyLoss[body] + 0.2 * random.nextGaussian());
        plastics.add(plastic);
      }
    }
    for (int p = 0; p < kinds; p++) {
      pieces[p] = 2 + random.nextInt(12);
      if (random.nextInt(4) == 0) {
        kept.add(plastics.get(p));
      }
    }
  }

  /** A copy whose future is drawn anew. */
  private SimulatedAngler(SimulatedAngler other, long seed) {
    random = random(seed);
    plastics = other.plastics;
    colourEffect = other.colourEffect;
    takeRate = other.takeRate;
    lossRate = other.lossRate;
    liking = other.liking;
    waterLoss = other.waterLoss;
    daySd = other.daySd;
    lossDaySd = other.lossDaySd;
    takeDispersion = other.takeDispersion;
    lossDispersion = other.lossDispersion;
    pieces = other.pieces.clone();
    hours = other.hours.clone();
    takes = other.takes.clone();
    today = other.today;
    lastOrder = other.lastOrder;
  }

  /** Neighbouring seeds of Random begin alike; a factor spreads them (Knuth's golden ratio). */
  private static Random random(long seed) {
    return new Random(seed * 0x9E3779B97F4A7C15L);
  }

  private double[] gaussians(int count, double sd) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = sd * random.nextGaussian();
    }
    return values;
  }

  /** Counts the whole box today: from now on a ledger is kept. */
  public void countBox() {
    for (int p = 0; p < plastics.size(); p++) {
      counts.add(new Fact.Counted(plastics.get(p), today, pieces[p], true));
      if (pieces[p] > 0) {
        moves.add(Movement.of(today, MovementKind.OPENING, plastics.get(p), pieces[p]));
      }
    }
  }

  /** Fishes this many trips, ordering once a month. */
  public void fish(int trips) {
    for (PlannedTrip trip : plan(trips)) {
      if (trip.date().isAfter(lastOrder.plusDays(30))) {
        order(trip.date().minusDays(1));
      }
      fish(trip, false);
      today = trip.date();
    }
  }

  /** The next trips, as the angler would plan them. */
  public List<PlannedTrip> plan(int trips) {
    List<PlannedTrip> plan = new ArrayList<>();
    LocalDate date = today;
    for (int i = 0; i < trips; i++) {
      date = date.plusDays(3 + random.nextInt(8));
      Name water = Name.of(WATERS[random.nextInt(WATERS.length)]);
      plan.add(
          new PlannedTrip(
              date, water, Name.BLANK, Optional.empty(), 2 + 4 * random.nextDouble(), 1, ""));
    }
    return plan;
  }

  private void order(LocalDate date) {
    lastOrder = date;
    for (int p = 0; p < plastics.size(); p++) {
      if (pieces[p] <= 2 && random.nextDouble() < 0.45) {
        pieces[p] += PACK;
        if (!counts.isEmpty()) {
          moves.add(Movement.of(date, MovementKind.BOUGHT, plastics.get(p), PACK));
        }
      }
    }
  }

  /**
   * The pieces the planned trips would take, by plastic; nothing is ordered on the way.
   *
   * @param endless the plastics whose trays never empty; the others stay as they are
   * @param closed the plastics that are not in the box
   */
  public int[] future(
      List<PlannedTrip> plan, Set<Plastic> endless, Set<Plastic> closed, long seed) {
    SimulatedAngler copy = new SimulatedAngler(this, seed);
    int[] before = new int[pieces.length];
    for (int p = 0; p < before.length; p++) {
      if (endless.contains(plastics.get(p))) {
        copy.pieces[p] = 1_000_000;
      } else if (closed.contains(plastics.get(p))) {
        copy.pieces[p] = 0;
      }
      before[p] = copy.pieces[p];
    }
    plan.forEach(trip -> copy.fish(trip, true));
    for (int p = 0; p < before.length; p++) {
      before[p] -= copy.pieces[p];
    }
    return before;
  }

  private void fish(PlannedTrip plan, boolean future) {
    double day = daySd * random.nextGaussian();
    double lossDay =
        lossDaySd * random.nextGaussian() + waterLoss[List.of(WATERS).indexOf(plan.water().text())];
    double left = plan.hours();
    int on = choose(-1);
    while (left > 0.02 && on >= 0) {
      double time = Math.min(left, 0.2 - 0.4 * Math.log(1 - random.nextDouble()));
      int lost = count(lossRate[on] * Math.exp(lossDay) * time, lossDispersion);
      if (lost >= pieces[on]) {
        // The last piece ends the stretch, when so many of the losses that were to come had come.
        time *= pieces[on] / (lost + 1.0);
        lost = pieces[on];
      }
      int caught = count(takeRate[on] * Math.exp(day) * time, takeDispersion);
      pieces[on] -= lost;
      hours[on] += time;
      takes[on] += caught;
      left -= time;
      if (!future) {
        record(plan, plastics.get(on), time, caught, lost);
      }
      boolean stay = pieces[on] > 0 && random.nextDouble() < (caught > 0 ? 0.8 : 0.3);
      on = stay ? on : choose(on);
    }
  }

  /** The next plastic, by liking and by what it did so far; -1 where every tray is empty. */
  private int choose(int now) {
    double allHours = 1;
    double allTakes = 1;
    for (int p = 0; p < hours.length; p++) {
      allHours += hours[p];
      allTakes += takes[p];
    }
    double mean = allTakes / allHours;
    double[] weight = new double[plastics.size()];
    double sum = 0;
    for (int p = 0; p < weight.length; p++) {
      double learned = Math.log((takes[p] + 4 * mean) / (hours[p] + 4) / mean);
      weight[p] = pieces[p] > 0 && p != now ? Math.exp(liking[p] + 1.2 * learned) : 0;
      sum += weight[p];
    }
    if (sum == 0) {
      return now >= 0 && pieces[now] > 0 ? now : -1;
    }
    double at = random.nextDouble() * sum;
    int p = 0;
    while (at > weight[p] || weight[p] == 0) {
      at -= weight[p];
      p++;
    }
    return p;
  }

  /** Poisson about a gamma mean: negative binomial. */
  private int count(double mean, double dispersion) {
    double rate = mean * gamma(dispersion) / dispersion;
    int count = 0;
    double product = random.nextDouble();
    double limit = Math.exp(-Math.min(rate, 500));
    while (product > limit) {
      count++;
      product *= random.nextDouble();
    }
    return count;
  }

  /** Marsaglia &amp; Tsang, ACM Transactions on Mathematical Software 26(3), 2000, 363–372. */
  private double gamma(double shape) {
    if (shape < 1) {
      return gamma(shape + 1) * Math.pow(1 - random.nextDouble(), 1 / shape);
    }
    double d = shape - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double x = random.nextGaussian();
      double v = Math.pow(1 + c * x, 3);
      double u = 1 - random.nextDouble();
      if (v > 0 && Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
        return d * v;
      }
    }
  }

  private void record(PlannedTrip plan, Plastic plastic, double time, int caught, int lost) {
    log.add(
        new Stint(
            new Trip(plan.date(), plan.water()),
            Name.BLANK,
            Optional.empty(),
            plastic,
            OptionalDouble.of(time * 60),
            OptionalInt.empty(),
            new Fish(caught, caught, 0, 0),
            lost,
            Optional.empty(),
            0,
            1,
            ""));
    if (lost > 0 && !counts.isEmpty()) {
      moves.add(Movement.of(plan.date(), MovementKind.LOST, plastic, -lost));
    }
  }

  /** The log, the ledger since the box was counted, the plastics kept, and a plan. */
  public Book book(List<PlannedTrip> plan) {
    List<Recorded<Movement>> recorded = new ArrayList<>();
    moves.forEach(move -> recorded.add(new Recorded<>(recorded.size(), 1, move)));
    List<Recorded<? extends Fact>> facts = new ArrayList<>();
    counts.forEach(count -> facts.add(new Recorded<>(facts.size(), 1, count)));
    log.forEach(
        s -> facts.add(new Recorded<>(facts.size(), 1, new Fact.Fished(s, facts.size(), 1, ""))));
    kept.forEach(p -> facts.add(new Recorded<>(facts.size(), 1, new Fact.Kept(p))));
    plan.forEach(t -> facts.add(new Recorded<>(facts.size(), 1, new Fact.Planned(t, ""))));
    return new Book(List.of(), new Ledger(recorded), facts, Settings.standard(), 1_000_000);
  }

  public LocalDate today() {
    return today;
  }

  public List<Plastic> plastics() {
    return List.copyOf(plastics);
  }

  public List<Stint> log() {
    return List.copyOf(log);
  }

  /** The hidden truth: a colour's log rate. */
  public double effect(Name colour) {
    return colourEffect[List.of(COLOURS).indexOf(colour.text())];
  }
}

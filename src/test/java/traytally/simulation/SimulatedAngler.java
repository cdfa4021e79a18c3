package traytally.simulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
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
  private static final int MOST_KINDS = 32;

  private Luck random;
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
    Luck random = new Luck(seed);
    double colourSd = 0.4 * Math.abs(random.gaussian());
    double bodySd = 0.3 * Math.abs(random.gaussian());
    double daySd = 1.5 * Math.abs(random.gaussian());
    double dispersion = Math.exp(Math.log(2) + random.gaussian());
    return new SimulatedAngler(
        random, colourSd, bodySd, daySd, dispersion, COLOURS.length, MOST_KINDS);
  }

  /** An ordinary angler with a small or a large collection: 5 to 80 colours. */
  public static SimulatedAngler withAnyCollection(long seed) {
    Luck random = new Luck(seed);
    double colourSd = 0.4 * Math.abs(random.gaussian());
    double bodySd = 0.3 * Math.abs(random.gaussian());
    double daySd = 1.5 * Math.abs(random.gaussian());
    double dispersion = Math.exp(Math.log(2) + random.gaussian());
    int colours = 5 + random.below(76);
    return new SimulatedAngler(random, colourSd, bodySd, daySd, dispersion, colours, 3 * colours);
  }

  /** An angler whose colours often differ by more than the model expects. */
  public static SimulatedAngler withColoursFarApart(long seed) {
    Luck random = new Luck(seed);
    double colourSd = 0.1 + 0.6 * random.share();
    double bodySd = 0.05 + 0.4 * random.share();
    double daySd = 0.4 + 1.1 * random.share();
    double dispersion = Math.exp(Math.log(2) + 0.7 * random.gaussian());
    return new SimulatedAngler(
        random, colourSd, bodySd, daySd, dispersion, COLOURS.length, MOST_KINDS);
  }

  private SimulatedAngler(
      Luck random,
      double colourSd,
      double bodySd,
      double daySd,
      double takeDispersion,
      int colours,
      int mostKinds) {
    this.random = random;
    this.daySd = daySd;
    this.takeDispersion = takeDispersion;
    lossDaySd = 0.6 * random.share();
    lossDispersion = 4;
    colourEffect = random.gaussians(colours, colourSd);
    double[] bodyEffect = random.gaussians(BODIES.length, bodySd);
    double[] bodyLoss = random.gaussians(BODIES.length, 0.4);
    waterLoss = random.gaussians(WATERS.length, 0.4);
    plastics = new ArrayList<>();
    int kinds = mostKinds / 2 + random.below(mostKinds / 2);
    double base = 0.6 + 2 * random.share();
    double baseLoss = 0.3 + 0.5 * random.share();
    takeRate = new double[kinds];
    lossRate = new double[kinds];
    liking = random.gaussians(kinds, 1.2);
    pieces = new int[kinds];
    hours = new double[kinds];
    takes = new int[kinds];
    while (plastics.size() < kinds) {
      int colour = random.below(colours);
      int body = random.below(BODIES.length);
      int length = LENGTHS[random.below(LENGTHS.length)];
      Plastic plastic = Plastic.of("", BODIES[body], colourName(colour), length);
      if (!plastics.contains(plastic)) {
        int p = plastics.size();
        takeRate[p] = base * Math.exp(colourEffect[colour] + bodyEffect[body]);
        lossRate[p] = baseLoss * Math.exp(bodyLoss[body] + 0.2 * random.gaussian());
        plastics.add(plastic);
      }
    }
    for (int p = 0; p < kinds; p++) {
      pieces[p] = 2 + random.below(12);
      if (random.below(4) == 0) {
        kept.add(plastics.get(p));
      }
    }
  }

  /** A copy whose future is drawn anew. */
  private SimulatedAngler(SimulatedAngler other, long seed) {
    random = new Luck(seed);
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
      fish(trip, false, Missing.IGNORED);
      today = trip.date();
    }
  }

  /** The next trips, as the angler would plan them. */
  public List<PlannedTrip> plan(int trips) {
    List<PlannedTrip> plan = new ArrayList<>();
    LocalDate date = today;
    for (int i = 0; i < trips; i++) {
      date = date.plusDays(3 + random.below(8));
      Name water = Name.of(WATERS[random.below(WATERS.length)]);
      plan.add(
          new PlannedTrip(
              date, water, Name.BLANK, Optional.empty(), 2 + 4 * random.share(), 1, ""));
    }
    return plan;
  }

  private void order(LocalDate date) {
    lastOrder = date;
    for (int p = 0; p < plastics.size(); p++) {
      if (pieces[p] <= 2 && random.share() < 0.45) {
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
    plan.forEach(trip -> copy.fish(trip, true, Missing.IGNORED));
    for (int p = 0; p < before.length; p++) {
      before[p] -= copy.pieces[p];
    }
    return before;
  }

  /**
   * Fishes the planned trips with what was bought in the trays, nothing else being ordered.
   *
   * @param bought pieces more, by plastic
   * @param seed the same seed brings the same days
   */
  public Season play(List<PlannedTrip> plan, Map<Plastic, Integer> bought, long seed) {
    SimulatedAngler copy = new SimulatedAngler(this, seed);
    for (int p = 0; p < pieces.length; p++) {
      copy.pieces[p] += bought.getOrDefault(plastics.get(p), 0);
    }
    int[] before = copy.pieces.clone();
    double[] fished = hours.clone();
    Season.Tally tally = new Season.Tally(plastics, takeRate);
    for (int t = 0; t < plan.size(); t++) {
      // Days are drawn afresh, so that what was bought does not change tomorrow's weather.
      copy.random = new Luck(31 * seed + t);
      copy.fish(plan.get(t), true, tally::fished);
    }
    for (int p = 0; p < before.length; p++) {
      before[p] -= copy.pieces[p];
      fished[p] = copy.hours[p] - fished[p];
    }
    return tally.season(before, fished);
  }

  private void fish(PlannedTrip plan, boolean future, Missing missing) {
    double day = daySd * random.gaussian();
    double lossDay =
        lossDaySd * random.gaussian() + waterLoss[List.of(WATERS).indexOf(plan.water().text())];
    double left = plan.hours();
    int wanted = choose(-1, true);
    int on = pieces[wanted] > 0 ? wanted : choose(wanted, false);
    while (left > 0.02 && on >= 0) {
      double time = Math.min(left, 0.2 - 0.4 * Math.log(1 - random.share()));
      int lost = random.count(lossRate[on] * Math.exp(lossDay) * time, lossDispersion);
      if (lost >= pieces[on]) {
        // The last piece ends the stretch, when so many of the losses that were to come had come.
        time *= pieces[on] / (lost + 1.0);
        lost = pieces[on];
      }
      int caught = random.count(takeRate[on] * Math.exp(day) * time, takeDispersion);
      if (wanted != on) {
        missing.fished(wanted, on, time * Math.exp(day), pieces);
      }
      pieces[on] -= lost;
      hours[on] += time;
      takes[on] += caught;
      left -= time;
      if (!future) {
        record(plan, plastics.get(on), time, caught, lost);
      }
      if (pieces[on] == 0) {
        on = choose(on, false);
      } else if (random.share() >= (caught > 0 ? 0.8 : 0.3)) {
        wanted = choose(on, true);
        on = pieces[wanted] > 0 ? wanted : choose(on, false);
      }
    }
  }

  /** Is told when a plastic is fished in the place of one whose tray is empty. */
  private interface Missing {
    Missing IGNORED = (wanted, on, hours, pieces) -> {};

    /** So many hours, weighted by how the fish bit that day. */
    void fished(int wanted, int on, double hours, int[] pieces);
  }

  /**
   * The next plastic, by liking and by what it did so far; the same again where there is no other,
   * -1 where every tray is empty.
   *
   * <p>Who wants a plastic from all, and finds its tray empty, chooses again from the others: by
   * Luce's rule the same as choosing from the others at once.
   *
   * @param all whether empty trays count as well
   */
  private int choose(int now, boolean all) {
    double[] weight = weights();
    double sum = 0;
    for (int p = 0; p < weight.length; p++) {
      weight[p] = (all || pieces[p] > 0) && p != now ? weight[p] : 0;
      sum += weight[p];
    }
    if (sum == 0) {
      return now >= 0 && pieces[now] > 0 ? now : -1;
    }
    double at = random.share() * sum;
    int p = 0;
    while (at > weight[p] || weight[p] == 0) {
      at -= weight[p];
      p++;
    }
    return p;
  }

  private double[] weights() {
    double allHours = 1;
    double allTakes = 1;
    for (int p = 0; p < hours.length; p++) {
      allHours += hours[p];
      allTakes += takes[p];
    }
    double mean = allTakes / allHours;
    double[] weight = new double[plastics.size()];
    for (int p = 0; p < weight.length; p++) {
      double learned = Math.log((takes[p] + 4 * mean) / (hours[p] + 4) / mean);
      weight[p] = Math.exp(liking[p] + 1.2 * learned);
    }
    return weight;
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

  /** Pieces in every tray, in the order of {@link #plastics}. */
  public int[] pieces() {
    return pieces.clone();
  }

  /** The hidden truth: takes an hour on a middling day, in the order of {@link #plastics}. */
  public double[] takeRates() {
    return takeRate.clone();
  }

  /**
   * The hidden truth: each plastic's part of the choices now, in the order of {@link #plastics}.
   */
  public double[] shares() {
    double[] share = weights();
    double sum = Arrays.stream(share).sum();
    Arrays.setAll(share, p -> share[p] / sum);
    return share;
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
    int number = 0;
    while (!colourName(number).equals(colour.text())) {
      number++;
    }
    return colourEffect[number];
  }

  private static String colourName(int number) {
    String name = COLOURS[number % COLOURS.length];
    return number < COLOURS.length ? name : name + " " + number / COLOURS.length;
  }
}

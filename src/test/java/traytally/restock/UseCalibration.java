package traytally.restock;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.LongFunction;
import traytally.ledger.Book;
import traytally.plastic.Plastic;
import traytally.simulation.SimulatedAngler;
import traytally.trip.PlannedTrip;

/** How forecasts of use and run-out chances come true over simulated anglers. */
final class UseCalibration {
  private static final int BINS = 10;
  private static final int COMING_TRIPS = 6;

  private final int anglers;
  private final int futures;
  private double forecast;
  private double truth;
  private double forecastOfEmpty;
  private double truthOfEmpty;
  private int emptyTrays;
  private double withinBound;
  private double bounds;
  private double statedWithin;
  private final double[] stated = new double[BINS];
  private final double[] came = new double[BINS];
  private final double[] count = new double[BINS];

  /**
   * Lets each angler fish, half of the trips before the box was counted, and looks ahead.
   *
   * @param futures how often each angler's coming trips are drawn
   */
  UseCalibration(
      int anglers, int trips, int futures, LongFunction<SimulatedAngler> kind, long firstSeed) {
    this.anglers = anglers;
    this.futures = futures;
    for (int i = 0; i < anglers; i++) {
      SimulatedAngler angler = kind.apply(firstSeed + i);
      angler.fish(trips / 2);
      angler.countBox();
      angler.fish(trips - trips / 2);
      add(angler, firstSeed + i);
    }
  }

  private void add(SimulatedAngler angler, long seed) {
    List<PlannedTrip> plan = angler.plan(COMING_TRIPS);
    Book book = angler.book(plan);
    Outlook outlook =
        Outlook.of(
            book,
            angler.today(),
            new Asked(Optional.empty(), OptionalInt.of(COMING_TRIPS), Set.of()),
            4);
    Set<Plastic> open = new TreeSet<>();
    Set<Plastic> closed = new TreeSet<>();
    for (Plastic plastic : angler.plastics()) {
      Prospect prospect = prospect(outlook, plastic);
      (prospect.pieces().count() > 0 || prospect.wanted() ? open : closed).add(plastic);
    }
    for (int f = 0; f < futures; f++) {
      long draw = seed * 1000 + f;
      int[] endless = angler.future(plan, open, closed, draw);
      int[] asItIs = angler.future(plan, Set.of(), Set.of(), draw);
      for (int p = 0; p < endless.length; p++) {
        Plastic plastic = angler.plastics().get(p);
        if (open.contains(plastic)) {
          use(prospect(outlook, plastic), endless[p], f == 0);
        }
        runOut(prospect(outlook, plastic), asItIs[p]);
      }
    }
  }

  private static Prospect prospect(Outlook outlook, Plastic plastic) {
    return outlook.prospect(plastic).orElseThrow();
  }

  private void use(Prospect prospect, int used, boolean first) {
    forecast += prospect.expectedUse();
    truth += used;
    if (prospect.pieces().count() == 0) {
      forecastOfEmpty += prospect.expectedUse();
      truthOfEmpty += used;
      emptyTrays += first ? 1 : 0;
    }
    int bound = prospect.useP90();
    bounds++;
    withinBound += used <= bound ? 1 : 0;
    // A count's bound holds more than nine in ten: the distribution's own share is the aim.
    statedWithin += prospect.endless().distribution().cumulative(bound);
  }

  private void runOut(Prospect prospect, int used) {
    int pieces = prospect.pieces().count();
    if (pieces > 0) {
      double chance = prospect.runOutChance();
      int bin = Math.min(BINS - 1, (int) (chance * BINS));
      stated[bin] += chance;
      came[bin] += used >= pieces ? 1 : 0;
      count[bin]++;
    }
  }

  /** Forecast over truth, all plastics in play together. */
  double ratio() {
    return forecast / truth;
  }

  /** Forecast over truth of the trays that are empty today. */
  double ratioOfEmpty() {
    return forecastOfEmpty / truthOfEmpty;
  }

  /** How often the 90 % bound held. */
  double coverage() {
    return withinBound / bounds;
  }

  /** How often it would hold by the forecast's own word. */
  double statedCoverage() {
    return statedWithin / bounds;
  }

  /** Expected calibration error of run-out chances. */
  double runOutError() {
    double error = 0;
    double all = 0;
    for (int b = 0; b < BINS; b++) {
      error += Math.abs(stated[b] - came[b]);
      all += count[b];
    }
    return error / all;
  }

  @Override
  public String toString() {
    StringBuilder bins = new StringBuilder();
    for (int b = 0; b < BINS; b++) {
      bins.append(
          String.format(
              Locale.ROOT, " %.2f:%.2f(%.0f)", stated[b] / count[b], came[b] / count[b], count[b]));
    }
    return String.format(
        Locale.ROOT,
        "%d anglers: forecast/truth %.3f, of %d empty trays %.3f; bound held %.3f (stated %.3f);"
            + " run-out error %.4f;%s",
        anglers,
        ratio(),
        emptyTrays,
        ratioOfEmpty(),
        coverage(),
        statedCoverage(),
        runOutError(),
        bins);
  }
}

package traytally.restock;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.LongFunction;
import traytally.blackbox.Json;
import traytally.cli.Ran;
import traytally.ledger.Offer;
import traytally.plastic.Packs;
import traytally.plastic.Plastic;
import traytally.simulation.Season;
import traytally.simulation.SimulatedAngler;
import traytally.trip.PlannedTrip;

/**
 * Decision quality over simulated seasons: the takes lost to empty trays at equal spend, on a scale
 * where perfect knowledge is 0 and the better of two kitchen rules 1.
 *
 * <p>Each angler's four sheets are brought in and the list is printed by the real commands; then
 * the coming trips are played with what each buyer bought, on the same days.
 */
final class Seasons {
  /** The day on which commands are run in tests. */
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 1);

  private static final int COMING_TRIPS = 6;

  private final int futures;
  private final Path folder;
  private final List<Map<Measure, Map<Buyer, Double>>> lost = new ArrayList<>(); // by angler

  /** How the takes lost to empty trays are counted. */
  enum Measure {
    /** Against what was tied on instead, where that was worse. */
    LOST,
    /** Against the best that could have been tied on instead. */
    LOST_TO_BEST,
    /** Against what was tied on instead, be it worse or better: fish in a season. */
    BALANCE;

    double of(Season season) {
      return switch (this) {
        case LOST -> season.lost();
        case LOST_TO_BEST -> season.lostToBest();
        case BALANCE -> season.balance();
      };
    }
  }

  private enum Buyer {
    NOBODY,
    BELOW_FIVE,
    BEST_RAW,
    PROGRAM,
    PERFECT
  }

  /**
   * Plays seasons.
   *
   * @param trips logged before
   * @param futures how often each angler's coming trips are played
   */
  Seasons(
      Path folder,
      int anglers,
      int trips,
      int futures,
      LongFunction<SimulatedAngler> kind,
      long firstSeed) {
    this.folder = folder;
    this.futures = futures;
    for (int i = 0; i < anglers; i++) {
      SimulatedAngler angler = kind.apply(firstSeed + i);
      angler.fish(trips);
      play(angler, firstSeed + i);
    }
  }

  private void play(SimulatedAngler angler, long seed) {
    List<PlannedTrip> plan = angler.plan(COMING_TRIPS);
    SeasonShops shops = SeasonShops.of(angler.plastics(), seed);
    SeasonBuyers others = new SeasonBuyers(angler, plan, shops);
    List<Purchase> program = program(angler, plan, shops);
    Map<Measure, Map<Buyer, Double>> own = new EnumMap<>(Measure.class);
    for (Measure measure : Measure.values()) {
      Map<Buyer, Double> takes = new EnumMap<>(Buyer.class);
      for (Buyer buyer : Buyer.values()) {
        List<Purchase> bought =
            switch (buyer) {
              case NOBODY -> List.of();
              case BELOW_FIVE -> others.everythingBelowFive();
              case BEST_RAW -> others.bestRawColours();
              case PROGRAM -> program;
              case PERFECT -> others.perfectKnowledge(measure);
            };
        takes.put(buyer, mean(angler, plan, shops, bought, measure, seed));
      }
      own.put(measure, takes);
    }
    lost.add(own);
  }

  private double mean(
      SimulatedAngler angler,
      List<PlannedTrip> plan,
      SeasonShops shops,
      List<Purchase> bought,
      Measure measure,
      long seed) {
    if (shops.total(bought).compareTo(shops.budget()) > 0) {
      throw new IllegalStateException("spent more than " + shops.budget() + ": " + bought);
    }
    Map<Plastic, Integer> pieces = new HashMap<>();
    bought.forEach(p -> pieces.merge(p.offer().plastic(), p.pieces().count(), Integer::sum));
    double sum = 0;
    for (int f = 0; f < futures; f++) {
      sum += measure.of(angler.play(plan, pieces, seed * 1000 + f));
    }
    return sum / futures;
  }

  /** Brings the sheets in, asks for the list, and reads what it says to buy. */
  private List<Purchase> program(
      SimulatedAngler angler, List<PlannedTrip> plan, SeasonShops shops) {
    try {
      Path own = Files.createTempDirectory(folder, "angler");
      long shift = ChronoUnit.DAYS.between(angler.today(), TODAY.minusDays(1));
      SeasonSheets sheets = new SeasonSheets(own, shift);
      Ran read =
          Ran.in(
              own,
              "import",
              sheets.box(angler).toString(),
              sheets.trips(angler.log()).toString(),
              sheets.plan(plan).toString(),
              sheets.prices(shops).toString());
      if (read.code() != 0) {
        throw new IllegalStateException(read.out() + read.err());
      }
      Ran list = Ran.in(own, "restock", "--budget", shops.budget().amount(), "--format", "json");
      if (list.code() != 0) {
        throw new IllegalStateException(list.out() + list.err());
      }
      return bought(Json.parse(list.out()), shops);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Purchase> bought(Json list, SeasonShops shops) {
    List<Purchase> bought = new ArrayList<>();
    for (Json row : list.rows()) {
      int packs = (int) row.number("packs");
      if (packs > 0) {
        Plastic plastic =
            Plastic.of("", row.text("body"), row.text("colour"), (int) row.number("length_mm"));
        Offer offer =
            shops.offers().stream()
                .filter(o -> o.plastic().equals(plastic))
                .filter(o -> o.shop().text().equals(row.text("shop")))
                .filter(o -> o.packSize() == (int) row.number("pack_size"))
                .findFirst()
                .orElseThrow();
        bought.add(new Purchase(offer, new Packs(packs)));
      }
    }
    return bought;
  }

  /** Takes lost, summed over the anglers. */
  private double sum(Measure measure, Buyer buyer, int without) {
    double sum = 0;
    for (int a = 0; a < lost.size(); a++) {
      sum += a == without ? 0 : lost.get(a).get(measure).get(buyer);
    }
    return sum;
  }

  private double quality(Measure measure, int without) {
    double perfect = sum(measure, Buyer.PERFECT, without);
    double kitchen =
        Math.min(sum(measure, Buyer.BELOW_FIVE, without), sum(measure, Buyer.BEST_RAW, without));
    return (sum(measure, Buyer.PROGRAM, without) - perfect) / (kitchen - perfect);
  }

  /** q: 0 as good as perfect knowledge, 1 as a kitchen rule. */
  double quality(Measure measure) {
    return quality(measure, -1);
  }

  /**
   * Its standard error, by leaving out one angler at a time (Efron, Annals of Statistics 7, 1979).
   */
  double error(Measure measure) {
    int n = lost.size();
    double[] without = new double[n];
    Arrays.setAll(without, a -> quality(measure, a));
    double mean = Arrays.stream(without).average().orElseThrow();
    double squares = Arrays.stream(without).map(q -> (q - mean) * (q - mean)).sum();
    return Math.sqrt(squares * (n - 1) / n);
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(lost.size() + " anglers:");
    for (Measure measure : Measure.values()) {
      text.append(
          String.format(
              Locale.ROOT, "\n  %-12s q %.3f (%.3f)", measure, quality(measure), error(measure)));
      for (Buyer buyer : Buyer.values()) {
        text.append(
            String.format(Locale.ROOT, " %s %.2f", buyer, sum(measure, buyer, -1) / lost.size()));
      }
    }
    return text.toString();
  }
}

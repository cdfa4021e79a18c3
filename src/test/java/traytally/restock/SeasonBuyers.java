package traytally.restock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import traytally.ledger.Offer;
import traytally.plastic.Name;
import traytally.plastic.Packs;
import traytally.plastic.Plastic;
import traytally.simulation.Season;
import traytally.simulation.SimulatedAngler;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;

/**
 * What others than the program would buy for the same money: kitchen rules and perfect knowledge.
 */
record SeasonBuyers(SimulatedAngler angler, List<PlannedTrip> plan, SeasonShops shops) {
  /** A kitchen rule's "nearly gone". */
  private static final int FEW = 5;

  /** Seasons that perfect knowledge looks at; others than those played. */
  private static final int LOOKS = 300;

  private static final long LOOK_SEED = 77_000_000_000L;

  /** Tops up everything below five, the fewest first. */
  List<Purchase> everythingBelowFive() {
    List<Plastic> few = fewest();
    return inTurn(few);
  }

  /** Tops up what is below five of the colours with most raw takes an hour. */
  List<Purchase> bestRawColours() {
    Map<Name, double[]> raw = new HashMap<>(); // takes, hours
    for (Stint stint : angler.log()) {
      double[] sum = raw.computeIfAbsent(stint.plastic().colour(), c -> new double[2]);
      sum[0] += stint.fish().takes();
      sum[1] += stint.minutes().orElseThrow() / 60;
    }
    List<Plastic> few = fewest();
    few.removeIf(plastic -> !raw.containsKey(plastic.colour()));
    few.sort(
        Comparator.comparingDouble(
            plastic -> -raw.get(plastic.colour())[0] / raw.get(plastic.colour())[1]));
    return inTurn(few);
  }

  private List<Plastic> fewest() {
    Map<Plastic, Integer> pieces = new TreeMap<>();
    for (int p = 0; p < angler.plastics().size(); p++) {
      if (angler.pieces()[p] < FEW) {
        pieces.put(angler.plastics().get(p), angler.pieces()[p]);
      }
    }
    List<Plastic> few = new ArrayList<>(pieces.keySet());
    few.sort(Comparator.comparing(pieces::get));
    return few;
  }

  /** A pack each in turn, where it adds least to the bill for a piece, while the money lasts. */
  private List<Purchase> inTurn(List<Plastic> wanted) {
    List<Purchase> bought = new ArrayList<>();
    for (Plastic plastic : wanted) {
      Optional<List<Purchase>> best = Optional.empty();
      double least = Double.POSITIVE_INFINITY;
      for (Offer offer : shops.offers()) {
        if (offer.plastic().equals(plastic)) {
          List<Purchase> more = new ArrayList<>(bought);
          more.add(new Purchase(offer, new Packs(1)));
          double each =
              shops.total(more).minus(shops.total(bought)).cents() / (double) offer.packSize();
          if (shops.total(more).compareTo(shops.budget()) <= 0 && each < least) {
            best = Optional.of(more);
            least = each;
          }
        }
      }
      bought = best.orElse(bought);
    }
    return bought;
  }

  /** The best for who knows every rate and every chance. */
  List<Purchase> perfectKnowledge(Seasons.Measure measure) {
    List<Plastic> plastics = angler.plastics();
    int[][] used = new int[plastics.size()][LOOKS];
    double[] hours = new double[plastics.size()];
    double[] pieces = new double[plastics.size()];
    Map<Plastic, Integer> endless = new HashMap<>();
    plastics.forEach(plastic -> endless.put(plastic, 100_000));
    for (int look = 0; look < LOOKS; look++) {
      Season season = angler.play(plan, endless, LOOK_SEED + look);
      for (int p = 0; p < used.length; p++) {
        used[p][look] = season.used().get(p);
        pieces[p] += season.used().get(p);
        hours[p] += season.hours().get(p);
      }
    }
    Map<Plastic, Basket.Gain> gains = new TreeMap<>();
    for (int p = 0; p < used.length; p++) {
      double edge = edge(p, measure);
      if (edge > 0 && pieces[p] > 0) {
        int own = p;
        double each = edge * hours[p] / pieces[p];
        int had = angler.pieces()[p];
        gains.put(
            plastics.get(p),
            new Basket.Gain(
                60,
                more -> each * (shortage(used[own], had) - shortage(used[own], had + more)),
                false));
      }
    }
    return new Basket(shops.market())
        .within(shops.budget(), gains).values().stream().flatMap(List::stream).toList();
  }

  private double edge(int wanted, Seasons.Measure measure) {
    double[] rate = angler.takeRates();
    double[] share = angler.shares();
    double weight = 0;
    double sum = 0;
    double like = 0;
    double any = 0;
    for (int p = 0; p < rate.length; p++) {
      if (p != wanted && angler.pieces()[p] > 0) {
        double less = rate[wanted] - rate[p];
        weight += share[p];
        sum += share[p] * (measure == Seasons.Measure.LOST ? Math.max(0, less) : less);
        any = Math.max(any, rate[p]);
        Plastic plastic = angler.plastics().get(p);
        Plastic own = angler.plastics().get(wanted);
        if (plastic.colour().equals(own.colour()) || plastic.body().equals(own.body())) {
          like = Math.max(like, rate[p]);
        }
      }
    }
    return measure == Seasons.Measure.LOST_TO_BEST
        ? rate[wanted] - (like > 0 ? like : any)
        : weight > 0 ? sum / weight : rate[wanted];
  }

  private static double shortage(int[] used, int pieces) {
    double sum = 0;
    for (int each : used) {
      sum += Math.max(0, each - pieces);
    }
    return sum / used.length;
  }
}

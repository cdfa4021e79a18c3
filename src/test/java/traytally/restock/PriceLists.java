package traytally.restock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import traytally.plastic.Plastic;

/** Invented price lists: what many plastics cost in some shops, and what each is worth. */
final class PriceLists {
  private PriceLists() {}

  static List<Plastic> plastics(int count) {
    List<Plastic> plastics = new ArrayList<>();
    for (int p = 0; p < count; p++) {
      plastics.add(Plastic.of("", "paddle", "colour " + p, 75));
    }
    return plastics;
  }

  /**
   * Each plastic in one shop for certain and in each other with a chance of one third, packs of
   * four to nine pieces, now and then a pack of twice as many; postage from 2 to 6, free from
   * {@code freeFrom} to three times as much.
   */
  static Market market(Random random, List<Plastic> plastics, int shops, double freeFrom) {
    BoxBuilder box = new BoxBuilder();
    for (Plastic plastic : plastics) {
      int sure = random.nextInt(shops);
      for (int shop = 0; shop < shops; shop++) {
        if (shop == sure || random.nextInt(3) == 0) {
          int size = 4 + random.nextInt(6);
          box.offered("Shop " + shop, plastic, size, 0.5 * size + 2 * random.nextDouble());
          if (random.nextInt(5) == 0) {
            box.offered("Shop " + shop, plastic, 2 * size, 0.9 * size + 2 * random.nextDouble());
          }
        }
      }
    }
    for (int shop = 0; shop < shops; shop++) {
      double over = freeFrom * (1 + 2 * random.nextDouble());
      box.postage("Shop " + shop, 2 + 4 * random.nextDouble(), over);
    }
    return Market.of(box.book(), Set.of());
  }

  /** Worths that fall from pack to pack, as an expected shortage does. */
  static Map<Plastic, Basket.Gain> gains(Random random, List<Plastic> plastics) {
    Map<Plastic, Basket.Gain> gains = new TreeMap<>();
    plastics.forEach(plastic -> gains.put(plastic, gain(random)));
    return gains;
  }

  static Basket.Gain gain(Random random) {
    double edge = 0.2 + random.nextDouble();
    double mean = 1 + 8 * random.nextDouble();
    return new Basket.Gain(40, pieces -> edge * mean * (1 - Math.exp(-pieces / mean)), false);
  }

  static double worth(SortedMap<Plastic, List<Purchase>> bought, Map<Plastic, Basket.Gain> gains) {
    double worth = 0;
    for (Map.Entry<Plastic, Basket.Gain> each : gains.entrySet()) {
      int pieces =
          bought.getOrDefault(each.getKey(), List.of()).stream()
              .mapToInt(purchase -> purchase.pieces().count())
              .sum();
      worth += each.getValue().worth().applyAsDouble(pieces);
    }
    return worth;
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.euros;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

class BasketTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "paddle", "olive", 75);

  private static Market market(BoxBuilder box) {
    return Market.of(box.book(), Set.of());
  }

  private static Purchase line(SortedMap<Plastic, Purchase> bought, Plastic plastic) {
    return Optional.ofNullable(bought.get(plastic)).orElseThrow();
  }

  private static Money total(Basket basket, SortedMap<Plastic, Purchase> bought) {
    return basket.orders(bought.values()).stream()
        .map(ShopOrder::total)
        .reduce(euros(0), Money::plus);
  }

  @Test
  void thePackThatCostsLeastForTheNeedIsTaken() {
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 6, 4.00).offered("Quay", INK, 20, 9.00);
    Market market = market(box);
    Purchase few = new Basket(market, Map.of(INK, 6)).cheapest().values().iterator().next();
    assertEquals(6, few.offer().packSize());
    assertEquals(1, few.packs().count());
    Purchase many = new Basket(market, Map.of(INK, 13)).cheapest().values().iterator().next();
    assertEquals(20, many.offer().packSize());
    assertEquals(20, many.pieces().count());
  }

  @Test
  void oneParcelBeatsTwo() {
    BoxBuilder box =
        new BoxBuilder()
            .offered("Quay", INK, 8, 4.00)
            .offered("Mole", INK, 8, 4.50)
            .offered("Mole", OLIVE, 8, 4.50)
            .postage("Quay", 3, 100)
            .postage("Mole", 3, 100);
    Basket basket = new Basket(market(box), Map.of(INK, 5, OLIVE, 5));
    SortedMap<Plastic, Purchase> bought = basket.cheapest();
    assertEquals("Mole", line(bought, INK).offer().shop().text());
    assertEquals(euros(12), total(basket, bought));
  }

  @Test
  void freePostageIsReachedWhereItPays() {
    BoxBuilder box =
        new BoxBuilder()
            .offered("Quay", INK, 8, 6.00)
            .offered("Mole", INK, 8, 5.00)
            .offered("Quay", OLIVE, 8, 15.00)
            .postage("Quay", 4, 20)
            .postage("Mole", 0, 0);
    Basket basket = new Basket(market(box), Map.of(INK, 5, OLIVE, 5));
    SortedMap<Plastic, Purchase> bought = basket.cheapest();
    assertEquals("Quay", line(bought, INK).offer().shop().text());
    assertEquals(euros(21), total(basket, bought));
  }

  @Test
  void onlyTheShopsAskedForAndOnlyWhatTheyHave() {
    BoxBuilder box =
        new BoxBuilder()
            .offered("Quay", INK, 8, 4)
            .offered("Mole", INK, 8, 5)
            .soldOut("Mole", OLIVE);
    Market mole = Market.of(box.book(), Set.of(Name.of("mole")));
    SortedMap<Plastic, Purchase> bought = new Basket(mole, Map.of(INK, 5, OLIVE, 5)).cheapest();
    assertEquals(Set.of(INK), bought.keySet());
    assertEquals("Mole", line(bought, INK).offer().shop().text());
    assertEquals(1, mole.soldOut(OLIVE).size());
  }

  @Test
  void aLaterPriceReplacesAnEarlierOne() {
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 8, 4).offered("Quay", INK, 8, 7);
    Purchase bought = new Basket(market(box), Map.of(INK, 5)).cheapest().values().iterator().next();
    assertEquals(euros(7), bought.lineTotal());
  }

  @Test
  void beyondEightShopsThoseWithLeastAreLeftOut() {
    BoxBuilder box = new BoxBuilder();
    for (int shop = 0; shop < 9; shop++) {
      box.offered("Shop " + shop, INK, 8, 5 + shop);
      if (shop > 0) {
        box.offered("Shop " + shop, OLIVE, 8, 5 + shop);
      }
    }
    Basket basket = new Basket(market(box), Map.of(INK, 5, OLIVE, 5));
    assertEquals("Shop 0", basket.leftOut().get(0).text());
    assertEquals(euros(12), total(basket, basket.cheapest()));
  }

  /** Every way to buy each plastic at one offer, one by one. */
  private static Money bruteForce(Market market, Basket basket, Map<Plastic, Integer> need) {
    List<SortedMap<Plastic, Purchase>> all = new ArrayList<>(List.of(new TreeMap<>()));
    for (Map.Entry<Plastic, Integer> each : need.entrySet()) {
      List<SortedMap<Plastic, Purchase>> more = new ArrayList<>();
      for (SortedMap<Plastic, Purchase> some : all) {
        for (var offer : market.offers(each.getKey())) {
          SortedMap<Plastic, Purchase> next = new TreeMap<>(some);
          next.put(each.getKey(), Purchase.covering(offer, each.getValue()));
          more.add(next);
        }
      }
      all = more;
    }
    return all.stream().map(one -> total(basket, one)).min(Money::compareTo).orElseThrow();
  }

  private static double meanGap(boolean thresholds, int cases) {
    Random random = new Random(7);
    double gap = 0;
    double costs = 0;
    for (int i = 0; i < cases; i++) {
      BoxBuilder box = new BoxBuilder();
      Map<Plastic, Integer> need = new TreeMap<>();
      for (int p = 0; p < 5; p++) {
        Plastic plastic = Plastic.of("", "paddle", "colour " + p, 75);
        need.put(plastic, 1 + random.nextInt(12));
        int sure = random.nextInt(3);
        for (int shop = 0; shop < 3; shop++) {
          if (shop == sure || random.nextInt(3) > 0) {
            int size = 4 + random.nextInt(8);
            box.offered("Shop " + shop, plastic, size, 0.4 * size + 2 * random.nextDouble());
          }
        }
      }
      for (int shop = 0; shop < 3; shop++) {
        double over = thresholds ? 5 + 20 * random.nextDouble() : 1e6;
        box.postage("Shop " + shop, 1 + 4 * random.nextDouble(), over);
      }
      Market market = market(box);
      Basket basket = new Basket(market, need);
      double best = bruteForce(market, basket, need).cents();
      double found = total(basket, basket.cheapest()).cents();
      assertTrue(found >= best, found + " below " + best);
      gap += found - best;
      costs += best;
    }
    return gap / costs;
  }

  @Test
  void withoutThresholdsNoBasketIsCheaper() {
    assertEquals(0, meanGap(false, 200));
  }

  @Test
  void withThresholdsTheBasketIsWithinAThousandthOfTheCheapest() {
    assertTrue(meanGap(true, 200) < 0.001, "gap " + meanGap(true, 200));
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import traytally.ledger.Offer;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Packs;
import traytally.plastic.Plastic;

class BasketTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "paddle", "olive", 75);

  private static Market market(BoxBuilder box) {
    return Market.of(box.book(), Set.of());
  }

  private static Purchase only(SortedMap<Plastic, List<Purchase>> bought, Plastic plastic) {
    List<Purchase> own = Optional.ofNullable(bought.get(plastic)).orElseThrow();
    assertEquals(1, own.size(), own.toString());
    return own.get(0);
  }

  @Test
  void thePackThatCostsLeastForTheNeedIsTaken() {
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 6, 4.00).offered("Quay", INK, 20, 9.00);
    Purchase few = only(new Basket(market(box)).cheapest(Map.of(INK, 6)), INK);
    assertEquals(6, few.offer().packSize());
    assertEquals(1, few.packs().count());
    Purchase many = only(new Basket(market(box)).cheapest(Map.of(INK, 13)), INK);
    assertEquals(20, many.pieces().count());
  }

  @Test
  void packSizesAreMixedWhereThatCostsLess() {
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 6, 4.00).offered("Quay", INK, 20, 9.00);
    Basket basket = new Basket(market(box));
    SortedMap<Plastic, List<Purchase>> bought = basket.cheapest(Map.of(INK, 25));
    assertEquals(2, bought.getOrDefault(INK, List.of()).size());
    assertEquals(euros(13), basket.total(bought));
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
    Basket basket = new Basket(market(box));
    SortedMap<Plastic, List<Purchase>> bought = basket.cheapest(Map.of(INK, 5, OLIVE, 5));
    assertEquals("Mole", only(bought, INK).offer().shop().text());
    assertEquals(euros(12), basket.total(bought));
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
    Basket basket = new Basket(market(box));
    SortedMap<Plastic, List<Purchase>> bought = basket.cheapest(Map.of(INK, 5, OLIVE, 5));
    assertEquals("Quay", only(bought, INK).offer().shop().text());
    assertEquals(euros(21), basket.total(bought));
  }

  @Test
  void aPackMoreThanNeededIsBoughtWhereItSavesThePostage() {
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 8, 2.00).postage("Quay", 5, 4);
    Basket basket = new Basket(market(box));
    SortedMap<Plastic, List<Purchase>> bought = basket.cheapest(Map.of(INK, 8));
    assertEquals(2, only(bought, INK).packs().count());
    assertEquals(euros(4), basket.total(bought));
  }

  @Test
  void onlyTheShopsAskedForAndOnlyWhatTheyHave() {
    BoxBuilder box =
        new BoxBuilder()
            .offered("Quay", INK, 8, 4)
            .offered("Mole", INK, 8, 5)
            .soldOut("Mole", OLIVE);
    Market mole = Market.of(box.book(), Set.of(Name.of("mole")));
    SortedMap<Plastic, List<Purchase>> bought = new Basket(mole).cheapest(Map.of(INK, 5, OLIVE, 5));
    assertEquals(Set.of(INK), bought.keySet());
    assertEquals("Mole", only(bought, INK).offer().shop().text());
    assertEquals(1, mole.soldOut(OLIVE).size());
  }

  @Test
  void aLaterPriceReplacesAnEarlierOne() {
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 8, 4).offered("Quay", INK, 8, 7);
    Purchase bought = only(new Basket(market(box)).cheapest(Map.of(INK, 5)), INK);
    assertEquals(euros(7), bought.lineTotal());
  }

  @Test
  void tenShopsAreNoneTooMany() {
    BoxBuilder box = new BoxBuilder();
    for (int shop = 0; shop < 10; shop++) {
      box.offered("Shop " + shop, INK, 8, 15 - shop).postage("Shop " + shop, 3, 50);
    }
    box.offered("Shop 0", OLIVE, 8, 5);
    Basket basket = new Basket(market(box));
    SortedMap<Plastic, List<Purchase>> bought = basket.cheapest(Map.of(INK, 5, OLIVE, 5));
    assertEquals("Shop 9", only(bought, INK).offer().shop().text());
    assertEquals(euros(6 + 3 + 5 + 3), basket.total(bought));
    assertTrue(basket.proven());
    assertFalse(basket.whole(), "ten shops sell ink in more ways than are gone through");
  }

  @Test
  void aBudgetIsNotSpentWhereLessBuysTheSame() {
    for (double mole : new double[] {4.40, 5.20}) {
      BoxBuilder box =
          new BoxBuilder()
              .offered("Quay", INK, 8, 4.80)
              .offered("Mole", INK, 8, mole)
              .postage("Quay", 3, 100)
              .postage("Mole", 3, 100);
      Basket basket = new Basket(market(box));
      Map<Plastic, Basket.Gain> gains =
          Map.of(INK, new Basket.Gain(8, pieces -> Math.min(pieces, 8), false));
      assertEquals(euros(3 + Math.min(4.80, mole)), basket.total(basket.within(euros(20), gains)));
    }
  }

  // Boxes drawn at random against every basket there is, one by one.

  /** Prices, pack sizes and terms of a few plastics in up to three shops. */
  private static BoxBuilder prices(Random random, List<Plastic> plastics, boolean thresholds) {
    BoxBuilder box = new BoxBuilder();
    for (Plastic plastic : plastics) {
      int sure = random.nextInt(3);
      for (int shop = 0; shop < 3; shop++) {
        if (shop == sure || random.nextInt(3) == 0) {
          int size = 4 + random.nextInt(6);
          box.offered("Shop " + shop, plastic, size, 0.4 * size + 2 * random.nextDouble());
          if (random.nextInt(5) == 0) {
            box.offered("Shop " + shop, plastic, 2 * size, 0.7 * size + 2 * random.nextDouble());
          }
        }
      }
    }
    for (int shop = 0; shop < 3; shop++) {
      double over = thresholds ? 4 + 14 * random.nextDouble() : 1e6;
      box.postage("Shop " + shop, 1 + 4 * random.nextDouble(), over);
    }
    return box;
  }

  /** Every multiset of up to {@code most} packs of what is offered. */
  static List<List<Purchase>> ways(List<Offer> offers, int most) {
    List<List<Purchase>> ways = new ArrayList<>(List.of(List.of()));
    for (Offer offer : offers) {
      for (List<Purchase> way : List.copyOf(ways)) {
        int left = most - way.stream().mapToInt(p -> p.packs().count()).sum();
        for (int packs = 1; packs <= left; packs++) {
          List<Purchase> more = new ArrayList<>(way);
          more.add(new Purchase(offer, new Packs(packs)));
          ways.add(more);
        }
      }
    }
    return ways;
  }

  private static int pieces(List<Purchase> way) {
    return way.stream().mapToInt(p -> p.pieces().count()).sum();
  }

  private static List<SortedMap<Plastic, List<Purchase>>> baskets(
      Market market, List<Plastic> plastics, Map<Plastic, Integer> need, int mostPacks) {
    List<SortedMap<Plastic, List<Purchase>>> all = new ArrayList<>(List.of(new TreeMap<>()));
    for (Plastic plastic : plastics) {
      List<SortedMap<Plastic, List<Purchase>>> more = new ArrayList<>();
      for (List<Purchase> way : ways(market.offers(plastic), mostPacks)) {
        if (pieces(way) >= need.getOrDefault(plastic, 0)) {
          for (SortedMap<Plastic, List<Purchase>> some : all) {
            SortedMap<Plastic, List<Purchase>> next = new TreeMap<>(some);
            next.put(plastic, way);
            more.add(next);
          }
        }
      }
      all = more;
    }
    return all;
  }

  private static void noBasketIsCheaper(boolean thresholds, long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 150; i++) {
      List<Plastic> plastics = PriceLists.plastics(3);
      Map<Plastic, Integer> need = new TreeMap<>();
      plastics.forEach(plastic -> need.put(plastic, 1 + random.nextInt(9)));
      Market market = market(prices(random, plastics, thresholds));
      Basket basket = new Basket(market);
      SortedMap<Plastic, List<Purchase>> found = basket.cheapest(need);
      need.forEach((p, n) -> assertTrue(pieces(found.getOrDefault(p, List.of())) >= n));
      Money best =
          baskets(market, plastics, need, 3).stream()
              .map(basket::total)
              .min(Money::compareTo)
              .orElseThrow();
      assertTrue(basket.total(found).compareTo(best) <= 0, basket.total(found) + " above " + best);
      assertTrue(basket.proven());
    }
  }

  @Test
  void withoutThresholdsNoBasketIsCheaper() {
    noBasketIsCheaper(false, 7);
  }

  @Test
  void withThresholdsNoBasketIsCheaper() {
    noBasketIsCheaper(true, 8);
  }

  private static void noBasketWithinTheBudgetSavesMore(boolean thresholds, long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 150; i++) {
      List<Plastic> plastics = PriceLists.plastics(3);
      Map<Plastic, Basket.Gain> gains = new TreeMap<>();
      plastics.forEach(plastic -> gains.put(plastic, PriceLists.gain(random)));
      Market market = market(prices(random, plastics, thresholds));
      Basket basket = new Basket(market);
      Money budget = euros(4 + 12 * random.nextDouble());
      SortedMap<Plastic, List<Purchase>> found = basket.within(budget, gains);
      assertTrue(basket.total(found).compareTo(budget) <= 0, "over the budget");
      double best = 0;
      for (SortedMap<Plastic, List<Purchase>> one : baskets(market, plastics, Map.of(), 3)) {
        if (basket.total(one).compareTo(budget) <= 0) {
          best = Math.max(best, PriceLists.worth(one, gains));
        }
      }
      assertTrue(
          PriceLists.worth(found, gains) >= best - 1.1e-3,
          PriceLists.worth(found, gains) + " below " + best);
      assertTrue(basket.proven());
    }
  }

  @Test
  void withoutThresholdsNoBasketWithinTheBudgetSavesMore() {
    noBasketWithinTheBudgetSavesMore(false, 9);
  }

  @Test
  void withThresholdsNoBasketWithinTheBudgetSavesMore() {
    noBasketWithinTheBudgetSavesMore(true, 10);
  }

  /** The second opinion on many plastics: dynamic programming over cents, without thresholds. */
  @Test
  void onManyPlasticsItAgreesWithDynamicProgramming() {
    Random random = new Random(11);
    for (int i = 0; i < 5; i++) {
      Map<Plastic, Basket.Gain> gains = new TreeMap<>();
      BoxBuilder box = new BoxBuilder();
      List<Integer> cents = new ArrayList<>();
      for (Plastic plastic : PriceLists.plastics(60)) {
        gains.put(plastic, PriceLists.gain(random));
        cents.add(200 + random.nextInt(700));
        box.offered("Quay", plastic, 6, cents.get(cents.size() - 1) / 100.0);
      }
      box.postage("Quay", 4, 1e6);
      Money budget = euros(30 + 40 * random.nextDouble());
      int goods = (int) budget.cents() - 400;
      double[] most = new double[goods + 1]; // by cents left
      int at = 0;
      for (Plastic plastic : gains.keySet().stream().sorted().toList()) {
        Basket.Gain gain = Optional.ofNullable(gains.get(plastic)).orElseThrow();
        int price = (int) market(box).offers(plastic).get(0).packPrice().cents();
        double[] next = most.clone();
        for (int c = 0; c <= goods; c++) {
          for (int packs = 1; packs * price <= c && packs <= 7; packs++) {
            double with = most[c - packs * price] + gain.worth().applyAsDouble(6 * packs);
            next[c] = Math.max(next[c], with);
          }
        }
        most = next;
        at++;
      }
      assertEquals(60, at);
      Basket basket = new Basket(market(box));
      SortedMap<Plastic, List<Purchase>> found = basket.within(budget, gains);
      assertEquals(most[goods], PriceLists.worth(found, gains), 1.1e-3);
      assertTrue(basket.proven());
      assertTrue(basket.total(found).compareTo(budget) <= 0);
    }
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ParcelSearchTest {
  private static final long NEVER = Long.MAX_VALUE;
  private static final double STEP = 0.01;

  private static Bundle bundle(double value, long... goods) {
    return new Bundle(List.of(), value, goods);
  }

  /** What a basket is worth after postage; nothing where it costs more than the budget. */
  private static double worth(
      List<ParcelSearch.Terms> shops, List<Bundle> basket, long budget, double postageCost) {
    long paid = 0;
    long goods = 0;
    for (int s = 0; s < shops.size(); s++) {
      int shop = s;
      long own = basket.stream().mapToLong(bundle -> bundle.goods(shop)).sum();
      goods += own;
      paid += own > 0 && own < shops.get(s).freeFrom() ? shops.get(s).postage() : 0;
    }
    double value = basket.stream().mapToDouble(Bundle::value).sum() - postageCost * paid;
    return goods <= budget - paid ? value : Double.NEGATIVE_INFINITY;
  }

  private static double most(
      List<ParcelSearch.Terms> shops,
      List<List<Bundle>> plastics,
      int from,
      List<Bundle> sofar,
      long budget,
      double postageCost) {
    if (from == plastics.size()) {
      return worth(shops, sofar, budget, postageCost);
    }
    double most = Double.NEGATIVE_INFINITY;
    for (Bundle bundle : plastics.get(from)) {
      List<Bundle> more = new ArrayList<>(sofar);
      more.add(bundle);
      most = Math.max(most, most(shops, plastics, from + 1, more, budget, postageCost));
    }
    return most;
  }

  private static List<ParcelSearch.Terms> terms(Random random) {
    List<ParcelSearch.Terms> terms = new ArrayList<>();
    for (int s = 0; s < 3; s++) {
      long freeFrom = random.nextInt(3) == 0 ? NEVER : random.nextInt(1200);
      terms.add(new ParcelSearch.Terms(random.nextInt(4) * 100L, freeFrom));
    }
    return terms;
  }

  private static List<List<Bundle>> plastics(Random random, double valueOfACent) {
    List<List<Bundle>> plastics = new ArrayList<>();
    for (int p = 0; p < 4; p++) {
      List<Bundle> own = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        long[] goods = new long[3];
        goods[random.nextInt(3)] += 100 + random.nextInt(500);
        goods[random.nextInt(3)] += random.nextInt(2) * 100L;
        long cost = goods[0] + goods[1] + goods[2];
        own.add(bundle(cost * valueOfACent * (1 + random.nextDouble() / 10), goods));
      }
      plastics.add(own);
    }
    return plastics;
  }

  /** Against every basket there is, one by one. */
  @Test
  void noBasketCostsLess() {
    Random random = new Random(1);
    for (int i = 0; i < 60; i++) {
      List<ParcelSearch.Terms> shops = terms(random);
      List<List<Bundle>> plastics = plastics(random, -1);
      ParcelSearch search = new ParcelSearch(shops, plastics, NEVER, 1, STEP, 120);
      double most = most(shops, plastics, 0, List.of(), NEVER, 1);
      assertEquals(most, worth(shops, search.best(), NEVER, 1), 2 * STEP);
      assertEquals(4, search.best().size());
      assertTrue(search.proven());
    }
  }

  @Test
  void noBasketWithinABudgetIsWorthMore() {
    Random random = new Random(2);
    for (int i = 0; i < 25; i++) {
      List<ParcelSearch.Terms> shops = terms(random);
      List<List<Bundle>> plastics = plastics(random, 0.01);
      plastics.forEach(own -> own.add(bundle(0, 0, 0, 0)));
      long budget = 200L + random.nextInt(1500);
      ParcelSearch search = new ParcelSearch(shops, plastics, budget, 0, STEP);
      double most = most(shops, plastics, 0, List.of(), budget, 0);
      assertEquals(most, worth(shops, search.best(), budget, 0), 2 * STEP);
      assertTrue(search.proven());
    }
  }

  @Test
  void whatNoBudgetBuysIsNotBought() {
    List<ParcelSearch.Terms> quay = List.of(new ParcelSearch.Terms(300, NEVER));
    List<List<Bundle>> one = List.of(List.of(bundle(5, 100)));
    ParcelSearch tooLittle = new ParcelSearch(quay, one, 399, 0, STEP);
    assertEquals(List.of(), tooLittle.best());
    assertTrue(tooLittle.proven());
    assertEquals(one.get(0), new ParcelSearch(quay, one, 400, 0, STEP).best());
    assertEquals(List.of(), new ParcelSearch(quay, one, 200, 0, STEP).best());
  }

  @Test
  void thresholdAsHighAsTheBudgetIsReached() {
    List<List<Bundle>> one = List.of(List.of(bundle(0, 0), bundle(4, 400), bundle(5, 500)));
    List<ParcelSearch.Terms> quay = List.of(new ParcelSearch.Terms(100, 500));
    assertEquals(5, new ParcelSearch(quay, one, 500, 0, STEP).best().get(0).value());
    List<ParcelSearch.Terms> more = List.of(new ParcelSearch.Terms(100, 501));
    assertEquals(4, new ParcelSearch(more, one, 500, 0, STEP).best().get(0).value());
  }

  @Test
  void shopsThatAskForNoPostageAreNotBranchedOver() {
    List<ParcelSearch.Terms> free = List.of(new ParcelSearch.Terms(0, NEVER));
    List<List<Bundle>> one = List.of(List.of(bundle(5, 100), bundle(8, 200)));
    ParcelSearch search = new ParcelSearch(free, one, 150, 0, STEP, 0);
    assertEquals(one.get(0).subList(0, 1), search.best());
    assertTrue(search.proven());
  }

  @Test
  void termsMatterWhereTheyAskForPostage() {
    assertTrue(new ParcelSearch.Terms(1, NEVER).matter());
    assertTrue(new ParcelSearch.Terms(1, 1).matter());
    assertFalse(new ParcelSearch.Terms(0, NEVER).matter());
    assertFalse(new ParcelSearch.Terms(1, 0).matter(), "goods of 0 are enough");
  }

  /** Nine plastics, each in three of nine shops at the same price. */
  @Test
  void searchStoppedShortStillFindsABasketButProvesNothing() {
    List<ParcelSearch.Terms> shops = new ArrayList<>();
    List<List<Bundle>> plastics = new ArrayList<>();
    for (int p = 0; p < 9; p++) {
      shops.add(new ParcelSearch.Terms(100 + p, NEVER));
      List<Bundle> own = new ArrayList<>();
      for (int s = 0; s < 3; s++) {
        long[] goods = new long[9];
        goods[(p + s * (p + 1)) % 9] = 100;
        own.add(bundle(-100, goods));
      }
      plastics.add(own);
    }
    assertTrue(new ParcelSearch(shops, plastics, NEVER, 1, STEP, 300).proven());
    for (int branches : new int[] {30, 60}) {
      ParcelSearch few = new ParcelSearch(shops, plastics, NEVER, 1, STEP, branches);
      assertEquals(9, few.best().size(), branches + " branches");
      assertFalse(few.proven());
    }
  }
}

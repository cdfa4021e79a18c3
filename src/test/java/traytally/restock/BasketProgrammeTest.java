package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.euros;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.plastic.Money;
import traytally.plastic.Plastic;

/** Baskets of many plastics: against an outside solver, ojAlgo's, and whether they are proven. */
class BasketProgrammeTest {
  /** Packs of one plastic that the solver may buy; more never pay at these budgets. */
  private static final int MOST_PACKS = 3;

  private static void theSolverAgrees(int plastics, long seed, double budget) {
    Random random = new Random(seed);
    List<Plastic> all = PriceLists.plastics(plastics);
    Market market = PriceLists.market(random, all, 3, 8);
    Map<Plastic, Basket.Gain> gains = PriceLists.gains(random, all);
    Map<Plastic, List<List<Purchase>>> ways = new TreeMap<>();
    all.forEach(p -> ways.put(p, BasketTest.ways(market.offers(p), MOST_PACKS)));
    Money money = euros(budget);
    Basket basket = new Basket(market);
    SortedMap<Plastic, List<Purchase>> found = basket.within(money, gains);
    assertTrue(basket.proven());
    assertTrue(basket.total(found).compareTo(money) <= 0);
    double most = Programme.most(market, money, gains, ways);
    assertEquals(most, PriceLists.worth(found, gains), 1e-3, "seed " + seed);
  }

  @ParameterizedTest
  @CsvSource({"3, 12", "4, 20", "3, 30"})
  void theSolverFindsNoBetterBasket(long seed, double budget) {
    theSolverAgrees(8, seed, budget);
  }

  @ParameterizedTest
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  @CsvSource({
    "15, 22, 15",
    "15, 23, 25",
    "15, 24, 15",
    "15, 25, 25",
    "15, 26, 15",
    "15, 27, 25",
    "20, 28, 15",
    "20, 29, 15",
    "30, 21, 15",
    "30, 21, 25"
  })
  void theSolverFindsNoBetterBasketOfManyPlastics(int plastics, long seed, double budget) {
    theSolverAgrees(plastics, seed, budget);
  }

  private static void theSolverAgreesOnTheLeastCost(int plastics, long seed) {
    Random random = new Random(seed);
    List<Plastic> all = PriceLists.plastics(plastics);
    Market market = PriceLists.market(random, all, 3, 8);
    Map<Plastic, Integer> need = new TreeMap<>();
    all.forEach(plastic -> need.put(plastic, 1 + random.nextInt(9)));
    Map<Plastic, List<List<Purchase>>> ways = new TreeMap<>();
    all.forEach(p -> ways.put(p, BasketTest.ways(market.offers(p), MOST_PACKS)));
    Basket basket = new Basket(market);
    Money found = basket.total(basket.cheapest(need));
    assertTrue(basket.proven());
    // What the solver's basket costs, not what the solver says of it.
    assertEquals(basket.total(Programme.cheapest(market, need, ways)), found, "seed " + seed);
  }

  @ParameterizedTest
  @ValueSource(longs = {32, 33, 35, 36, 102, 188})
  void theSolverFindsNoCheaperBasket(long seed) {
    theSolverAgreesOnTheLeastCost(6, seed);
  }

  private static void allAreProven(long seed) {
    Random random = new Random(seed);
    List<Plastic> plastics = PriceLists.plastics(300);
    Market market = PriceLists.market(random, plastics, 4, 25);
    Map<Plastic, Basket.Gain> gains = PriceLists.gains(random, plastics);
    for (int budget : new int[] {15, 40, 80, 200}) {
      Basket basket = new Basket(market);
      SortedMap<Plastic, List<Purchase>> found = basket.within(euros(budget), gains);
      assertTrue(basket.total(found).compareTo(euros(budget)) <= 0);
      assertTrue(basket.proven(), seed + ", " + budget);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {2, 18})
  void threeHundredPlasticsInFourShopsAreProven(long seed) {
    allAreProven(seed);
  }

  @ParameterizedTest
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  @ValueSource(longs = {1, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 19, 20, 21, 22, 23})
  void manyListsAreProven(long seed) {
    allAreProven(seed);
  }
}

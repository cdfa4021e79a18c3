package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Variable;

class BundleSearchTest {
  private static final long ENDLESS = Long.MAX_VALUE;
  private static final double STEP = 0.01;
  private static final int[] NO_SHOPS = {};

  private static Bundle bundle(double value, long... goods) {
    return new Bundle(List.of(), value, goods);
  }

  private static Limits limits(List<List<Bundle>> bundles, long budget, long... least) {
    int[] shops = new int[least.length];
    for (int s = 0; s < shops.length; s++) {
      shops[s] = s;
    }
    return new Limits(bundles, budget, shops, least);
  }

  private static BundleSearch search(List<List<Bundle>> bundles, long budget, long... least) {
    return new BundleSearch(limits(bundles, budget, least), STEP);
  }

  private static double value(List<Bundle> choice) {
    return choice.stream().mapToDouble(Bundle::value).sum();
  }

  /** Nothing or up to {@code most} bundles of each plastic, in two shops. */
  private static List<List<Bundle>> drawn(Random random, int plastics, int most) {
    List<List<Bundle>> drawn = new ArrayList<>();
    for (int p = 0; p < plastics; p++) {
      List<Bundle> own = new ArrayList<>(List.of(bundle(0, 0, 0)));
      for (int k = 0; k < most; k++) {
        long quay = random.nextInt(3) * (100L + random.nextInt(400));
        long mole = random.nextInt(2) * (100L + random.nextInt(400));
        own.add(bundle((quay + mole) * (0.5 + random.nextDouble()) / 100, quay, mole));
      }
      drawn.add(own);
    }
    return drawn;
  }

  private static List<List<Bundle>> choices(List<List<Bundle>> bundles) {
    List<List<Bundle>> choices = new ArrayList<>(List.of(List.of()));
    for (List<Bundle> own : bundles) {
      List<List<Bundle>> longer = new ArrayList<>();
      for (List<Bundle> choice : choices) {
        for (Bundle bundle : own) {
          List<Bundle> next = new ArrayList<>(choice);
          next.add(bundle);
          longer.add(next);
        }
      }
      choices = longer;
    }
    return choices;
  }

  private static boolean keeps(List<Bundle> choice, long budget, long... least) {
    boolean keeps = choice.stream().mapToLong(Bundle::cost).sum() <= budget;
    for (int s = 0; s < least.length; s++) {
      int shop = s;
      keeps &= choice.stream().mapToLong(bundle -> bundle.goods(shop)).sum() >= least[s];
    }
    return keeps;
  }

  /** Against every choice there is, one by one. */
  private static void noChoiceIsBetter(List<List<Bundle>> bundles, long budget, long... least) {
    List<List<Bundle>> allowed =
        choices(bundles).stream().filter(choice -> keeps(choice, budget, least)).toList();
    BundleSearch search = search(bundles, budget, least);
    BundleSearch.Outcome outcome = search.better(-1, ENDLESS);
    assertTrue(outcome.proven());
    assertEquals(allowed.isEmpty(), outcome.best().isEmpty());
    if (outcome.best().isEmpty()) {
      return;
    }
    double best = allowed.stream().mapToDouble(BundleSearchTest::value).max().orElseThrow();
    assertTrue(search.bound() >= best - 1e-9, search.bound() + " below " + best);
    assertEquals(best, value(outcome.best().get()), STEP);
    assertTrue(keeps(outcome.best().get(), budget, least));
    BundleSearch.Outcome none = search.better(best + 1e-9, ENDLESS);
    assertTrue(none.best().isEmpty());
    assertTrue(none.proven());
    List<List<Bundle>> above = search.above(best - 1);
    for (List<Bundle> choice : allowed) {
      for (int p = 0; value(choice) > best - 1 + 1e-9 && p < choice.size(); p++) {
        assertTrue(above.get(p).contains(choice.get(p)), "a bundle of a good choice is gone");
      }
    }
  }

  @Test
  void withinABudgetNoChoiceIsBetter() {
    Random random = new Random(1);
    for (int i = 0; i < 20; i++) {
      noChoiceIsBetter(drawn(random, 4, 3), 300 + random.nextInt(1200));
    }
  }

  @Test
  void whereShopsNeedGoodsNoChoiceIsBetter() {
    Random random = new Random(2);
    for (int i = 0; i < 20; i++) {
      List<List<Bundle>> bundles = drawn(random, 4, 3);
      noChoiceIsBetter(bundles, 500 + random.nextInt(1500), random.nextInt(800));
      noChoiceIsBetter(bundles, ENDLESS, random.nextInt(1500), random.nextInt(800));
      noChoiceIsBetter(
          bundles, 800 + random.nextInt(1500), random.nextInt(600), random.nextInt(600));
    }
  }

  @Test
  void withoutLimitsEachPlasticsBestIsTaken() {
    noChoiceIsBetter(drawn(new Random(3), 4, 3), ENDLESS);
  }

  /** By hand: of two at 2 and 1.5 a cent, the budget takes the first and half of the second. */
  @Test
  void boundTakesPartOfAPack() {
    List<List<Bundle>> two =
        List.of(
            List.of(bundle(0, 0), bundle(10, 5)),
            List.of(bundle(0, 0), bundle(6, 4)),
            List.of(bundle(0, 0), bundle(1, 4)));
    assertEquals(10 + 6 / 2.0, search(two, 7).bound(), 1e-4);
    assertEquals(17, search(two, 13).bound(), 1e-4);
    assertEquals(17, search(two, ENDLESS).bound());
    assertEquals(10, search(two, 5).bound(), 1e-4);
  }

  /** By hand: at 1.5 a cent buying none of the first costs 2.5, one of the last 5, of 13. */
  @Test
  void whatCannotBePartOfAChoiceAboveAFloorIsLeftOut() {
    List<List<Bundle>> three =
        List.of(
            List.of(bundle(0, 0), bundle(10, 5)),
            List.of(bundle(0, 0), bundle(6, 4)),
            List.of(bundle(0, 0), bundle(1, 4)));
    BundleSearch search = search(three, 7);
    assertEquals(List.of(1, 2, 1), sizes(search.above(12.9)));
    assertEquals(List.of(2, 2, 1), sizes(search.above(10.4)));
    assertEquals(List.of(2, 2, 2), sizes(search.above(7.9)));
  }

  private static List<Integer> sizes(List<List<Bundle>> bundles) {
    return bundles.stream().map(List::size).toList();
  }

  /**
   * By hand: one cent more at Quay costs 0.1 of worth and one cent less of the budget 0.3, and 100
   * cents of the cheaper shop's goods give way for what Quay needs.
   */
  @Test
  void boundOfTwoLimitsIsThatOfPartsOfPacks() {
    List<List<Bundle>> two =
        List.of(
            List.of(bundle(0, 0, 0), bundle(20, 100, 0)),
            List.of(bundle(0, 0, 0), bundle(30, 0, 100)));
    assertEquals(30 + 20 / 2.0, search(two, 150).bound(), 1e-3);
    assertEquals(30 * 0.75 + 20 * 0.75, search(two, 150, 75).bound(), 0.01);
    assertEquals(30 * 0.5 + 20, search(two, 150, 100).bound(), 0.01);
    assertEquals(Double.NEGATIVE_INFINITY, search(two, 150, 101).bound());
    assertEquals(Double.NEGATIVE_INFINITY, search(two, 99, 100).bound());
  }

  @Test
  void whatCannotBeHasNoBest() {
    List<List<Bundle>> one = List.of(List.of(bundle(5, 100)));
    BundleSearch.Outcome outcome = search(one, 99).better(Double.NEGATIVE_INFINITY, ENDLESS);
    assertEquals(new BundleSearch.Outcome(Optional.empty(), true, 0), outcome);
    assertEquals(5, value(search(one, 100).better(-1, ENDLESS).best().orElseThrow()));
  }

  @Test
  void searchThatMayLookAtNothingProvesNothing() {
    List<List<Bundle>> bundles = drawn(new Random(4), 6, 3);
    assertEquals(
        new BundleSearch.Outcome(Optional.empty(), false, 0), search(bundles, 900).better(0, 0));
  }

  private static void isProvenByFew(long mostChoices, long... least) {
    List<List<Bundle>> many = drawn(new Random(5), 40, 3);
    BundleSearch.Outcome outcome = search(many, 4000, least).better(0, ENDLESS);
    assertTrue(outcome.proven());
    assertTrue(outcome.choices() > 0);
    assertTrue(outcome.choices() < mostChoices, outcome.choices() + " choices");
  }

  /**
   * Of four to the power of forty all but some need not be looked at; the more limits, the more.
   */
  @Test
  void fewOfManyChoicesAreLookedAt() {
    isProvenByFew(40);
    isProvenByFew(240, 3000);
    isProvenByFew(800, 2000, 1500);
  }

  /** The least that prices can bound it by is the relaxation's most, here by ojAlgo's simplex. */
  @Test
  void boundIsThatOfPartsOfPacksInEveryPlastic() {
    Random random = new Random(7);
    for (int i = 0; i < 8; i++) {
      List<List<Bundle>> bundles = drawn(random, 10, 3);
      long[] least = {500 + random.nextInt(500), 300 + random.nextInt(500)};
      double most = relaxed(bundles, 2000, least);
      assertEquals(most, search(bundles, 2000, least).bound(), 2e-3 * most, "case " + i);
      double noShops = relaxed(bundles, 1500);
      assertEquals(noShops, search(bundles, 1500).bound(), 1e-4 * noShops);
    }
  }

  private static double relaxed(List<List<Bundle>> bundles, long budget, long... least) {
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    Expression cost = model.newExpression("cost").upper(budget);
    List<Expression> goods = new ArrayList<>();
    for (int s = 0; s < least.length; s++) {
      goods.add(model.newExpression("goods " + s).lower(least[s]));
    }
    for (int p = 0; p < bundles.size(); p++) {
      Expression one = model.newExpression("plastic " + p).level(1);
      for (Bundle bundle : bundles.get(p)) {
        Variable part = model.newVariable("part " + model.countVariables());
        part.lower(0).upper(1).weight(bundle.value());
        one.set(part, 1);
        cost.set(part, bundle.cost());
        for (int s = 0; s < least.length; s++) {
          goods.get(s).set(part, bundle.goods(s));
        }
      }
    }
    return model.maximise().getValue();
  }

  /** What is cut off is what promises least, so that the basket is a good one all the same. */
  @Test
  void searchThatKeepsFewChoicesIsNotComplete() {
    Limits limits = limits(drawn(new Random(6), 30, 3), 3000, 1000);
    LimitPrices prices = new LimitPrices(limits);
    Core few = new Core(limits, prices, 0, 20);
    double found = few.best(0).orElseThrow().value();
    assertFalse(few.complete());
    assertTrue(found > 0.95 * prices.bound(), found + " of " + prices.bound());
    Core all = new Core(limits, prices, prices.bound() - 1, 1_000_000);
    assertTrue(all.best(STEP / 16).orElseThrow().value() >= found - STEP / 16);
    assertTrue(all.complete());
  }

  @Test
  void withoutLimitsTheBetterOfTwoNearlyAlikeIsTaken() {
    List<List<Bundle>> alike =
        List.of(
            List.of(bundle(5, 10), bundle(5 + STEP, 20), bundle(4, 5)),
            List.of(bundle(3 + STEP / 2, 10), bundle(3, 20)));
    BundleSearch.Outcome outcome = search(alike, ENDLESS).better(0, ENDLESS);
    assertEquals(8 + 1.5 * STEP, value(outcome.best().orElseThrow()), 1e-12);
  }

  @Test
  void limitsAreWhatMayBeUsedUp() {
    List<List<Bundle>> bundles =
        List.of(
            List.of(bundle(0, 0, 0), bundle(5, 100, 20), bundle(4, 100, 20), bundle(9, 600, 0)),
            List.of(bundle(1, 0, 50), bundle(2, 70, 0)));
    Limits limits = limits(bundles, 500, 90, 30);
    assertEquals(3, limits.count());
    assertEquals(500, limits.most(0));
    assertEquals(100 + 70 - 90, limits.most(1), "Quay may go without 80 of the 170 there could be");
    assertEquals(20 + 50 - 30, limits.most(2));
    assertEquals(3, limits.all().get(0).size(), "one costs more than the budget");
    assertEquals(2, limits.plastics().get(0).size(), "one is worth less at the same use");
    Pick five = limits.plastics().get(0).get(0);
    assertEquals(5, five.value());
    assertEquals(List.of(120L, 0L, 0L), List.of(five.uses(0), five.uses(1), five.uses(2)));
    assertTrue(limits.feasible());
    assertEquals(2, limits(bundles, ENDLESS, 90, 30).count());
    assertEquals(4, limits(bundles, ENDLESS, 90, 30).all().get(0).size());
  }

  @Test
  void limitsThatRuleOutEveryChoiceAreTold() {
    List<List<Bundle>> bundles =
        List.of(List.of(bundle(5, 100, 20)), List.of(bundle(1, 0, 50), bundle(2, 70, 0)));
    assertTrue(limits(bundles, 170, 170).feasible());
    assertFalse(limits(bundles, 169, 0).feasible());
    assertFalse(limits(bundles, ENDLESS, 171).feasible());
    assertTrue(limits(bundles, 200, 100, 50).feasible());
    assertFalse(limits(bundles, 200, 150, 51).feasible(), "the goods needed cost more");
    assertFalse(limits(bundles, 119, 0).feasible(), "a plastic has no bundle left");
    assertTrue(new Limits(List.of(), 0, NO_SHOPS, new long[0]).feasible());
  }
}

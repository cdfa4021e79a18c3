package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.euros;

import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.ledger.Offer;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

class BundlesTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Name QUAY = Name.of("Quay");
  private static final Name MOLE = Name.of("Mole");

  private static Offer offer(Name shop, int size, double euros) {
    return new Offer(shop, INK, size, euros(euros), true);
  }

  private static Bundles bundles(boolean thorough) {
    return new Bundles(List.of(QUAY, MOLE), thorough);
  }

  /** Cents at Quay, cents at Mole, worth; the worth of a piece is 1. */
  private static List<String> within(List<Offer> offers, int most, long mostCents) {
    return words(bundles(true).within(offers, most, mostCents, pieces -> pieces));
  }

  private static List<String> words(List<Bundle> bundles) {
    return bundles.stream()
        .map(each -> each.goods(0) + " " + each.goods(1) + " " + (int) each.value())
        .sorted()
        .toList();
  }

  @Test
  void packsAreBoughtUpToTheMoneyAndUntilMoreAreWorthNothing() {
    List<Offer> offers = List.of(offer(QUAY, 4, 2));
    assertEquals(List.of("0 0 0", "200 0 4", "400 0 8"), within(offers, 100, 400));
    assertEquals(List.of("0 0 0", "200 0 4"), within(offers, 100, 399));
    assertEquals(List.of("0 0 0", "200 0 4", "400 0 8"), within(offers, 8, 900));
    assertEquals(List.of("0 0 0", "200 0 4", "400 0 8", "600 0 12"), within(offers, 9, 900));
  }

  @Test
  void ofPacksThatCostTheSameTheFullestStays() {
    Offer few = offer(QUAY, 4, 2);
    Offer many = offer(QUAY, 10, 4);
    List<String> ways = List.of("0 0 0", "200 0 4", "400 0 10");
    assertEquals(ways, within(List.of(few, many), 10, 400));
    assertEquals(ways, within(List.of(many, few), 10, 400));
  }

  @Test
  void sizesAndShopsAreMixed() {
    List<Offer> offers = List.of(offer(QUAY, 4, 2), offer(QUAY, 10, 3), offer(MOLE, 6, 5));
    assertEquals(
        List.of("0 0 0", "0 500 6", "200 0 4", "200 500 10", "300 0 10", "400 0 8", "500 0 14"),
        within(offers, 8, 700));
    List<Bundle> all = bundles(true).within(offers, 14, 500, pieces -> pieces);
    Bundle both = all.stream().filter(each -> each.value() == 14).findAny().orElseThrow();
    assertEquals(500, both.cost());
    assertEquals(List.of(4, 10), both.purchases().stream().map(p -> p.pieces().count()).toList());
  }

  @Test
  void whatIsNeededIsCoveredForNoMoreThanTheCheapestWayAndAllPostage() {
    List<Offer> offers = List.of(offer(QUAY, 4, 2), offer(MOLE, 5, 3));
    List<String> covering = words(bundles(true).covering(offers, 5, 200));
    assertEquals(List.of("0 300 -300", "200 300 -500", "400 0 -400"), covering);
    assertEquals(
        List.of("0 300 -300", "400 0 -400"), words(bundles(true).covering(offers, 5, 100)));
  }

  @Test
  void whatNobodySellsIsNotCovered() {
    assertEquals(List.of(), bundles(true).covering(List.of(), 5, 100));
  }

  /** Ways that are too dear do not count towards those that are too many. */
  @Test
  void manyWaysAreKeptToOneShopEach() {
    List<Offer> offers = List.of(offer(QUAY, 1, 1), offer(MOLE, 1, 1));
    Bundles square = bundles(false);
    assertEquals(16 * 17 / 2, square.within(offers, 15, 1500, pieces -> pieces).size());
    assertTrue(square.whole(), "16 times 16 are not too many");
    Bundles more = bundles(false);
    List<Bundle> unsplit = more.within(offers, 16, 1600, pieces -> pieces);
    assertEquals(1 + 16 + 16, unsplit.size());
    assertTrue(unsplit.stream().allMatch(each -> each.goods(0) == 0 || each.goods(1) == 0));
    assertFalse(more.whole());
    Bundles thorough = bundles(true);
    assertEquals(17 * 18 / 2, thorough.within(offers, 16, 1600, pieces -> pieces).size());
    assertEquals(256, thorough.within(offers, 15, 9000, pieces -> pieces).size());
    assertTrue(thorough.whole());
    assertEquals(1 + 22 + 22, thorough.within(offers, 22, 2200, pieces -> pieces).size());
    assertFalse(thorough.whole(), "276 ways within the money");
  }

  @Test
  void packsOfOneSizeAreTwoHundredAtMost() {
    List<Offer> offers = List.of(offer(QUAY, 1, 0.01));
    assertEquals(201, within(offers, 1000, 1000).size());
  }
}

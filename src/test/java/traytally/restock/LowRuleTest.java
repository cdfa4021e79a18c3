package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.euros;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.ledger.Offer;
import traytally.numeric.Gaussian;
import traytally.performance.Evidence;
import traytally.performance.Standing;
import traytally.performance.Subject;
import traytally.performance.Trust;
import traytally.plastic.Name;
import traytally.plastic.Packs;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;

/**
 * Two pieces go on average, as a Poisson count: three are too few with a chance of 0.3233, four of
 * 0.1429, five of 0.0527, six of 0.0166 (any table of it).
 */
class LowRuleTest {
  private static final LowRule RULE = new LowRule(0.05, 0.20);

  private static Use two() {
    LossRate rate = new LossRate(0.5, 0, 0, 0, 1);
    TripUse trip = new TripUse(BoxBuilder.TODAY, Name.BLANK, 4, 1, 4, rate);
    return new Use(List.of(trip), Double.POSITIVE_INFINITY, 0, 0);
  }

  private static Prospect prospect(String body, int pieces, Trust trust, boolean kept) {
    Plastic plastic = Plastic.of("", body, "ink", 75);
    return new Prospect(plastic, new Pieces(pieces), trust, kept, two(), two());
  }

  private static Trust trust(Standing standing, int days, double mean) {
    Subject ink = new Subject(Optional.empty(), Optional.of(Name.of("ink")), Optional.empty());
    Evidence evidence = new Evidence(days, 0, 60 * days, 0, 0, 0, 0, 0, 0);
    return new Trust(ink, evidence, new Gaussian(mean, 1), standing);
  }

  @ParameterizedTest
  @CsvSource({
    "TRUSTED, false, 5, true",
    "TRUSTED, false, 6, false",
    "PROMISING, false, 3, true",
    "PROMISING, false, 4, false",
    "UNPROVEN, true, 5, true",
    "UNPROVEN, true, 6, false",
    "UNPROVEN, false, 0, false",
    "DOUBTFUL, false, 0, false"
  })
  void lowIsWhatIsWantedAndMayRunOut(Standing standing, boolean kept, int pieces, boolean low) {
    Prospect prospect = prospect("paddle", pieces, trust(standing, 9, 0), kept);
    assertEquals(low, RULE.isLow(prospect));
  }

  @Test
  void riskThatIsAcceptedIsNotLow() {
    Prospect prospect = prospect("paddle", 5, trust(Standing.TRUSTED, 9, 1), false);
    LowRule exact = new LowRule(prospect.runOutChance(), 0.20);
    assertFalse(exact.isLow(prospect));
    assertFalse(exact.isShort(prospect));
    assertTrue(RULE.isShort(prospect));
  }

  /** As likely as not is from one half on: a mean of no advantage. */
  @ParameterizedTest
  @CsvSource({"1, 0, 3, true", "1, 0, 4, false", "0, 0, 3, false", "1, -0.1, 3, false"})
  void shortIsAlsoWhatIsAsLikelyAsNotBetter(int days, double mean, int pieces, boolean isShort) {
    Prospect prospect = prospect("paddle", pieces, trust(Standing.UNPROVEN, days, mean), false);
    assertEquals(isShort, RULE.isShort(prospect));
    assertFalse(RULE.isLow(prospect));
  }

  private static ShoppingLine line(
      String body, Standing standing, Optional<Purchase> purchase, boolean onSale) {
    Prospect prospect = prospect(body, 0, trust(standing, 9, 1), false);
    return new ShoppingLine(prospect, purchase, two(), 0, 0, true, onSale, "", Optional.empty());
  }

  private static Optional<Purchase> from(String shop, String body, int size) {
    Plastic plastic = Plastic.of("", body, "ink", 75);
    return Optional.of(
        new Purchase(new Offer(Name.of(shop), plastic, size, euros(5), true), new Packs(1)));
  }

  @Test
  void whatNobodySellsComesFirstThenShopsThenWhatIsLeftOut() {
    List<ShoppingLine> inOrder =
        List.of(
            line("worm", Standing.TRUSTED, Optional.empty(), false),
            line("craw", Standing.PROMISING, Optional.empty(), false),
            line("eel", Standing.PROMISING, Optional.empty(), false),
            line("craw", Standing.PROMISING, from("Mole", "craw", 20), true),
            line("eel", Standing.TRUSTED, from("Mole", "eel", 6), true),
            line("eel", Standing.TRUSTED, from("Mole", "eel", 20), true),
            line("craw", Standing.TRUSTED, from("Quay", "craw", 6), true),
            line("worm", Standing.TRUSTED, Optional.empty(), true),
            line("craw", Standing.PROMISING, Optional.empty(), true));
    Stream<ShoppingLine> mixed = Stream.of(8, 2, 5, 3, 0, 6, 7, 1, 4).map(inOrder::get);
    assertEquals(inOrder, mixed.sorted(ShoppingLine.ORDER).toList());
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "8, 1", "9, 2", "16, 2", "17, 3"})
  void packsCoverTheNeedAndNoMore(int pieces, int packs) {
    Offer offer = from("Quay", "craw", 8).orElseThrow().offer();
    assertEquals(packs, Purchase.covering(offer, pieces).packs().count());
  }
}

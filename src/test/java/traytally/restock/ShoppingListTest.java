package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;
import static traytally.restock.BoxBuilder.euros;

import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.ledger.Fact;
import traytally.ledger.MovementKind;
import traytally.ledger.Offer;
import traytally.ledger.Setting;
import traytally.performance.Standing;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Packs;
import traytally.plastic.Plastic;

class ShoppingListTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic LONG_INK = Plastic.of("", "paddle", "ink", 120);
  private static final Plastic OLIVE = Plastic.of("", "paddle", "olive", 75);
  private static final Plastic MOSS = Plastic.of("", "paddle", "moss", 75);
  private static final Plastic ROSE = Plastic.of("", "paddle", "rose", 75);

  /** Ink out-fishes olive on every day; both are lost at one an hour. */
  private static BoxBuilder inkIsTrusted(int ink, int olive) {
    BoxBuilder box =
        new BoxBuilder().counted(daysAgo(120), INK, ink).counted(daysAgo(120), OLIVE, olive);
    for (int days = 100; days > 0; days -= 8) {
      box.fished(daysAgo(days), INK, 60, 6, 1).fished(daysAgo(days), OLIVE, 60, 1, 1);
    }
    return box.planned(3, 4).planned(12, 4);
  }

  private static ShoppingList list(BoxBuilder box) {
    return ShoppingList.of(box.book(), TODAY, Asked.NOTHING);
  }

  @Test
  void aTrustedColourThatRunsOutIsBoughtUntilItIsSafe() {
    ShoppingList list = list(inkIsTrusted(3, 2).offered("Quay", INK, 4, 3.50));
    assertEquals(1, list.lines().size());
    ShoppingLine line = list.lines().get(0);
    assertEquals(INK, line.plastic());
    assertEquals(Standing.TRUSTED, line.prospect().standing());
    assertTrue(line.low() && line.prospect().runOutChance() > 0.05);
    assertTrue(line.runOutAfter() <= 0.05, "after " + line.runOutAfter());
    int pieces = line.purchase().orElseThrow().pieces().count();
    assertTrue(line.after().distribution().atLeast(3 + pieces - 4) > 0.05, "a pack too many");
    assertEquals(euros(3.5).times(line.packs().count()), list.total());
    assertEquals(list.goods().plus(list.postage()), list.total());
  }

  @Test
  void enoughPiecesAreNotLow() {
    assertEquals(List.of(), list(inkIsTrusted(60, 0)).lines());
    assertEquals(euros(0), list(inkIsTrusted(60, 0)).total());
  }

  @Test
  void theReasonSaysWhatIsLeftWhatGoesAndWhy() {
    ShoppingLine line = list(inkIsTrusted(3, 9).offered("Quay", INK, 4, 3.50)).lines().get(0);
    long goes = Math.round(line.prospect().expectedUse());
    assertEquals("3 left; about " + goes + " go by 4 June; trusted", line.reason());
  }

  @Test
  void whatNoShopHasIsStillOnTheListWithAStandIn() {
    ShoppingList list = list(inkIsTrusted(1, 9).counted(daysAgo(9), LONG_INK, 60));
    ShoppingLine line = list.lines().get(0);
    assertEquals(Packs.NONE, line.packs());
    assertTrue(
        line.reason().endsWith("trusted; no shop on your price lists has it"), line.reason());
    assertEquals(Optional.of(LONG_INK), line.standIn());
    ShoppingLine out = list(inkIsTrusted(1, 9).soldOut("Quay", INK)).lines().get(0);
    assertTrue(out.reason().endsWith("sold out at Quay"), out.reason());
  }

  @Test
  void keptCountsAsTrustedAndSaysSo() {
    ShoppingList list = list(inkIsTrusted(90, 1).kept(OLIVE).offered("Quay", OLIVE, 8, 4));
    ShoppingLine line = list.lines().get(0);
    assertEquals(OLIVE, line.plastic());
    assertTrue(line.reason().endsWith("; kept"), line.reason());
    assertFalse(line.prospect().standing() == Standing.TRUSTED);
    assertTrue(line.runOutAfter() <= 0.05);
  }

  @Test
  void theAcceptedRiskIsASetting() {
    int careful =
        list(inkIsTrusted(3, 2).set(Setting.TRUSTED_RISK, "0.01").offered("Quay", INK, 1, 1))
            .lines()
            .get(0)
            .packs()
            .count();
    int bold =
        list(inkIsTrusted(3, 2).set(Setting.TRUSTED_RISK, "0.20").offered("Quay", INK, 1, 1))
            .lines()
            .get(0)
            .packs()
            .count();
    assertTrue(careful > bold, careful + " and " + bold);
  }

  @Test
  void withoutALogUseIsAssumedAndSaidToBe() {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(3), INK, 2)
            .counted(daysAgo(3), OLIVE, 8)
            .kept(INK)
            .planned(3, 8)
            .offered("Quay", INK, 8, 4);
    ShoppingList list = list(box);
    ShoppingLine line = list.lines().get(0);
    assertTrue(list.useAssumed());
    // 8 rod-hours, half of them on each, half a piece an hour.
    assertEquals(2, line.prospect().expectedUse(), 1e-9);
    assertEquals("2 left; about 2 go by 4 June (assumed); kept", line.reason());
    assertTrue(list.notes().get(1).contains("use is assumed, 0.5 pieces a rod-hour"));
  }

  @Test
  void withNoTripsAheadOnlyAnEmptyTrayIsLow() {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(3), INK, 0)
            .counted(daysAgo(3), OLIVE, 1)
            .kept(INK)
            .kept(OLIVE);
    ShoppingList list = list(box.offered("Quay", INK, 8, 4));
    assertEquals(List.of(INK), list.lines().stream().map(ShoppingLine::plastic).toList());
    assertEquals(
        "none left; hardly any go by 4 June (assumed); kept", list.lines().get(0).reason());
    assertEquals(1, list.lines().get(0).packs().count());
    assertEquals(0, list.lines().get(0).runOutAfter());
  }

  @Test
  void pricesInAnotherCurrencyAreLeftOutAndSaidToBe() {
    Money dollars = new Money(100, Currency.getInstance("USD"));
    BoxBuilder box =
        inkIsTrusted(1, 9)
            .fact(new Fact.Offered(new Offer(Name.of("Mole"), INK, 8, dollars, true)));
    ShoppingList list = list(box);
    assertEquals(Packs.NONE, list.lines().get(0).packs());
    assertTrue(
        list.notes().contains("Mole has prices not in EUR: left out."), list.notes().toString());
  }

  @Test
  void whatCannotBeBoughtComesFirstThenShopByShop() {
    BoxBuilder box = inkIsTrusted(1, 1).kept(OLIVE).counted(daysAgo(9), MOSS, 0).kept(MOSS);
    box.offered("Quay", INK, 8, 4).offered("Mole", OLIVE, 8, 4);
    ShoppingList list = list(box);
    assertEquals(
        List.of(MOSS, OLIVE, INK), list.lines().stream().map(ShoppingLine::plastic).toList());
    assertEquals(
        List.of("Mole", "Quay"), list.orders().stream().map(o -> o.shop().text()).toList());
  }

  @Test
  void theStandInIsTheSameColourElseTheNearestThatIsKnown() {
    BoxBuilder box = inkIsTrusted(1, 9).counted(daysAgo(9), MOSS, 5).counted(daysAgo(9), ROSE, 50);
    assertEquals(Optional.of(OLIVE), list(box).lines().get(0).standIn()); // by everyday words
    box.swatch("ink", "#101820").swatch("moss", "#2a3020").swatch("rose", "#f0a0b0");
    assertEquals(Optional.of(MOSS), list(box).lines().get(0).standIn());
    Plastic few = Plastic.of("", "craw", "ink", 75);
    box.counted(daysAgo(9), few, 2).counted(daysAgo(9), LONG_INK, 3);
    assertEquals(Optional.of(LONG_INK), list(box).lines().get(0).standIn());
  }

  /** Every number on a line can be worked out again from what the line carries. */
  @Test
  void linesCarryWhatTheyRestOn() {
    ShoppingLine line = list(inkIsTrusted(3, 2).offered("Quay", INK, 4, 3.50)).lines().get(0);
    double mean = 0;
    for (TripUse trip : line.prospect().endless().trips()) {
      LossRate loss = trip.loss();
      double perHour = Math.exp(loss.logMean() + loss.logVariance() / 2) * loss.scale();
      assertEquals(perHour, loss.perHour(), 1e-12);
      mean += trip.rodHours() * trip.share() * perHour;
    }
    assertEquals(mean, line.prospect().expectedUse(), 1e-12);
    int then = 3 + line.purchase().orElseThrow().pieces().count();
    assertEquals(line.after().distribution().atLeast(then), line.runOutAfter());
  }

  /** Boxes drawn at random: every bound is kept by what is bought. */
  @Test
  void everyBoughtPlasticEndsWithinItsRisk() {
    Random random = new Random(11);
    int bought = 0;
    for (int i = 0; i < 10; i++) {
      BoxBuilder box = new BoxBuilder();
      for (int p = 0; p < 12; p++) {
        Plastic plastic = Plastic.of("", "body " + p % 3, "colour " + p / 3, 75);
        box.counted(daysAgo(90), plastic, random.nextInt(4));
        if (random.nextInt(2) == 0) {
          box.kept(plastic);
        }
        box.offered("Quay", plastic, 2 + random.nextInt(6), 3 + random.nextInt(3));
        for (int days = 80; days > 0; days -= 8 + random.nextInt(30)) {
          box.fished(daysAgo(days), plastic, 20 + random.nextInt(60), random.nextInt(3), 1);
        }
      }
      ShoppingList list = list(box.planned(4, 6).planned(8, 6).planned(20, 6));
      for (ShoppingLine line : list.lines()) {
        boolean trusted = line.prospect().kept() || line.prospect().standing() == Standing.TRUSTED;
        assertTrue(line.runOutAfter() <= (trusted ? 0.05 : 0.20), line.toString());
        bought += line.packs().count();
      }
    }
    assertTrue(bought > 20);
  }

  private static ShoppingList within(BoxBuilder box, double euros) {
    return ShoppingList.of(box.book(), TODAY, Asked.NOTHING.within(euros(euros)));
  }

  private static Asked asked(double worth, int untried) {
    return new Asked(
        Optional.empty(),
        OptionalInt.empty(),
        Set.of(),
        Optional.empty(),
        OptionalDouble.of(worth),
        untried);
  }

  private static Plastic first(ShoppingList list) {
    return list.lines().get(0).plastic();
  }

  @Test
  void aBudgetGoesWhereItSavesMostTakes() {
    BoxBuilder box = inkIsTrusted(1, 1).offered("Quay", INK, 4, 5).offered("Quay", OLIVE, 4, 5);
    ShoppingList list = within(box.postage("Quay", 2, 100), 7.50);
    assertEquals(INK, first(list));
    assertEquals(euros(7), list.total());
    assertTrue(list.takesSaved() > 1, "saves " + list.takesSaved());
    assertEquals(list.takesSaved(), list.lines().get(0).takesSaved(), 1e-9);
    assertEquals(Optional.of(euros(7.5)), list.budget());
    assertEquals(euros(0), within(box, 6.99).total());
  }

  @Test
  void whatTheBudgetLeavesOutIsSaidWithWhatItRisks() {
    BoxBuilder box = inkIsTrusted(1, 9).offered("Quay", INK, 4, 5);
    ShoppingList list = within(box, 4);
    assertEquals(Packs.NONE, list.lines().get(0).packs());
    assertTrue(list.lines().get(0).onSale());
    assertEquals(0, list.lines().get(0).takesSaved());
    assertTrue(
        list.lines().get(0).reason().endsWith("left out: the budget saves more takes elsewhere"));
    assertTrue(
        list.notes().stream().anyMatch(n -> n.contains("EUR more would also cover paddle, ink")),
        list.notes().toString());
  }

  @Test
  void whatWasNeverOwnedIsForecastFromItsColourAndBody() {
    Plastic inkCraw = Plastic.of("", "craw", "ink", 75);
    Plastic oliveCraw = Plastic.of("", "craw", "olive", 75);
    BoxBuilder box = inkIsTrusted(0, 9).offered("Quay", inkCraw, 4, 5);
    ShoppingList list = within(box.offered("Quay", oliveCraw, 4, 5), 5);
    ShoppingLine bought =
        list.lines().stream().filter(l -> l.packs().count() > 0).findFirst().orElseThrow();
    assertEquals(inkCraw, bought.plastic());
    assertFalse(bought.low());
    assertTrue(bought.reason().contains("saves about"), bought.reason());
  }

  @Test
  void aColourNeverFishedIsAddedToTryWhenAskedFor() {
    BoxBuilder box = inkIsTrusted(60, 60).offered("Quay", ROSE, 4, 5).offered("Quay", INK, 4, 5);
    assertEquals(List.of(), ShoppingList.of(box.book(), TODAY, asked(10, 0)).lines());
    Asked tryOne = asked(10, 1);
    ShoppingList list = ShoppingList.of(box.book(), TODAY, tryOne);
    assertEquals(ROSE, first(list));
    assertEquals(1, list.lines().get(0).packs().count());
    assertTrue(list.lines().get(0).reason().endsWith("to try"), list.lines().get(0).reason());
  }

  @Test
  void aPackThatIsWorthItsPriceIsBoughtWhateverTheRisk() {
    BoxBuilder box = inkIsTrusted(3, 2).offered("Quay", INK, 1, 1);
    Asked keen = asked(0.005, 0);
    int more = ShoppingList.of(box.book(), TODAY, keen).lines().get(0).packs().count();
    int usual = list(box).lines().get(0).packs().count();
    assertTrue(more > usual, more + " and " + usual);
  }

  @Test
  void aStandInInTheTrayMakesAPackWorthLess() {
    BoxBuilder alone = inkIsTrusted(0, 9).offered("Quay", INK, 4, 5);
    double without = within(alone, 5).takesSaved();
    BoxBuilder beside = inkIsTrusted(0, 9).offered("Quay", INK, 4, 5);
    double with = within(beside.counted(daysAgo(1), LONG_INK, 1), 5).takesSaved();
    assertTrue(with < 0.95 * without, with + " and " + without);
  }

  @Test
  void whatIsLowItselfStandsInOnlyWhereNothingElseDoes() {
    BoxBuilder box = inkIsTrusted(1, 9).counted(daysAgo(9), LONG_INK, 6);
    for (int i = 10; i < 100; i += 5) {
      box.fished(daysAgo(i), LONG_INK, 240, 4, 4);
    }
    assertEquals(Optional.of(LONG_INK), standIn(INK, list(box)));
    Plastic spare = Plastic.of("", "craw", "ink", 75);
    assertEquals(Optional.of(spare), standIn(INK, list(box.counted(daysAgo(9), spare, 5))));
  }

  private static Optional<Plastic> standIn(Plastic plastic, ShoppingList list) {
    return list.lines().stream()
        .filter(line -> line.plastic().equals(plastic))
        .flatMap(line -> line.standIn().stream())
        .findFirst();
  }

  @Test
  void whatOtherShopsHaveIsSaidWhereOneShopWasAskedFor() {
    BoxBuilder box = inkIsTrusted(0, 9).offered("Quay", INK, 4, 5).offered("Pier", ROSE, 4, 5);
    Asked pier = new Asked(Optional.empty(), OptionalInt.empty(), Set.of(Name.of("Pier")));
    ShoppingLine line = ShoppingList.of(box.book(), TODAY, pier).lines().get(0);
    assertEquals(INK, line.plastic());
    assertTrue(line.reason().endsWith("not there; to be had at Quay"), line.reason());
  }

  @Test
  void aBudgetThatSavesLessThanATakeSaysSo() {
    ShoppingList little = within(inkIsTrusted(9, 9).offered("Quay", INK, 1, 1), 1);
    assertTrue(little.takesSaved() > 0 && little.takesSaved() < 1, little.toString());
    assertTrue(little.notes().stream().anyMatch(n -> n.contains("less than one take")));
    ShoppingList much = within(inkIsTrusted(0, 9).offered("Quay", INK, 4, 5), 5);
    assertTrue(much.takesSaved() >= 1, much.toString());
    assertFalse(much.notes().stream().anyMatch(n -> n.contains("less than one take")));
  }

  @Test
  void packsAreBoughtAtThePriceTheAnglerHasPaidBefore() {
    Fact sold = new Fact.Described(INK, "", OptionalInt.of(1), Optional.of(euros(1)), "");
    BoxBuilder frugal = inkIsTrusted(0, 2).offered("Quay", INK, 1, 1).fact(sold);
    BoxBuilder keen = inkIsTrusted(0, 2).offered("Quay", INK, 1, 1).fact(sold);
    for (int i = 1; i <= 3; i++) {
      frugal.moved(daysAgo(i), MovementKind.BOUGHT, INK, 1);
    }
    for (int i = 1; i <= 3; i++) {
      keen.moved(daysAgo(i), MovementKind.BOUGHT, INK, 12);
    }
    ShoppingList few = list(frugal);
    ShoppingList many = list(keen);
    assertTrue(few.notes().stream().anyMatch(n -> n.contains("bought before")), few.toString());
    assertTrue(3 + packs(few) < 36 + packs(many), packs(few) + " and " + packs(many));
  }

  private static int packs(ShoppingList list) {
    return list.lines().stream().mapToInt(line -> line.packs().count()).sum();
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.euros;

import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Offer;
import traytally.ledger.Setting;
import traytally.ledger.Shop;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

class MarketTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "craw", "olive", 75);
  private static final Name QUAY = Name.of("Quay");
  private static final Name MOLE = Name.of("Mole");

  private static Market market(BoxBuilder box) {
    return Market.of(box.book(), Set.of());
  }

  private static Fact terms(Name shop, Optional<Money> postage, OptionalInt days) {
    return new Fact.Traded(new Shop(shop, postage, Optional.empty(), days));
  }

  @Test
  void postageIsFreeFromTheThresholdOn() {
    Market market = market(new BoxBuilder().offered("Quay", INK, 8, 5).postage("Quay", 3, 20));
    assertEquals(euros(3), market.postage(QUAY, euros(19.99)));
    assertEquals(euros(0), market.postage(QUAY, euros(20)));
    assertEquals(Optional.of(euros(20)), market.freeFrom(QUAY));
    assertTrue(market.statesPostage(QUAY));
  }

  @Test
  void shopWithoutTermsAsksNoPostage() {
    Market market = market(new BoxBuilder().offered("Quay", INK, 8, 5));
    assertEquals(euros(0), market.postage(QUAY, euros(5)));
    assertFalse(market.statesPostage(QUAY));
    assertEquals(Optional.empty(), market.freeFrom(QUAY));
  }

  @Test
  void postageInAnotherCurrencyIsNotStated() {
    Money dollars = new Money(300, Currency.getInstance("USD"));
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 8, 5);
    Market market = market(box.fact(terms(QUAY, Optional.of(dollars), OptionalInt.empty())));
    assertFalse(market.statesPostage(QUAY));
    assertEquals(euros(0), market.postage(QUAY, euros(5)));
  }

  @Test
  void thresholdInAnotherCurrencyIsNotStated() {
    Money dollars = new Money(300, Currency.getInstance("USD"));
    Shop terms = new Shop(QUAY, Optional.of(euros(3)), Optional.of(dollars), OptionalInt.empty());
    Market market =
        market(new BoxBuilder().offered("Quay", INK, 8, 5).fact(new Fact.Traded(terms)));
    assertEquals(Optional.empty(), market.freeFrom(QUAY));
    assertEquals(euros(3), market.postage(QUAY, euros(100)));
  }

  @Test
  void offersAreThoseInStockInTheAnglersCurrency() {
    Money dollars = new Money(300, Currency.getInstance("USD"));
    BoxBuilder box = new BoxBuilder().offered("Quay", INK, 20, 9).offered("Quay", INK, 6, 4);
    box.offered("Mole", INK, 8, 5).soldOut("Mole", OLIVE).soldOut("Quay", OLIVE);
    box.fact(new Fact.Offered(new Offer(Name.of("Strand"), OLIVE, 8, dollars, true)));
    Market market = market(box);
    assertEquals(
        List.of("Mole 8", "Quay 6", "Quay 20"),
        market.offers(INK).stream().map(o -> o.shop() + " " + o.packSize()).toList());
    assertEquals(List.of(), market.offers(OLIVE));
    assertEquals(Set.of(INK), market.plastics());
    assertEquals(List.of(MOLE, QUAY), List.copyOf(market.soldOut(OLIVE)));
    assertEquals(Set.of(), market.soldOut(INK));
    assertEquals(Set.of(Name.of("Strand")), market.foreign());
  }

  /** The order may go to the slowest: but not to one that has nothing. */
  @Test
  void deliveryIsThatOfTheSlowestShopWithStock() {
    BoxBuilder box = new BoxBuilder().set(Setting.DELIVERY_DAYS, "6");
    assertEquals(6, days(box));
    assertEquals(6, days(box.offered("Mole", INK, 8, 5)), "no shop says");
    box.offered("Quay", INK, 8, 5).fact(terms(QUAY, Optional.empty(), OptionalInt.of(9)));
    assertEquals(9, days(box));
    box.soldOut("Strand", OLIVE);
    box.fact(terms(Name.of("Strand"), Optional.empty(), OptionalInt.of(30)));
    assertEquals(9, days(box));
    box.fact(terms(QUAY, Optional.empty(), OptionalInt.of(2)));
    assertEquals(6, days(box), "the one that does not say may be slower");
    assertEquals(TODAY.plusDays(36), Outlook.of(box.book(), TODAY).horizon().to());
  }

  private static int days(BoxBuilder box) {
    Book book = box.book();
    return Market.of(book, Set.of()).deliveryDays(book);
  }
}

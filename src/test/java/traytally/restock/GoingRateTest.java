package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;
import static traytally.restock.BoxBuilder.euros;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.MovementKind;
import traytally.plastic.Money;
import traytally.plastic.Plastic;

/** Packs of four for two euros, bought one after another. */
class GoingRateTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);

  private static Fact sold(Money price) {
    return new Fact.Described(INK, "", OptionalInt.of(4), Optional.of(price), "");
  }

  private static BoxBuilder bought(LocalDate... days) {
    BoxBuilder box = new BoxBuilder().fact(sold(euros(2))).planned(3, 40);
    for (LocalDate day : days) {
      box.moved(day, MovementKind.BOUGHT, INK, 4);
    }
    return box;
  }

  private static Outlook outlook(BoxBuilder box) {
    return Outlook.of(box.book(), TODAY);
  }

  private static Worth worth(Outlook outlook) {
    return new Worth(outlook.performance(), outlook.prospects().values());
  }

  private static OptionalDouble rate(BoxBuilder box) {
    Book book = box.book();
    Outlook outlook = outlook(box);
    Market market = Market.of(book, Set.of());
    return GoingRate.of(book, TODAY, outlook.prospects(), worth(outlook), market);
  }

  /** The trays held 0, 4 and 8: the middle purchase is that of 4 to 4, at two euros. */
  @Test
  void itIsTheMiddleOfWhatPurchasesWouldSaveNow() {
    BoxBuilder box = bought(daysAgo(30), daysAgo(20), daysAgo(10));
    Outlook outlook = outlook(box);
    double saved = worth(outlook).saved(outlook.prospect(INK).orElseThrow(), 4, 4);
    assertTrue(saved > 0);
    assertEquals(saved / 2, rate(box).orElseThrow(), 1e-9);
  }

  @Test
  void twoPurchasesAreNoHabit() {
    assertEquals(OptionalDouble.empty(), rate(bought(daysAgo(30), daysAgo(20))));
  }

  @Test
  void purchasesOfOtherYearsAndOfTheFutureDoNotCount() {
    LocalDate longAgo = TODAY.minusYears(2);
    assertEquals(OptionalDouble.empty(), rate(bought(longAgo, daysAgo(20), daysAgo(10))));
    assertTrue(rate(bought(longAgo.plusDays(1), daysAgo(20), daysAgo(10))).isPresent());
    assertEquals(OptionalDouble.empty(), rate(bought(daysAgo(20), daysAgo(10), TODAY.plusDays(1))));
    assertTrue(rate(bought(daysAgo(20), daysAgo(10), TODAY)).isPresent());
  }

  @Test
  void withoutAPriceInTheAnglersMoneyNothingIsKnown() {
    BoxBuilder box = bought(daysAgo(30), daysAgo(20), daysAgo(10));
    Money dollars = new Money(200, Currency.getInstance("USD"));
    assertEquals(OptionalDouble.empty(), rate(box.fact(sold(dollars))));
    assertEquals(OptionalDouble.empty(), rate(box.fact(sold(euros(0)))));
    Fact unknownSize = new Fact.Described(INK, "", OptionalInt.empty(), Optional.of(euros(2)), "");
    assertEquals(OptionalDouble.empty(), rate(box.fact(unknownSize)));
  }

  @Test
  void purchasesThatWouldSaveNothingAreNoRate() {
    BoxBuilder box =
        new BoxBuilder()
            .fact(sold(euros(2)))
            .moved(daysAgo(30), MovementKind.BOUGHT, INK, 4)
            .moved(daysAgo(20), MovementKind.BOUGHT, INK, 4)
            .moved(daysAgo(10), MovementKind.BOUGHT, INK, 4);
    assertEquals(OptionalDouble.empty(), rate(box), "no trip is ahead");
  }

  @Test
  void onlyWhatWasBoughtIsAPurchase() {
    BoxBuilder box =
        bought(daysAgo(30), daysAgo(20)).moved(daysAgo(10), MovementKind.FOUND, INK, 4);
    assertEquals(OptionalDouble.empty(), rate(box));
  }

  @Test
  void purchasesTakenBackDoNotCount() {
    BoxBuilder box = bought(daysAgo(30), daysAgo(20), daysAgo(10));
    Book book = box.book();
    Book without = withUndone(book, 1);
    Outlook outlook = outlook(box);
    Market market = Market.of(book, Set.of());
    assertEquals(
        OptionalDouble.empty(),
        GoingRate.of(without, TODAY, outlook.prospects(), worth(outlook), market));
    assertTrue(
        GoingRate.of(withUndone(book, 2), TODAY, outlook.prospects(), worth(outlook), market)
            .isPresent(),
        "what was taken back is another");
  }

  private static Book withUndone(Book book, long batch) {
    Batch undone =
        new Batch(batch, Instant.EPOCH, "buy", "", OptionalLong.empty(), OptionalLong.of(9));
    return new Book(
        List.of(undone), book.ledger(), book.facts(), book.settings(), book.nextStint());
  }
}

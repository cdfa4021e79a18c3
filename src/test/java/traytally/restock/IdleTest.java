package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;
import static traytally.restock.BoxBuilder.euros;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.plastic.Plastic;

class IdleTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "craw", "olive", 75);

  /** Ink is fished and lost every week, olive once a month and never lost. */
  private static BoxBuilder twoHabits(int ink, int olive) {
    BoxBuilder box = new BoxBuilder();
    for (int week = 1; week <= 20; week++) {
      box.fished(daysAgo(7 * week), INK, 120, 2, 1);
      if (week % 4 == 0) {
        box.fished(daysAgo(7 * week), OLIVE, 30, 0, 0);
      }
    }
    return box.counted(daysAgo(1), INK, ink).counted(daysAgo(1), OLIVE, olive);
  }

  @Test
  void whatIsLeftBeyondTheNinetyPercentBoundIsIdle() {
    Idle idle = Idle.of(twoHabits(10, 60).book(), TODAY, 1);
    assertEquals(List.of(OLIVE), idle.lines().stream().map(l -> l.prospect().plastic()).toList());
    IdleLine line = idle.lines().get(0);
    assertEquals(60 - line.prospect().useP90(), line.idle().count());
    assertTrue(
        line.prospect().endless().distribution().cumulative(60 - line.idle().count()) >= 0.9);
  }

  @Test
  void theLongerOneLooksTheLessIsIdle() {
    Book book = twoHabits(10, 60).book();
    int one = Idle.of(book, TODAY, 1).pieces().count();
    int five = Idle.of(book, TODAY, 5).pieces().count();
    assertTrue(five < one, five + " and " + one);
  }

  @Test
  void moneyIsByTheOwnListElseByTheLowestPriceOfAShop() {
    BoxBuilder box = twoHabits(10, 60).offered("Quay", OLIVE, 10, 8).offered("Pier", OLIVE, 5, 3);
    Idle shops = Idle.of(box.book(), TODAY, 1);
    int pieces = shops.pieces().count();
    assertEquals(euros(0.6 * pieces), shops.money());
    box.fact(new Fact.Described(OLIVE, "", OptionalInt.of(8), Optional.of(euros(4)), ""));
    assertEquals(euros(0.5 * pieces), Idle.of(box.book(), TODAY, 1).money());
  }

  @Test
  void withoutALogOrAPlanNothingIsSaidToBeIdle() {
    Idle idle = Idle.of(new BoxBuilder().counted(daysAgo(1), INK, 500).book(), TODAY, 1);
    assertEquals(List.of(), idle.lines());
  }

  @Test
  void trayThatIsJustEnoughIsNotIdle() {
    int bound = 60 - Idle.of(twoHabits(10, 60).book(), TODAY, 1).lines().get(0).idle().count();
    assertEquals(1, Idle.of(twoHabits(10, bound + 1).book(), TODAY, 1).pieces().count());
    assertEquals(List.of(), Idle.of(twoHabits(10, bound).book(), TODAY, 1).lines());
  }
}

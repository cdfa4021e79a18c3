package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;
import static traytally.restock.BoxBuilder.euros;

import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.plastic.Plastic;

/** What is said of how a list was made. */
class ReasonsTest {
  private static final String PAST =
      "Every trip of your plan is past: import a plan of trips to come.";
  private static final String NOTHING_LOW =
      "Nothing that you trust, or that is promising, is running low.";
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);

  private static BoxBuilder ink(int pieces) {
    return new BoxBuilder().counted(daysAgo(9), INK, pieces).kept(INK);
  }

  private static List<String> notes(BoxBuilder box) {
    return ShoppingList.of(box.book(), TODAY, Asked.NOTHING).notes();
  }

  private static List<String> within(BoxBuilder box, double euros) {
    return ShoppingList.of(box.book(), TODAY, Asked.NOTHING.within(euros(euros))).notes();
  }

  @Test
  void planThatIsPastIsSaid() {
    assertTrue(notes(ink(0).planned(-3, 4).planned(-9, 4)).contains(PAST));
    assertFalse(notes(ink(0).planned(-3, 4).planned(9, 4)).contains(PAST));
    assertFalse(notes(ink(0).planned(0, 4)).contains(PAST), "today is to come");
    assertFalse(notes(ink(0)).contains(PAST), "there is no plan");
  }

  @Test
  void shopThatStatesNoPostageIsNamed() {
    String none = "Quay states no postage: taken as none.";
    BoxBuilder box = ink(0).planned(3, 4).offered("Quay", INK, 8, 5);
    assertTrue(notes(box).contains(none), notes(box).toString());
    assertFalse(notes(box.postage("Quay", 3, 50)).contains(none));
  }

  @Test
  void fullBoxIsSaidToBeFull() {
    assertTrue(notes(ink(90).planned(3, 4)).contains(NOTHING_LOW));
    assertFalse(notes(ink(0).planned(3, 4)).contains(NOTHING_LOW));
  }

  @Test
  void budgetThatBuysNothingIsSaid() {
    BoxBuilder box = ink(0).planned(3, 4).offered("Quay", INK, 8, 5).postage("Quay", 2, 50);
    String nothing = "Nothing that " + euros(6.99) + " can buy would save a take.";
    assertTrue(within(box, 6.99).contains(nothing), within(box, 6.99).toString());
    assertFalse(within(box, 7).stream().anyMatch(note -> note.endsWith("would save a take.")));
  }

  @Test
  void whatIsLeftOutIsNamedUpToThree() {
    assertEquals(
        euros(5)
            + " more would also cover a, b, c; without it a tray there is empty by then with a"
            + " chance of up to 40 %.",
        Reasons.leftOut(euros(5), List.of("a", "b", "c"), 0.4));
    assertTrue(
        Reasons.leftOut(euros(5), List.of("a", "b", "c", "d", "e"), 0.4)
            .contains("cover a, b, c and 2 more;"));
  }
}

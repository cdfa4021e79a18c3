package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;

import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.ledger.Fact;
import traytally.ledger.MovementKind;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Trip;

/** On which trips a tray's last piece went. */
class TrayHistoryTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "craw", "olive", 75);

  private static boolean emptied(BoxBuilder box, int daysAgo) {
    List<Turn> turns =
        Turn.of(box.book().facts(Fact.Fished.class).stream().map(Fact.Fished::stint).toList(), 1);
    return new TrayHistory(box.book(), turns, List.of(INK), TODAY)
        .emptied(INK, new Trip(daysAgo(daysAgo), Name.of("Gull Rocks")));
  }

  private static BoxBuilder fishedTwice() {
    return new BoxBuilder()
        .fished(daysAgo(30), INK, 60, 0, 1)
        .fished(daysAgo(20), INK, 60, 0, 1)
        .fished(daysAgo(10), OLIVE, 60, 0, 0);
  }

  @Test
  void ledgerSaysOnceItKnowsTheTray() {
    BoxBuilder box = fishedTwice().counted(daysAgo(40), INK, 2);
    box.moved(daysAgo(30), MovementKind.LOST, INK, -1);
    assertFalse(emptied(box, 30));
    assertFalse(emptied(box, 20), "one was left");
    box.moved(daysAgo(20), MovementKind.LOST, INK, -1);
    assertTrue(emptied(box, 20));
    assertFalse(emptied(box, 10), "it was empty then, and not fished");
  }

  @Test
  void whatNobodyHadCountedWasNotSeenToEmpty() {
    assertFalse(emptied(fishedTwice(), 20));
    assertFalse(emptied(fishedTwice().counted(daysAgo(5), INK, 0), 20));
  }

  /** What was bought before it was ever fished was empty until then. */
  @Test
  void trayThatWasNeverFullWasNotEmptied() {
    BoxBuilder box = new BoxBuilder().moved(daysAgo(20), MovementKind.BOUGHT, INK, 1);
    box.fished(daysAgo(20), INK, 60, 0, 1).moved(daysAgo(20), MovementKind.LOST, INK, -1);
    assertFalse(emptied(box, 20));
  }

  private static boolean had(BoxBuilder box, int daysAgo) {
    List<Turn> turns =
        Turn.of(box.book().facts(Fact.Fished.class).stream().map(Fact.Fished::stint).toList(), 1);
    return new TrayHistory(box.book(), turns, List.of(INK), TODAY)
        .had(INK, new Trip(daysAgo(daysAgo), Name.of("Long Ledge")));
  }

  @Test
  void trayIsKnownFromItsFirstCount() {
    BoxBuilder box = new BoxBuilder().counted(daysAgo(40), INK, 0).counted(daysAgo(10), INK, 3);
    assertFalse(had(box, 20));
    assertTrue(had(box, 5));
  }

  @Test
  void trayIsKnownFromItsFirstMovementWhereThatIsEarlier() {
    BoxBuilder box =
        new BoxBuilder()
            .moved(daysAgo(30), MovementKind.FOUND, INK, 2)
            .moved(daysAgo(25), MovementKind.LOST, INK, -2)
            .moved(daysAgo(8), MovementKind.FOUND, INK, 3)
            .fact(new Fact.Counted(INK, daysAgo(5), 3, true));
    assertFalse(had(box, 20));
    assertTrue(had(box, 27));
  }

  @Test
  void whatWasFishedBeforeItWasBoughtIsKnownWhenItWasFished() {
    BoxBuilder box = new BoxBuilder().moved(daysAgo(20), MovementKind.BOUGHT, INK, 8);
    box.fished(daysAgo(30), "Long Ledge", INK, 60, 0, 0);
    assertFalse(had(box, 25), "it came with the purchase");
    assertTrue(had(box, 30));
  }

  @Test
  void whatMovesLaterIsNotKnownYet() {
    BoxBuilder box = new BoxBuilder().moved(TODAY.plusDays(5), MovementKind.FOUND, INK, 3);
    assertFalse(had(box, 3));
    assertFalse(had(box.fact(new Fact.Counted(INK, TODAY.plusDays(5), 3, true)), 3));
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.MovementKind;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.PlannedTrip;

class DemandTest {
  private static final Plastic A = Plastic.of("", "craw", "ink", 75);
  private static final Plastic B = Plastic.of("", "paddle", "olive", 75);
  private static final Plastic C = Plastic.of("", "shrimp", "rust", 75);

  private static BoxBuilder box(int a, int b, int c) {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(100), A, a)
            .counted(daysAgo(100), B, b)
            .counted(daysAgo(100), C, c);
    for (int days = 90; days > 0; days -= 6) {
      box.fished(daysAgo(days), A, 60, 1, 1)
          .fished(daysAgo(days), B, 60, 1, 1)
          .fished(daysAgo(days), C, 60, 1, 1);
    }
    return box.planned(3, 4).planned(9, 4).planned(15, 4);
  }

  private static double share(Use use) {
    return use.trips().get(0).share();
  }

  @Test
  void endlessTraysShareTheHoursAmongThemselves() {
    Outlook outlook = Outlook.of(box(50, 50, 50).book(), TODAY);
    double sum = outlook.prospects().values().stream().mapToDouble(p -> share(p.endless())).sum();
    assertEquals(1, sum, 1e-9);
    double hours =
        outlook.prospects().values().stream()
            .flatMap(p -> p.endless().trips().stream())
            .mapToDouble(t -> t.rodHours() * t.share())
            .sum();
    assertEquals(12, hours, 1e-9);
  }

  @Test
  void theHoursOfATrayThatEmptiesGoToWhatRemains() {
    Outlook full = Outlook.of(box(50, 50, 50).book(), TODAY);
    Outlook oneLeft = Outlook.of(box(50, 1, 50).book(), TODAY);
    double before = share(full.prospect(A).orElseThrow().asItIs());
    double after = share(oneLeft.prospect(A).orElseThrow().asItIs());
    assertEquals(before, share(full.prospect(A).orElseThrow().endless()), 1e-6);
    assertTrue(after > before + 0.03, before + " then " + after);
    assertTrue(after < 0.5, "B's one piece lasts a while: " + after);
    assertEquals(before, share(oneLeft.prospect(A).orElseThrow().endless()), 1e-9);
  }

  @Test
  void anEmptyTrayNobodyMissesTakesNoHours() {
    Outlook outlook = Outlook.of(box(50, 0, 50).book(), TODAY);
    assertEquals(0.5, share(outlook.prospect(A).orElseThrow().endless()), 0.01);
    Outlook kept = Outlook.of(box(50, 0, 50).kept(B).book(), TODAY);
    assertEquals(1 / 3.0, share(kept.prospect(A).orElseThrow().endless()), 0.03);
    assertEquals(1, kept.prospect(B).orElseThrow().runOutChance());
  }

  @Test
  void runOutChanceFallsWithPieces() {
    double last = 1.1;
    for (int pieces = 0; pieces < 20; pieces++) {
      double chance =
          Outlook.of(box(pieces, 50, 50).book(), TODAY).prospect(A).orElseThrow().runOutChance();
      assertTrue(chance < last, pieces + " pieces: " + chance);
      last = chance;
    }
    assertTrue(last < 0.02);
  }

  @Test
  void aTripAlreadyLoggedIsNotAheadAnyMore() {
    Outlook outlook =
        Outlook.of(box(9, 9, 9).planned(0, 5).fished(TODAY, A, 60, 0, 0).book(), TODAY);
    assertEquals(3, outlook.horizon().planned());
    assertEquals(4, Outlook.of(box(9, 9, 9).planned(0, 5).book(), TODAY).horizon().planned());
  }

  @Test
  void whatIsDatedLaterIsNotKnownYet() {
    BoxBuilder box = box(9, 9, 9);
    double before = Outlook.of(box.book(), TODAY).prospect(A).orElseThrow().runOutChance();
    box.fished(TODAY.plusDays(1), A, 600, 9, 9);
    box.moved(TODAY.plusDays(1), MovementKind.LOST, A, -9);
    assertEquals(before, Outlook.of(box.book(), TODAY).prospect(A).orElseThrow().runOutChance());
  }

  @Test
  void aBoxWithNothingInItLooksAheadToNothing() {
    Outlook outlook = Outlook.of(new BoxBuilder().book(), TODAY);
    assertTrue(outlook.prospects().isEmpty());
    assertTrue(outlook.useAssumed());
    Outlook planned =
        Outlook.of(
            new BoxBuilder().planned(2, 4).book(),
            TODAY,
            new Asked(Optional.empty(), OptionalInt.of(3), Set.of()),
            4);
    assertEquals(1, planned.horizon().trips().size());
  }

  /**
   * By hand: no log, one plastic, half a piece a rod-hour (the setting's), two rods for 3 hours.
   */
  @Test
  void twoRodsUseTwiceAsMuch() {
    PlannedTrip twoRods =
        new PlannedTrip(
            TODAY.plusDays(2), Name.of("Gull Rocks"), Name.BLANK, Optional.empty(), 3, 2, "");
    Outlook outlook =
        Outlook.of(
            new BoxBuilder().counted(TODAY, A, 9).fact(new Fact.Planned(twoRods, "")).book(),
            TODAY,
            new Asked(Optional.empty(), OptionalInt.of(1), Set.of()),
            4);
    assertEquals(0.5 * 2 * 3, outlook.prospect(A).orElseThrow().expectedUse(), 1e-9);
  }

  /**
   * By hand: A had 3/4 of the time and B 1/4, so what has A's body and B's colour weighs (3/4 + 1/4
   * + 1/2) / 3 = 1/2 beside the two; a stranger, 1/2 as well; another of A's body, (3/4 + 2 × 1/2)
   * / 3.
   */
  @Test
  void whatWasNeverOwnedIsForecastFromItsColourAndBody() {
    Plastic mixed = Plastic.of("", "craw", "olive", 75);
    Plastic stranger = Plastic.of("", "eel", "pearl", 75);
    Plastic craw = Plastic.of("", "craw", "pearl", 75);
    BoxBuilder box = new BoxBuilder().counted(daysAgo(50), A, 20).counted(daysAgo(50), B, 20);
    for (int days = 40; days > 0; days -= 10) {
      box.fished(daysAgo(days), A, 90, 1, 1).fished(daysAgo(days), B, 30, 1, 1);
    }
    box.planned(3, 4);
    for (Plastic plastic : new Plastic[] {mixed, stranger, craw}) {
      box.offered("Quay", plastic, 8, 5);
    }
    Book book = box.book();
    Outlook outlook = Outlook.of(book, TODAY, Asked.NOTHING, Market.of(book, Set.of()));
    assertEquals(0.5 / 1.5, newcomerShare(outlook, mixed), 1e-9);
    assertEquals(0.5 / 1.5, newcomerShare(outlook, stranger), 1e-9);
    assertEquals(1.75 / 3 / (1 + 1.75 / 3), newcomerShare(outlook, craw), 1e-9);
  }

  private static double newcomerShare(Outlook outlook, Plastic plastic) {
    return share(Optional.ofNullable(outlook.newcomers().get(plastic)).orElseThrow().endless());
  }

  /**
   * By hand, without a log: two like plastics have half each, and likings differ by σ = 1, so that
   * a weight's variance over its square is e − 1 (log-normal), of which half moves the share. The
   * assumed rate's variance is 0.5².
   */
  @Test
  void doubtOfRateAndShareIsThatOfWhatTheyRestOn() {
    BoxBuilder box = new BoxBuilder().counted(TODAY, A, 9).counted(TODAY, B, 9).planned(3, 8);
    Use use = Outlook.of(box.book(), TODAY).prospect(A).orElseThrow().endless();
    assertEquals(4, use.hours(), 1e-9);
    assertEquals(0.25, use.rateVariance(), 1e-9);
    assertEquals((1 - 0.5) * Math.expm1(1), use.shareVariance(), 1e-9);
  }

  /** A newcomer weighs ½ beside the two: a third of the hours, as much in doubt as any. */
  @Test
  void doubtOfANewcomerRestsOnThePriorAlone() {
    BoxBuilder box = new BoxBuilder().counted(TODAY, A, 9).counted(TODAY, B, 9).planned(3, 8);
    Use use = newcomer(box.offered("Quay", C, 8, 5), C);
    assertEquals(1 / 3.0, share(use), 1e-9);
    assertEquals(0.25, use.rateVariance(), 1e-9);
    assertEquals((1 - 1 / 3.0) * Math.expm1(1), use.shareVariance(), 1e-9);
  }

  @Test
  void newcomersToAnEmptyBoxShareItsHours() {
    BoxBuilder box = new BoxBuilder().planned(3, 8);
    for (Plastic plastic : new Plastic[] {A, B, C}) {
      box.offered("Quay", plastic, 8, 5);
    }
    assertEquals(1 / 3.0, share(newcomer(box, B)), 1e-9);
  }

  private static Use newcomer(BoxBuilder box, Plastic plastic) {
    Book book = box.book();
    Outlook outlook = Outlook.of(book, TODAY, Asked.NOTHING, Market.of(book, Set.of()));
    return Optional.ofNullable(outlook.newcomers().get(plastic)).orElseThrow().endless();
  }

  @Test
  void emptyTrayLeavesItsHoursToTheOthersFromTheStart() {
    Outlook outlook = Outlook.of(box(50, 0, 50).kept(B).book(), TODAY);
    assertEquals(0.5, share(outlook.prospect(A).orElseThrow().asItIs()), 0.01);
  }

  /** Of the box nothing is left or missed, and three newcomers weigh ½ each. */
  @Test
  void newcomersToABoxOfEmptyTraysShareItsHours() {
    BoxBuilder box = new BoxBuilder().counted(TODAY, A, 0).counted(TODAY, B, 0).planned(3, 8);
    for (String body : new String[] {"eel", "frog", "grub"}) {
      box.offered("Quay", Plastic.of("", body, "pearl " + body, 75), 8, 5);
    }
    assertEquals(1 / 3.0, share(newcomer(box, Plastic.of("", "eel", "pearl eel", 75))), 1e-9);
  }
}

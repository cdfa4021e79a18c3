package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.MovementKind;
import traytally.performance.Levels;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

class ChoiceTest {
  // Different bodies and colours, so that the prior is even between like shares.
  private static final Plastic A = Plastic.of("", "craw", "ink", 75);
  private static final Plastic B = Plastic.of("", "paddle", "olive", 75);
  private static final Plastic C = Plastic.of("", "shrimp", "rust", 75);
  private static final PlannedTrip PLAN = plan("Gull Rocks", "", Optional.empty());

  private static PlannedTrip plan(String water, String species, Optional<Clarity> clarity) {
    return new PlannedTrip(TODAY, Name.of(water), Name.of(species), clarity, 4, 1, "");
  }

  private static List<Stint> log(Book book) {
    return book.facts(Fact.Fished.class).stream().map(Fact.Fished::stint).toList();
  }

  private static ChoiceWeights weights(Book book, Plastic... plastics) {
    List<Turn> turns = Turn.of(log(book), 1);
    Levels<Plastic> levels = new Levels<>(Arrays.asList(plastics));
    TrayHistory history = new TrayHistory(book, turns, levels.values(), TODAY);
    LikelyTrays trays = new LikelyTrays(levels, Outing.of(turns, log(book)), turns, history);
    return new Choice(levels, trays, TODAY).weights(PLAN);
  }

  private static double[] array(ChoiceWeights weights) {
    return IntStream.range(0, weights.size()).mapToDouble(weights::weight).toArray();
  }

  private static double weightOfThreeQuarters(int trips) {
    BoxBuilder box = new BoxBuilder().counted(daysAgo(50), A, 9).counted(daysAgo(50), B, 9);
    for (int trip = 1; trip <= trips; trip++) {
      String water = "Water " + trip;
      box.fished(TODAY, water, A, 90, 0, 0).fished(TODAY, water, B, 30, 0, 0);
    }
    return weights(box.book(), A, B).weight(0);
  }

  @Test
  void fullTraysAreWeighedByTheirTimeTheMoreTheLongerTheLog() {
    double one = weightOfThreeQuarters(1);
    double four = weightOfThreeQuarters(4);
    assertTrue(0.5 < one && one < four && four < 0.75, one + " and " + four);
    assertEquals(0.75, weightOfThreeQuarters(60), 0.005);
  }

  @Test
  void aTripThatBeganWithAnEmptyTrayIsNoEvidenceAgainstIt() {
    // Both were fished alike while both had pieces; then A's tray was empty for eight trips.
    BoxBuilder box = new BoxBuilder();
    box.counted(daysAgo(60), A, 2).counted(daysAgo(60), B, 99);
    for (int days = 50; days > 40; days--) {
      box.fished(daysAgo(days), A, 60, 0, 0).fished(daysAgo(days), B, 60, 0, 0);
    }
    box.moved(daysAgo(41), MovementKind.LOST, A, -2);
    for (int days = 40; days > 30; days--) {
      box.fished(daysAgo(days), B, 120, 0, 0);
    }
    ChoiceWeights weights = weights(box.book(), A, B);
    assertEquals(1, weights.weight(0) + weights.weight(1), 1e-6);
    assertEquals(0.5, weights.weight(0), 0.02);
  }

  @Test
  void weightsSumToOneHoweverTheTraysStood() {
    BoxBuilder box = new BoxBuilder().counted(daysAgo(20), A, 5).counted(daysAgo(30), C, 0);
    for (int days = 40; days > 2; days -= 3) {
      box.fished(daysAgo(days), days % 2 == 0 ? A : B, 60, 0, 0).fished(daysAgo(days), B, 9, 0, 0);
    }
    double[] weight = array(weights(box.book(), A, B, C));
    assertEquals(1, Arrays.stream(weight).sum(), 1e-6);
    assertTrue(weight[2] > 0.05, "never in the tray, never refused: " + weight[2]);
  }

  @Test
  void onePlasticADayIsOneTurnATripAndMixedDaysAreMore() {
    BoxBuilder single = new BoxBuilder().counted(daysAgo(60), A, 9).counted(daysAgo(60), B, 9);
    BoxBuilder mixed = new BoxBuilder().counted(daysAgo(60), A, 9).counted(daysAgo(60), B, 9);
    for (int days = 20; days > 0; days--) {
      single.fished(daysAgo(days), days % 2 == 0 ? A : B, 60, 0, 0);
      mixed.fished(daysAgo(days), A, 60 + days % 2 * 30, 0, 0);
      mixed.fished(daysAgo(days), B, 90 - days % 2 * 30, 0, 0);
    }
    // 1/c = 1 over 20 trips, and 1/4 over the two that are assumed.
    assertEquals(22 / 20.5, weights(single.book(), A, B).turns(), 0.01);
    assertTrue(weights(mixed.book(), A, B).turns() > 10);
  }

  @Test
  void withoutALogAllAreAlike() {
    ChoiceWeights weights = weights(new BoxBuilder().counted(TODAY, A, 1).book(), A, B, C);
    assertArrayEquals(new double[] {1 / 3.0, 1 / 3.0, 1 / 3.0}, array(weights), 1e-12);
    assertEquals(4, weights.turns());
  }

  @Test
  void likenessFallsWithEachDifference() {
    Outing outing =
        new Outing(
            new Trip(TODAY, Name.of("Gull Rocks")),
            Name.of("bass"),
            Optional.of(Clarity.CLEAR),
            new TreeMap<>(),
            Map.of());
    assertEquals(1, outing.likeness(plan("gull rocks", "Bass", Optional.of(Clarity.CLEAR))));
    assertEquals(1, outing.likeness(plan("", "", Optional.empty())));
    assertEquals(0.3, outing.likeness(plan("", "wrasse", Optional.empty())), 1e-12);
    assertEquals(0.6, outing.likeness(plan("Mill Weir", "bass", Optional.empty())), 1e-12);
    assertEquals(
        0.3 * 0.6 * 0.8,
        outing.likeness(plan("Mill Weir", "wrasse", Optional.of(Clarity.DIRTY))),
        1e-12);
  }

  /** Of a plastic that lay in no tray, beside A, fished much, and B, fished little. */
  private static double weightBesideAandB(Plastic never) {
    BoxBuilder box = new BoxBuilder().counted(daysAgo(99), A, 9).counted(daysAgo(99), B, 9);
    box.counted(daysAgo(99), never, 0);
    for (int days = 90; days > 30; days--) {
      box.fished(daysAgo(days), A, 90, 0, 0).fished(daysAgo(days), B, 30, 0, 0);
    }
    int place = new Levels<>(List.of(A, B, never)).of(never);
    return weights(box.book(), A, B, never).weight(place);
  }

  @Test
  void whatNeverLayInTheTrayIsTakenToBeLikedAsItsBodyAndColourAre() {
    double likeMuch = weightBesideAandB(Plastic.of("", "craw", "rust", 75));
    // A third each: what the others of its body had of the trips (A three quarters, itself nothing,
    // B, which is alone, the average), of its colour (all are alone), and the same for all.
    assertEquals((0.75 / (0.75 + 0 + 1 / 3.0) + 1 / 3.0 + 1 / 3.0) / 3, likeMuch, 5e-4);
    assertEquals(likeMuch, weightBesideAandB(Plastic.of("", "shrimp", "ink", 75)), 1e-9);
    double likeLittle = weightBesideAandB(Plastic.of("", "paddle", "rust", 75));
    assertEquals((0.25 / (0.25 + 0 + 1 / 3.0) + 1 / 3.0 + 1 / 3.0) / 3, likeLittle, 5e-4);
    assertEquals(1 / 3.0, weightBesideAandB(C), 5e-4);
  }

  private static boolean had(BoxBuilder box, Plastic plastic, LocalDate date) {
    Book book = box.book();
    List<Turn> turns = Turn.of(log(book), 1);
    return new TrayHistory(book, turns, List.of(A, B, C), TODAY)
        .had(plastic, new Trip(date, Name.of("Gull Rocks")));
  }

  @Test
  void theLedgerKnowsPastTraysFromTheFirstCountOn() {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(20), A, 2)
            .moved(daysAgo(10), MovementKind.LOST, A, -2)
            .moved(daysAgo(5), MovementKind.BOUGHT, A, 8);
    assertTrue(had(box, A, daysAgo(15)));
    assertTrue(had(box, A, daysAgo(10)), "the loss of that day came later in the day");
    assertFalse(had(box, A, daysAgo(9)));
    assertTrue(had(box, A, daysAgo(4)));
    assertFalse(had(box, A, daysAgo(200)), "not known");
  }

  @Test
  void whatCameByPurchaseWasNotThereBefore() {
    BoxBuilder box = new BoxBuilder().moved(daysAgo(10), MovementKind.BOUGHT, A, 8);
    assertFalse(had(box, A, daysAgo(12)));
    assertTrue(had(box, A, daysAgo(9)));
  }
}

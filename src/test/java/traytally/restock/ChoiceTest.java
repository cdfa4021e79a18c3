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
    return new Choice(levels, Outing.of(turns, log(book)), history, TODAY).weights(PLAN);
  }

  private static double[] array(ChoiceWeights weights) {
    return IntStream.range(0, weights.size()).mapToDouble(weights::weight).toArray();
  }

  @Test
  void fullTraysAreWeighedByTheirTime() {
    BoxBuilder box = new BoxBuilder().counted(daysAgo(50), A, 9).counted(daysAgo(50), B, 9);
    for (int day = 1; day <= 4; day++) {
      box.fished(TODAY, "Water " + day, A, 90, 0, 0).fished(TODAY, "Water " + day, B, 30, 0, 0);
    }
    // Four trips of weight 0.6: (0.75 × 2.4 + 2 × prior) / 4.4, prior (0.75 + 0.75 + 0.5) / 3.
    double first = (0.75 * 2.4 + 2 * (2 / 3.0)) / 4.4;
    assertArrayEquals(new double[] {first, 1 - first}, array(weights(box.book(), A, B)), 1e-6);
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
    assertEquals(1, weights(single.book(), A, B).turns(), 0.01);
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
    assertTrue(had(box, A, daysAgo(200)), "there when first counted, so there before");
  }

  @Test
  void beforeTheFirstCountAnEmptyTrayWasEmptySinceItsLastStint() {
    BoxBuilder box =
        new BoxBuilder().counted(TODAY, A, 0).counted(TODAY, B, 0).fished(daysAgo(9), A, 9, 0, 0);
    assertTrue(had(box, A, daysAgo(12)));
    assertTrue(had(box, A, daysAgo(9)));
    assertFalse(had(box, A, daysAgo(8)));
    assertFalse(had(box, B, daysAgo(12)));
    assertFalse(had(box, C, daysAgo(12)));
  }

  @Test
  void whatCameByPurchaseWasNotThereBefore() {
    BoxBuilder box = new BoxBuilder().moved(daysAgo(10), MovementKind.BOUGHT, A, 8);
    assertFalse(had(box, A, daysAgo(12)));
    assertTrue(had(box, A, daysAgo(9)));
  }

  /**
   * By hand: half the trip's time went to A until its last piece was lost, so A could be chosen in
   * that half only and had all of it. Shares 1 and 1/2 of the time at hand make a prior of 11/18
   * and 7/18; v_A solves v (1/2 / (1 − v/2) + 2) = 1/2 + 22/18.
   */
  @Test
  void aTrayThatEmptiesOnATripIsAtHandUntilThen() {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(5), A, 1)
            .counted(daysAgo(5), B, 9)
            .fished(TODAY, A, 60, 0, 1)
            .moved(TODAY, MovementKind.LOST, A, -1)
            .fished(TODAY, B, 60, 0, 0);
    double p = 0.5 + 22.0 / 18;
    double v = (2.5 + p / 2 - Math.sqrt((2.5 + p / 2) * (2.5 + p / 2) - 4 * p)) / 2;
    assertArrayEquals(new double[] {v, 1 - v}, array(weights(box.book(), A, B)), 1e-6);
  }

  /**
   * By hand: shares ½, ¼, ¼. The craws average 3/8 and the paddle 1/4, together 1; the colours are
   * ½, ¼, ¼; a third each with 1/3. One trip of weight 1: (share + 2 prior) / 3.
   */
  @Test
  void priorIsAThirdEachOfBodyColourAndAllAlike() {
    Plastic olive = Plastic.of("", "craw", "olive", 75);
    Plastic rust = Plastic.of("", "paddle", "rust", 75);
    BoxBuilder box = new BoxBuilder();
    List.of(A, olive, rust).forEach(plastic -> box.counted(daysAgo(50), plastic, 9));
    box.fished(TODAY, A, 60, 0, 0).fished(TODAY, olive, 30, 0, 0).fished(TODAY, rust, 30, 0, 0);
    double[] expected = {
      (0.5 + 2 * (0.375 + 0.5 + 1 / 3.0) / 3) / 3,
      (0.25 + 2 * (0.375 + 0.25 + 1 / 3.0) / 3) / 3,
      (0.25 + 2 * (0.25 + 0.25 + 1 / 3.0) / 3) / 3
    };
    assertArrayEquals(expected, array(weights(box.book(), A, olive, rust)), 1e-6);
  }

  /**
   * By hand: a year ago (weight ½) only A had pieces; today (other water, 0.6) A was fished nine
   * tenths. A had 1.04 of 1.1, B 0.06 of 0.6. At the fixed point the weights sum to one, so that B,
   * at hand on one trip, is trips_B / (0.6 + 2), and A the rest.
   */
  @Test
  void oldAndUnlikeTripsWeighLess() {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(400), A, 9)
            .counted(daysAgo(400), B, 0)
            .moved(daysAgo(10), MovementKind.BOUGHT, B, 9)
            .fished(daysAgo(365), A, 60, 0, 0)
            .fished(TODAY, "Mill Weir", A, 90, 0, 0)
            .fished(TODAY, "Mill Weir", B, 10, 0, 0);
    double shareA = 1.04 / 1.1;
    double shareB = 0.06 / 0.6;
    double priorB = (2 * shareB / (shareA + shareB) + 0.5) / 3;
    double b = (0.06 + 2 * priorB) / 2.6;
    ChoiceWeights weights = weights(box.book(), A, B);
    assertArrayEquals(new double[] {1 - b, b}, array(weights), 1e-6);
    // Turns: expected Σ v² is 1 on the first trip; what came was 1 there and 0.81 + 0.01 today.
    double expected = 0.5 + 0.6 * ((1 - b) * (1 - b) + b * b);
    double chosen = 0.5 + 0.6 * (0.81 + 0.01);
    assertEquals((1.1 - expected) / (chosen - expected), weights.turns(), 1e-4);
  }

  /** By hand: 0.75 and 0.25 of one trip; C was never at hand, and keeps its prior of 1/9. */
  @Test
  void whatWasNeverAtHandKeepsItsPrior() {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(50), A, 9)
            .counted(daysAgo(50), B, 9)
            .counted(daysAgo(50), C, 0)
            .fished(TODAY, A, 90, 0, 0)
            .fished(TODAY, B, 30, 0, 0);
    double both = 1 - 1 / 9.0;
    double[] trips = {0.75 + 2 * (1.5 + 1 / 3.0) / 3, 0.25 + 2 * (0.5 + 1 / 3.0) / 3};
    double all = trips[0] + trips[1];
    assertArrayEquals(
        new double[] {both * trips[0] / all, both * trips[1] / all, 1 / 9.0},
        array(weights(box.book(), A, B, C)),
        1e-6);
  }

  /** Shares that are as even as the weights say are many turns; the most told apart is 50. */
  @Test
  void evenDaysAreAsManyTurnsAsCount() {
    BoxBuilder box = new BoxBuilder().counted(daysAgo(60), A, 9).counted(daysAgo(60), B, 9);
    for (int days = 20; days > 0; days--) {
      box.fished(daysAgo(days), A, 60, 0, 0).fished(daysAgo(days), B, 60, 0, 0);
    }
    assertEquals(50, weights(box.book(), A, B).turns());
  }
}

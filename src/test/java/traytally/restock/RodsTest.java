package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.ledger.Fact;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** Two rods for an hour are two rod-hours, in the log as in the plan; and a plan's conditions. */
class RodsTest {
  private static final Plastic A = Plastic.of("", "craw", "ink", 75);
  private static final Plastic B = Plastic.of("", "paddle", "olive", 75);
  private static final Name ROCKS = Name.of("Gull Rocks");

  private static Fact stint(
      LocalDate date, String species, Clarity clarity, Plastic plastic, double minutes, int rods) {
    return new Fact.Fished(
        new Stint(
            new Trip(date, ROCKS),
            Name.of(species),
            Optional.of(clarity),
            plastic,
            OptionalDouble.of(minutes),
            OptionalInt.empty(),
            new Fish(0, 2, 0, 0),
            1,
            Optional.empty(),
            0,
            rods,
            ""),
        plastic.equals(A) ? 1 : 2,
        1,
        "");
  }

  private static PlannedTrip plan(String species, Clarity clarity, double hours, int rods) {
    return new PlannedTrip(
        TODAY.plusDays(2), ROCKS, Name.of(species), Optional.of(clarity), hours, rods, "");
  }

  private static Outlook outlook(BoxBuilder box, PlannedTrip plan) {
    return Outlook.of(
        box.fact(new Fact.Planned(plan, "")).book(),
        TODAY,
        new Asked(Optional.empty(), OptionalInt.of(1), Set.of()),
        4);
  }

  private static Prospect of(Plastic plastic, Outlook outlook) {
    return outlook.prospect(plastic).orElseThrow();
  }

  private static BoxBuilder full() {
    return new BoxBuilder().counted(daysAgo(400), A, 99).counted(daysAgo(400), B, 99);
  }

  /** By hand: thirty days of one piece in two rods' hour each are half a piece a rod-hour. */
  @Test
  void twoRodsInOneStintAreTwiceTheHours() {
    BoxBuilder twoRods = new BoxBuilder().counted(daysAgo(400), A, 99);
    BoxBuilder oneRod = new BoxBuilder().counted(daysAgo(400), A, 99);
    for (int day = 1; day <= 30; day++) {
      twoRods.fact(stint(daysAgo(day), "bass", Clarity.CLEAR, A, 60, 2));
      oneRod.fact(stint(daysAgo(day), "bass", Clarity.CLEAR, A, 120, 1));
    }
    double two = of(A, outlook(twoRods, plan("bass", Clarity.CLEAR, 3, 2))).expectedUse();
    assertEquals(0.5 * 3 * 2, two, 0.1);
    double one = of(A, outlook(oneRod, plan("bass", Clarity.CLEAR, 6, 1))).expectedUse();
    assertEquals(one, two, 1e-9);
  }

  /** By hand: 60 minutes with two rods beside 60 with one are two thirds of the time. */
  @Test
  void twoRodsCountTwiceInWhatIsTiedOn() {
    BoxBuilder box = full();
    for (int day = 1; day <= 90; day++) {
      box.fact(stint(daysAgo(day), "bass", Clarity.CLEAR, A, 60, 2));
      box.fact(stint(daysAgo(day), "bass", Clarity.CLEAR, B, 60, 1));
    }
    Outlook outlook = outlook(box, plan("bass", Clarity.CLEAR, 3, 1));
    assertEquals(2 / 3.0, of(A, outlook).endless().trips().get(0).share(), 0.01);
  }

  /**
   * By hand: for bass in clear water A had 3/4 of the time, for wrasse in dirty 1/4, as often. A
   * trip for other fish weighs 0.3 and in other clarity 0.8 of its own: (3/4 + 0.24 / 4) / 1.24 of
   * a bass trip's time is A's; of a plan that names wrasse alone (1/4 + 0.3 × 3/4) / 1.3.
   */
  @Test
  void whatIsTiedOnFollowsThePlannedFishAndClarity() {
    BoxBuilder box = full();
    for (int day = 1; day <= 200; day++) {
      boolean bass = day % 2 == 0;
      String species = bass ? "bass" : "wrasse";
      Clarity clarity = bass ? Clarity.CLEAR : Clarity.DIRTY;
      LocalDate date = daysAgo(200).minusDays(day);
      box.fact(stint(date, species, clarity, A, bass ? 90 : 30, 1));
      box.fact(stint(date, species, clarity, B, bass ? 30 : 90, 1));
    }
    double clearBass =
        of(A, outlook(box, plan("bass", Clarity.CLEAR, 3, 1))).endless().trips().get(0).share();
    assertEquals((0.75 + 0.24 * 0.25) / 1.24, clearBass, 0.01);
    PlannedTrip anyWater =
        new PlannedTrip(TODAY.plusDays(1), ROCKS, Name.of("wrasse"), Optional.empty(), 3, 1, "");
    double wrasse = of(A, outlook(box, anyWater)).endless().trips().get(0).share();
    assertEquals((0.25 + 0.3 * 0.75) / 1.3, wrasse, 0.01);
  }
}

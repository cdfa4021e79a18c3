package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Stint;
import traytally.trip.Trip;

class TurnTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);

  private static Stint stint(String water, double minutes, int takes, int worn, int rods) {
    return new Stint(
        new Trip(LocalDate.of(2025, 5, 1), Name.of(water)),
        Name.BLANK,
        Optional.empty(),
        INK,
        OptionalDouble.of(minutes),
        OptionalInt.empty(),
        new Fish(0, takes, 0, 0),
        1,
        Optional.empty(),
        worn,
        rods,
        "");
  }

  @Test
  void stintsOfOneTripAreSummedOverItsRods() {
    List<Turn> turns =
        Turn.of(
            List.of(
                stint("Gull Rocks", 30, 1, 0, 2),
                stint("Long Ledge", 10, 0, 0, 1),
                stint("Gull Rocks", 15, 2, 3, 1)),
            1);
    assertEquals(2, turns.size());
    Turn first = turns.get(0);
    assertEquals(75, first.rodMinutes());
    assertEquals(3, first.fish().takes());
    assertEquals(5, first.use());
  }

  @Test
  void fishInNoTimeAtAllTakeTheUsualTime() {
    List<Turn> turns =
        Turn.of(
            List.of(
                stint("Gull Rocks", 0, 1, 0, 1),
                stint("Long Ledge", 40, 0, 0, 1),
                stint("Mill Weir", 50, 0, 0, 1),
                stint("Old Quay", 60, 0, 0, 1)),
            1);
    assertEquals(50, turns.get(0).rodMinutes());
  }
}

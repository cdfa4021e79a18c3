package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
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

  private static Stint told(
      String water, String species, String clarity, Plastic plastic, double minutes, Fish fish) {
    return new Stint(
        new Trip(LocalDate.of(2025, 5, 1), Name.of(water)),
        Name.of(species),
        Clarity.parse(clarity),
        plastic,
        OptionalDouble.of(minutes),
        OptionalInt.empty(),
        fish,
        0,
        Optional.empty(),
        0,
        1,
        "");
  }

  private static Stint quiet(String water, String species, String clarity, String colour) {
    Plastic plastic = Plastic.of("", "paddle", colour, 75);
    return told(water, species, clarity, plastic, 30, Fish.NONE);
  }

  /** Whatever is noted beside no minutes, it took the usual time. */
  @ParameterizedTest
  @CsvSource({"1,0,0,0,60", "0,1,0,0,60", "0,0,1,0,60", "0,0,0,1,60", "0,0,0,0,0"})
  void onlyWhatHappenedTookTime(int follows, int takes, int lost, int worn, double minutes) {
    Stint noted =
        new Stint(
            new Trip(LocalDate.of(2025, 5, 1), Name.of("Gull Rocks")),
            Name.BLANK,
            Optional.empty(),
            INK,
            OptionalDouble.of(0),
            OptionalInt.empty(),
            new Fish(follows, takes, 0, 0),
            lost,
            Optional.empty(),
            worn,
            1,
            "");
    Stint usual = told("Long Ledge", "", "", INK, 60, Fish.NONE);
    assertEquals(minutes, Turn.of(List.of(noted, usual), 1).get(0).rodMinutes());
    assertEquals(minutes / 60, Turn.of(List.of(noted, usual), 1).get(0).rodHours());
  }

  @Test
  void logWithoutAnyTimeIsReadAsHalfHours() {
    Stint noted = told("Gull Rocks", "", "", INK, 0, new Fish(0, 1, 0, 0));
    assertEquals(30, Turn.of(List.of(noted), 1).get(0).rodMinutes());
  }

  @Test
  void turnsWithoutTimeDoNotCountAmongTheUsual() {
    List<Stint> log =
        List.of(
            told("Gull Rocks", "", "", INK, 0, new Fish(0, 1, 0, 0)),
            told("Gull Rocks", "", "", Plastic.of("", "grub", "ink", 50), 0, Fish.NONE),
            told("Gull Rocks", "", "", Plastic.of("", "worm", "ink", 90), 0, Fish.NONE),
            told("Long Ledge", "", "", INK, 40, Fish.NONE));
    assertEquals(40, turn(log, "Gull Rocks", "ink").rodMinutes());
  }

  @Test
  void whatAStintDoesNotSayItsTripDoes() {
    List<Stint> log =
        List.of(
            quiet("Gull Rocks", "", "", "ink"),
            quiet("Gull Rocks", "wrasse", "clear", "olive"),
            quiet("Gull Rocks", "bass", "dirty", "sand"),
            quiet("Long Ledge", "", "", "ink"));
    assertEquals(Name.of("wrasse"), turn(log, "Gull Rocks", "ink").species());
    assertEquals(Optional.of(Clarity.CLEAR), turn(log, "Gull Rocks", "ink").clarity());
    assertEquals(Name.of("bass"), turn(log, "Gull Rocks", "sand").species());
    assertEquals(Optional.of(Clarity.DIRTY), turn(log, "Gull Rocks", "sand").clarity());
    assertEquals(Name.BLANK, turn(log, "Long Ledge", "ink").species());
    assertEquals(Optional.empty(), turn(log, "Long Ledge", "ink").clarity());
  }

  @Test
  void turnSoughtWhatItsFirstStintThatSaysSo() {
    List<Stint> log =
        List.of(
            quiet("Gull Rocks", "mackerel", "stained", "olive"),
            quiet("Gull Rocks", "", "", "ink"),
            quiet("Gull Rocks", "wrasse", "clear", "ink"),
            quiet("Gull Rocks", "bass", "dirty", "ink"));
    assertEquals(Name.of("wrasse"), turn(log, "Gull Rocks", "ink").species());
    assertEquals(Optional.of(Clarity.CLEAR), turn(log, "Gull Rocks", "ink").clarity());
  }

  @Test
  void placesAreByTheOrderFirstTiedOn() {
    List<Stint> log =
        List.of(
            quiet("Gull Rocks", "", "", "sand"),
            quiet("Gull Rocks", "", "", "ink"),
            quiet("Gull Rocks", "", "", "sand"),
            quiet("Gull Rocks", "", "", "olive"),
            quiet("Long Ledge", "", "", "olive"));
    assertEquals(1, turn(log, "Gull Rocks", "sand").place());
    assertEquals(2, turn(log, "Gull Rocks", "ink").place());
    assertEquals(3, turn(log, "Gull Rocks", "olive").place());
    assertEquals(1, turn(log, "Long Ledge", "olive").place());
    assertEquals(60, turn(log, "Gull Rocks", "sand").rodMinutes());
  }

  private static Turn turn(List<Stint> log, String water, String colour) {
    return Turn.of(log, 1).stream()
        .filter(turn -> turn.trip().water().equals(Name.of(water)))
        .filter(turn -> turn.plastic().colour().equals(Name.of(colour)))
        .filter(turn -> turn.plastic().body().equals(Name.of("paddle")))
        .findFirst()
        .orElseThrow();
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static traytally.restock.BoxBuilder.TODAY;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** Worked by hand. */
class OutingTest {
  private static final Plastic WORM = Plastic.of("", "worm", "ink", 75);
  private static final Plastic CRAW = Plastic.of("", "craw", "olive", 75);
  private static final Plastic EEL = Plastic.of("", "eel", "rust", 75);

  private static Stint stint(
      String water, String species, String clarity, Plastic plastic, double minutes) {
    return new Stint(
        new Trip(TODAY, Name.of(water)),
        Name.of(species),
        Clarity.parse(clarity),
        plastic,
        OptionalDouble.of(minutes),
        OptionalInt.empty(),
        Fish.NONE,
        0,
        Optional.empty(),
        0,
        1,
        "");
  }

  private static List<Outing> outings(Stint... log) {
    return Outing.of(Turn.of(List.of(log), 1), List.of(log));
  }

  @Test
  void sharesAreOfTheTripsTimeAndEndInTheOrderTiedOn() {
    Outing outing =
        outings(
                stint("Gull Rocks", "", "", WORM, 60),
                stint("Gull Rocks", "", "", CRAW, 30),
                stint("Gull Rocks", "", "", WORM, 30))
            .get(0);
    assertEquals(Map.of(WORM, 0.75, CRAW, 0.25), outing.share());
    assertEquals(Map.of(WORM, 0.75, CRAW, 1.0), outing.until());
  }

  @Test
  void tripIsWhatMostOfItsStintsSayAndOfAsManyTheFirst() {
    List<Outing> outings =
        outings(
            stint("Gull Rocks", "wrasse", "dirty", WORM, 30),
            stint("Gull Rocks", "bass", "clear", CRAW, 30),
            stint("Gull Rocks", "bass", "clear", WORM, 30),
            stint("Long Ledge", "wrasse", "dirty", WORM, 30),
            stint("Long Ledge", "bass", "clear", CRAW, 30),
            stint("Mill Weir", "", "", CRAW, 30));
    assertEquals(Name.of("bass"), outings.get(0).species());
    assertEquals(Optional.of(Clarity.CLEAR), outings.get(0).clarity());
    assertEquals(Name.of("wrasse"), outings.get(1).species());
    assertEquals(Optional.of(Clarity.DIRTY), outings.get(1).clarity());
    assertEquals(Name.BLANK, outings.get(2).species());
    assertEquals(Optional.empty(), outings.get(2).clarity());
  }

  @Test
  void tripWithoutTimeIsNoChoice() {
    assertEquals(1, outings(stint("A", "", "", WORM, 0), stint("B", "", "", WORM, 5)).size());
  }

  /** The worm went after a quarter of the day, and half of the craw's chance was to go as well. */
  @Test
  void turnCutShortGoesOnWithinTheDayAndTheDayIsLonger() {
    Outing outing =
        outings(
                stint("Gull Rocks", "", "", WORM, 30),
                stint("Gull Rocks", "", "", CRAW, 60),
                stint("Gull Rocks", "", "", EEL, 30))
            .get(0);
    Map<Plastic, Double> emptied = Map.of(WORM, 1.0, CRAW, 0.5);
    Outing longer = outing.goneOn(0.5, plastic -> emptied.getOrDefault(plastic, 0.0));
    double worm = 0.5 * (1 - Math.exp(-0.75 / 0.5));
    double craw = 0.5 * 0.5 * (1 - Math.exp(-0.25 / 0.5));
    double day = 1 + worm + craw;
    assertEquals((0.25 + worm) / day, share(longer, WORM), 1e-12);
    assertEquals((0.5 + craw) / day, share(longer, CRAW), 1e-12);
    assertEquals(0.25 / day, share(longer, EEL), 1e-12);
    assertEquals((0.25 + worm) / day, until(longer, WORM), 1e-12);
    assertEquals((0.75 + worm + craw) / day, until(longer, CRAW), 1e-12);
    assertEquals(1, until(longer, EEL), 1e-12);
    assertEquals(outing.trip(), longer.trip());
  }

  private static double share(Outing outing, Plastic plastic) {
    return outing.share().getOrDefault(plastic, 0.0);
  }

  private static double until(Outing outing, Plastic plastic) {
    return outing.until().getOrDefault(plastic, 0.0);
  }

  @Test
  void turnsThatNeverEndByChoiceGoOnAllDay() {
    Outing outing = outings(stint("A", "", "", WORM, 30), stint("A", "", "", CRAW, 90)).get(0);
    Outing longer = outing.goneOn(Double.POSITIVE_INFINITY, p -> p.equals(WORM) ? 1 : 0);
    assertEquals(1 / 1.75, share(longer, WORM), 1e-12);
    assertEquals(1 / 1.75, until(longer, WORM), 1e-12);
    assertEquals(0.75 / 1.75, share(longer, CRAW), 1e-12);
  }
}

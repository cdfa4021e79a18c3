package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static traytally.restock.BoxBuilder.TODAY;

import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.Trip;

class TakersTest {
  private static final Name BLACK = Name.of("black");

  private static Turn turn(String species, String clarity, String colour, double hours, int takes) {
    return new Turn(
        new Trip(TODAY, Name.of("Gull Rocks")),
        Plastic.of("", "paddle", colour, 75),
        Name.of(species),
        Clarity.parse(clarity),
        1,
        60 * hours,
        new Fish(0, takes, 0, 0),
        0,
        0);
  }

  private static String of(Name colour, Turn... turns) {
    BoxBuilder box = new BoxBuilder();
    for (String owned : List.of("black", "white", "pier 9")) {
      box.counted(TODAY, Plastic.of("", "paddle", owned, 75), 5);
    }
    return new Takers(box.book(), List.of(turns)).of(colour);
  }

  @Test
  void itIsForWhereItTookMostInItsTime() {
    assertEquals(
        "wrasse in dirty water: 4 takes in 2.0 h",
        of(
            BLACK,
            turn("bass", "clear", "black", 5, 6),
            turn("wrasse", "dirty", "black", 0.5, 1),
            turn("wrasse", "dirty", "black", 1.5, 3),
            turn("wrasse", "clear", "white", 1, 9)));
  }

  @Test
  void onlyWhatTheLogSaysOfThePlaceIsSaid() {
    assertEquals("bass: 2 takes in 0.5 h", of(BLACK, turn("bass", "", "black", 0.5, 2)));
    assertEquals("clear water: 2 takes in 1.0 h", of(BLACK, turn("", "clear", "black", 1, 2)));
  }

  /** Black is dark and muted: dirty water above all (the starting guide, common practice). */
  @Test
  void whereTheRecordIsAnAccidentCommonPracticeSpeaks() {
    String practice = "dirty water (common practice)";
    assertEquals(practice, of(BLACK));
    assertEquals(practice, of(BLACK, turn("bass", "clear", "black", 5, 1)));
    assertEquals(practice, of(BLACK, turn("bass", "clear", "black", 0.4, 9)));
    assertEquals(practice, of(BLACK, turn("", "", "black", 5, 9)));
    assertEquals("bass (common practice)", of(Name.of("white")));
  }

  @Test
  void ofAColourNobodyCanPictureNothingIsSaid() {
    assertEquals("", of(Name.of("pier 9")));
  }
}

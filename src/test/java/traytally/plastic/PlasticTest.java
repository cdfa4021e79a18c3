package traytally.plastic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class PlasticTest {
  @Test
  void spellingDoesNotMakeAnotherPlastic() {
    assertEquals(
        Plastic.of("Plimwick", "paddle", "motor oil", 75),
        Plastic.of("PLIMWICK", "Paddle", "Motor-Oil", 75));
    assertFalse(
        Plastic.of("", "paddle", "motor oil", 75).equals(Plastic.of("", "paddle", "motor oil", 0)));
  }

  @Test
  void bodyAndColourAreNeeded() {
    assertThrows(IllegalArgumentException.class, () -> Plastic.of("", "", "white", 75));
    assertThrows(IllegalArgumentException.class, () -> Plastic.of("", "worm", " - ", 75));
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 501})
  void lengthIsBelievedUpToHalfAMetre(int lengthMm) {
    assertThrows(IllegalArgumentException.class, () -> Plastic.of("", "worm", "white", lengthMm));
  }

  @Test
  void lengthNobodyWroteDownIsNotOne() {
    assertFalse(Plastic.of("", "worm", "white", 0).hasLength());
    assertTrue(Plastic.of("", "worm", "white", 1).hasLength());
  }

  @Test
  void plasticIsReadInWords() {
    assertEquals(
        "paddle, motor oil, 75 mm (Plimwick)",
        Plastic.of("Plimwick", "paddle", "motor oil", 75).toString());
    assertEquals("worm, black", Plastic.of("", "worm", "black", 0).toString());
  }

  @Test
  void orderIsBodyColourLengthMaker() {
    List<Plastic> sorted =
        List.of(
            Plastic.of("B", "paddle", "black", 75),
            Plastic.of("A", "paddle", "white", 75),
            Plastic.of("B", "paddle", "white", 75),
            Plastic.of("A", "paddle", "white", 100),
            Plastic.of("A", "worm", "black", 50));
    assertEquals(sorted, Stream.of(3, 0, 4, 2, 1).map(sorted::get).sorted().toList());
  }

  @ParameterizedTest
  @CsvSource({"#1a2b3c,#1a2b3c", "1A2B3C,#1a2b3c", "' #000000 ',#000000"})
  void swatchIsReadAsHex(String text, String swatch) {
    assertEquals(swatch, Swatch.parse(text).orElseThrow().toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "#12345", "#1234567", "red", "#12345g", "##123456"})
  void wordThatIsNoSwatchIsNone(String text) {
    assertEquals(Optional.empty(), Swatch.parse(text));
  }

  @Test
  void swatchHasTwentyFourBits() {
    assertThrows(IllegalArgumentException.class, () -> new Swatch(0x1000000));
    assertThrows(IllegalArgumentException.class, () -> new Swatch(-1));
  }

  @Test
  void packsOpenIntoPieces() {
    assertEquals(new Pieces(24), new Packs(3).opened(8));
    assertThrows(ArithmeticException.class, () -> new Packs(1 << 20).opened(1 << 12));
    assertThrows(IllegalArgumentException.class, () -> new Packs(-1));
    assertThrows(IllegalArgumentException.class, () -> new Pieces(-1));
    assertEquals(new Pieces(7), new Pieces(3).plus(new Pieces(4)));
  }

  @Test
  void colourNeedsAName() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Colour(Name.BLANK, Optional.empty(), Optional.empty(), Optional.empty()));
    assertEquals(Optional.of(Finish.LUMINOUS), Finish.parse(" Luminous"));
    assertEquals(Optional.empty(), Finish.parse("shiny"));
  }
}

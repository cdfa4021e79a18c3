package traytally.plastic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class LabTest {
  /** Sharma, Wu &amp; Dalal, Color Research &amp; Application 30(1), 2005, table 1. */
  @ParameterizedTest
  @CsvFileSource(resources = "/reference/ciede2000.csv", numLinesToSkip = 1)
  void differencesAreThoseOfTheSupplementaryTable(
      double l1, double a1, double b1, double l2, double a2, double b2, double expected) {
    Lab one = new Lab(l1, a1, b1);
    Lab other = new Lab(l2, a2, b2);
    assertEquals(expected, one.difference(other), 1e-4);
    assertEquals(expected, other.difference(one), 1e-4);
  }

  /**
   * The sRGB primaries under D65 as printed by colour calculators everywhere, two decimals (from
   * memory: 53.24 80.09 67.20; 87.73 −86.18 83.18; 32.30 79.19 −107.86); the third decimal of the
   * standard's matrix moves them by some hundredths.
   */
  @ParameterizedTest
  @CsvSource({
    "#ff0000, 53.24,  80.09,   67.20",
    "#00ff00, 87.73, -86.18,   83.18",
    "#0000ff, 32.30,  79.19, -107.86",
    "#ffffff, 100,     0,       0",
    "#000000, 0,       0,       0",
    "#777777, 50.03,   0,       0",
  })
  void swatchesHaveTheirKnownPlaces(String hex, double l, double a, double b) {
    Lab lab = Lab.of(Swatch.parse(hex).orElseThrow());
    assertEquals(l, lab.l(), 0.05);
    assertEquals(a, lab.a(), 0.05);
    assertEquals(b, lab.b(), 0.05);
  }

  @Test
  void aDarkGreenIsNearerToAnotherThanToPink() {
    Lab olive = Lab.of(new Swatch(0x4a5320));
    Lab moss = Lab.of(new Swatch(0x55602a));
    Lab pink = Lab.of(new Swatch(0xf59ac0));
    assertTrue(olive.difference(moss) < 10);
    assertTrue(olive.difference(pink) > 40);
    assertEquals(0, olive.difference(olive));
  }
}

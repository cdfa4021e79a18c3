package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.simulation.SimulatedAngler;

/**
 * Trust must come true as often as it says. The aim over many logs is an error of at most 0.03 from
 * 10 trips on, intervals that hold 88 to 92 in 100, and 90 in 100 of the trusted truly above the
 * middle.
 */
class TrustCalibrationTest {

  /** Eighty anglers: what chance alone adds is allowed for. */
  @Test
  void trustComesTrueOverAFewLogs() {
    TrustCalibration few = new TrustCalibration(80, 40, SimulatedAngler::ordinary, 100);
    assertTrue(few.error() <= 0.03 + few.chanceError(), few.toString());
    assertTrue(few.coverage() >= 0.85 && few.coverage() <= 0.94, few.toString());
    assertTrue(few.trusted() >= 40 && few.trustedAbove() >= 0.8, few.toString());
    assertTrue(few.modelRank() > few.rawRank() + 0.03, few.toString());
  }

  @ParameterizedTest
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  @CsvSource({"10, 0.03", "25, 0.03", "60, 0.025", "150, 0.025"})
  void trustComesTrueOverManyLogs(int trips, double most) {
    TrustCalibration many = new TrustCalibration(1000, trips, SimulatedAngler::ordinary, 5000);
    assertTrue(many.error() <= most, many.toString());
    assertTrue(many.coverage() >= 0.87 && many.coverage() <= 0.92, many.toString());
    assertTrue(many.trustedAbove() >= 0.84, many.toString());
  }

  /** From 5 colours to 80, from 10 days to 300. */
  @ParameterizedTest
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  @CsvSource({"10", "60", "300"})
  void trustComesTrueWhateverTheCollection(int trips) {
    TrustCalibration many =
        new TrustCalibration(300, trips, SimulatedAngler::withAnyCollection, 9000);
    assertTrue(many.error() <= 0.03, many.toString());
    assertTrue(many.coverage() >= 0.86 && many.coverage() <= 0.93, many.toString());
    assertTrue(many.modelRank() > many.rawRank(), many.toString());
  }

  /** Where colours differ by more than the model expects, its intervals are a little short. */
  @ParameterizedTest
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  @CsvSource({"10", "25", "60", "150"})
  void trustComesTrueWhereColoursAreFarApart(int trips) {
    TrustCalibration many =
        new TrustCalibration(1000, trips, SimulatedAngler::withColoursFarApart, 5000);
    assertTrue(many.error() <= 0.025, many.toString());
    assertTrue(many.coverage() >= 0.84 && many.coverage() <= 0.92, many.toString());
    assertTrue(many.trustedAbove() >= 0.88, many.toString());
  }
}

package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.simulation.SimulatedAngler;

/** Forecasts of use must come true on average, their bounds nine times in ten. */
class UseCalibrationTest {

  @Test
  void useComesTrueOverAFewAnglers() {
    UseCalibration few = new UseCalibration(40, 40, 5, SimulatedAngler::ordinary, 100);
    assertEquals(1, few.ratio(), 0.12, few.toString());
    assertEquals(few.statedCoverage(), few.coverage(), 0.04, few.toString());
    assertTrue(few.runOutError() < 0.03, few.toString());
  }

  @ParameterizedTest
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  @CsvSource({"10, 0.07, 0.02", "25, 0.04, 0.015", "60, 0.03, 0.015", "150, 0.03, 0.015"})
  void useComesTrueOverManyAnglers(int trips, double boundSlack, double mostError) {
    UseCalibration many = new UseCalibration(300, trips, 10, SimulatedAngler::ordinary, 5000);
    assertEquals(1, many.ratio(), 0.06, many.toString());
    assertEquals(many.statedCoverage(), many.coverage(), boundSlack, many.toString());
    assertTrue(many.runOutError() < mostError, many.toString());
  }
}

package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StandingRuleTest {
  private static final StandingRule RULE = new StandingRule(0.80, 0.65, 0.10);

  /** Trusted from 0.80 with takes on 3 days; promising 0.65 with 2; doubtful to 0.10 after 3. */
  @ParameterizedTest
  @CsvSource({
    "0.80, 3, 3, TRUSTED",
    "0.99, 9, 3, TRUSTED",
    "0.79999, 9, 9, PROMISING",
    "0.80, 9, 2, PROMISING",
    "0.80, 9, 1, UNPROVEN",
    "0.65, 2, 2, PROMISING",
    "0.65, 9, 1, UNPROVEN",
    "0.64, 9, 9, UNPROVEN",
    "0.10, 3, 0, DOUBTFUL",
    "0.10, 2, 0, UNPROVEN",
    "0.11, 9, 0, UNPROVEN",
    "0.50, 0, 0, UNPROVEN",
  })
  void standingsFollowTheRule(double trust, int days, int daysWithTakes, Standing expected) {
    Evidence evidence = new Evidence(days, daysWithTakes, 60, 0, 0, 0, 0, 0, 0);
    assertEquals(expected, RULE.standing(trust, evidence));
  }

  @ParameterizedTest
  @CsvSource({
    "1.2, 0.65, 0.1",
    "-0.1, 0.65, 0.1",
    "0.8, 1.2, 0.1",
    "0.8, 0.65, -0.1",
    "0.8, 0.65, NaN"
  })
  void thresholdsAreProbabilities(double trusted, double promising, double doubtful) {
    assertThrows(
        IllegalArgumentException.class, () -> new StandingRule(trusted, promising, doubtful));
  }

  @Test
  void thresholdsMayBeCertainties() {
    Evidence plenty = new Evidence(9, 9, 540, 0, 9, 0, 0, 9, 0);
    StandingRule strict = new StandingRule(1, 1, 0);
    assertEquals(Standing.UNPROVEN, strict.standing(0.99, plenty));
    assertEquals(Standing.DOUBTFUL, strict.standing(0, plenty));
  }
}

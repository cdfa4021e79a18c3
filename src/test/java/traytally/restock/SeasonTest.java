package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.simulation.SimulatedAngler;

/** What the list buys must lose fewer takes than a kitchen rule does for the same money. */
class SeasonTest {
  /** Seeds that nothing was tuned on. */
  private static final long KEPT_BACK = 700_000;

  @TempDir private Path folder;

  @Test
  void theListBeatsTheKitchenRulesOverAFewSeasons() {
    Seasons few = new Seasons(folder, 16, 60, 10, SimulatedAngler::withColoursFarApart, 40);
    // Against the best that could have been tied on hardly a take is lost by anybody's list.
    assertTrue(few.quality(Seasons.Measure.LOST) < 0.75, few.toString());
    assertTrue(few.quality(Seasons.Measure.BALANCE) < 0.75, few.toString());
  }

  /** Run by {@code mvn -Pseasons test}; {@code -Danglers=N} for fewer anglers. */
  @ParameterizedTest
  @EnabledIfSystemProperty(named = "seasons", matches = "true")
  @ValueSource(ints = {10, 25, 60, 150})
  void theListBeatsTheKitchenRulesOverManySeasons(int trips) {
    int anglers = Integer.getInteger("anglers", 200);
    Seasons many =
        new Seasons(
            folder, anglers, trips, 20, SimulatedAngler::withColoursFarApart, KEPT_BACK + trips);
    System.out.println(String.format(Locale.ROOT, "%d trips, %s", trips, many));
    for (Seasons.Measure measure : Seasons.Measure.values()) {
      double slack = 2 * many.error(measure);
      assertTrue(many.quality(measure) < 0.5 + slack, measure + ": " + many);
    }
  }
}

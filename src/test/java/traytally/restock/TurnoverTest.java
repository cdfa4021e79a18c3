package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Trip;

/** Worked by hand; two trips' worth of a quarter are assumed beside the log. */
class TurnoverTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "craw", "olive", 75);

  private static Outing outing(double ink) {
    SortedMap<Plastic, Double> share = new TreeMap<>();
    if (ink > 0) {
      share.put(INK, ink);
    }
    if (ink < 1) {
      share.put(OLIVE, 1 - ink);
    }
    Trip trip = new Trip(BoxBuilder.TODAY, Name.of("Gull Rocks"));
    return new Outing(trip, Name.BLANK, Optional.empty(), share, Map.of());
  }

  private static double turns(List<Outing> outings) {
    return Turnover.turns(outings, outings.stream().mapToDouble(each -> 1).toArray());
  }

  /** Within a trip 5/8 and 1/2, between the two 1/2. */
  @Test
  void moreUnevenSharesAreFewerTurns() {
    List<Outing> two = List.of(outing(0.75), outing(0.5));
    double inverse = ((5 / 8.0 + 1 / 2.0) / 2 - 1 / 2.0) / (1 - 1 / 2.0);
    assertEquals(4 / (2 * inverse + 2 / 4.0), turns(two), 1e-9);
    double twice = ((2 * 5 / 8.0 + 1 / 2.0) / 3 - 1 / 2.0) / (1 - 1 / 2.0);
    double weighed = Turnover.turns(two, new double[] {2, 1});
    assertEquals(5 / (3 * twice + 2 / 4.0), weighed, 1e-9);
  }

  @Test
  void onePlasticOnAllDayIsOneTurn() {
    assertEquals(4 / (2 + 2 / 4.0), turns(List.of(outing(1), outing(1))), 1e-9);
    assertEquals(4 / (2 + 2 / 4.0), turns(List.of(outing(1), outing(0))), 1e-9);
  }

  @Test
  void sharesThatNeverChangeAreVeryManyTurns() {
    assertEquals(8 / (2 / 4.0), turns(Collections.nCopies(6, outing(0.5))), 1e-9);
    assertEquals(50, turns(Collections.nCopies(100, outing(0.5))));
  }

  @Test
  void whereFewTripsTellFourAreAssumed() {
    assertEquals(4, turns(List.of()));
    assertEquals(4, turns(List.of(outing(0.75))));
    assertEquals(4, Turnover.turns(List.of(outing(1), outing(1)), new double[] {1, 0}));
  }

  /** Four turns on two trips, of which the day ended two and an empty tray half of one. */
  @Test
  void spellIsTheTimeOverTheTurnsThatEndedByChoice() {
    assertEquals(2 / 1.5, Turnover.spell(List.of(outing(0.5), outing(0.7)), 0.5), 1e-12);
    assertEquals(Double.POSITIVE_INFINITY, Turnover.spell(List.of(outing(0.5), outing(0.7)), 2));
    assertEquals(Double.POSITIVE_INFINITY, Turnover.spell(List.of(outing(1)), 0));
  }
}

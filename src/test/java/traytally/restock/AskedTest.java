package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.euros;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AskedTest {
  private static Asked asked(int trips, double budget, double worth, int untried) {
    return new Asked(
        Optional.empty(),
        OptionalInt.of(trips),
        Set.of(),
        Optional.of(euros(budget)),
        OptionalDouble.of(worth),
        untried);
  }

  @ParameterizedTest
  @CsvSource({"0,9,1,0", "1,0,1,0", "1,-1,1,0", "1,9,0,0", "1,9,NaN,0", "1,9,1,-1"})
  void whatMakesNoSenseIsRefused(int trips, double budget, double worth, int untried) {
    assertThrows(IllegalArgumentException.class, () -> asked(trips, budget, worth, untried));
  }

  @Test
  void theLeastThatMakesSenseIsTaken() {
    Asked least = asked(1, 0.01, 0.001, 0);
    assertEquals(Optional.of(euros(5)), least.within(euros(5)).budget());
    assertEquals(OptionalInt.of(1), least.within(euros(5)).trips());
  }

  @Test
  void dayAndTripsAreNotAskedForAtOnce() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Asked(Optional.of(TODAY), OptionalInt.of(1), Set.of()));
  }

  @ParameterizedTest
  @CsvSource({"0.4, hardly any go", "0.5, about 1 goes", "1.4, about 1 goes", "9.5, about 10 go"})
  void useIsSaidInWholePieces(double pieces, String words) {
    assertEquals(words, Words.about(pieces));
  }

  @ParameterizedTest
  @ValueSource(ints = {2025, 2027})
  void dayOfAnotherYearIsSaidWithIt(int year) {
    assertEquals("14 June " + year, Words.day(LocalDate.of(year, 6, 14), TODAY));
    assertEquals("14 June", Words.day(LocalDate.of(2026, 6, 14), TODAY));
  }

  @Test
  void numbersAreSaidAsAnAnglerWould() {
    assertEquals("1 trip", Words.plural(1, "trip"));
    assertEquals("0 trips", Words.plural(0, "trip"));
    assertEquals("none left", Words.left(0));
    assertEquals("1 left", Words.left(1));
  }
}

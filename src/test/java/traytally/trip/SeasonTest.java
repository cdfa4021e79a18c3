package traytally.trip;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Month;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.plastic.Name;
import traytally.plastic.Tone;

class SeasonTest {
  @ParameterizedTest
  @CsvSource({
    "DECEMBER, WINTER, SUMMER",
    "FEBRUARY, WINTER, SUMMER",
    "MARCH, SPRING, AUTUMN",
    "MAY, SPRING, AUTUMN",
    "JUNE, SUMMER, WINTER",
    "NOVEMBER, AUTUMN, SPRING"
  })
  void monthsHaveTheirSeason(Month month, Season north, Season south) {
    assertEquals(north, Season.of(month, false));
    assertEquals(south, Season.of(month, true));
  }

  @Test
  void aLeaningMaySpanTheNewYear() {
    Leaning dark =
        new Leaning(
            Name.of("pollack"),
            Optional.of(Clarity.CLOUDY),
            Months.parse("nov-feb"),
            Tone.DARK_MUTED,
            2);
    Optional<Clarity> cloudy = Optional.of(Clarity.CLOUDY);
    Name pollack = Name.of("Pollack");
    assertEquals(true, dark.holds(pollack, cloudy, Optional.of(Month.JANUARY)));
    assertEquals(false, dark.holds(pollack, cloudy, Optional.of(Month.MARCH)));
    assertEquals(false, dark.holds(pollack, cloudy, Optional.empty()));
    assertEquals(false, dark.holds(pollack, Optional.empty(), Optional.of(Month.JANUARY)));
    assertEquals(false, dark.holds(Name.BLANK, cloudy, Optional.of(Month.JANUARY)));
  }
}

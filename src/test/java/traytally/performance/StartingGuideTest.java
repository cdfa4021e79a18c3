package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Month;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.plastic.Name;
import traytally.plastic.Tone;
import traytally.trip.Clarity;
import traytally.trip.Leaning;

/** Common practice, as docs/trust.md has it. */
class StartingGuideTest {
  private static Conditions conditions(String species, String clarity, Month month) {
    return new Conditions(Name.of(species), Clarity.parse(clarity), Optional.of(month));
  }

  @ParameterizedTest
  @CsvSource({
    "'', clear, JUNE, MID_MUTED, 2",
    "'', clear, JUNE, DARK_MUTED, 1",
    "'', clear, JUNE, MID_BRIGHT, -1",
    "'', cloudy, JUNE, PALE_BRIGHT, 1",
    "'', cloudy, JUNE, DARK_MUTED, 1",
    "'', dirty, JUNE, PALE_BRIGHT, 2",
    "'', dirty, JUNE, DARK_MUTED, 2",
    "'', dirty, JUNE, MID_MUTED, -1",
    "'', stained, JUNE, MID_MUTED, 0",
    "'', '', JUNE, MID_MUTED, 0",
    "'', '', JANUARY, DARK_MUTED, 1",
    "'', '', MARCH, DARK_MUTED, 0",
    "mackerel, '', JUNE, PALE_BRIGHT, 1",
    "mackerel, '', JUNE, MID_BRIGHT, 1",
    "Wrasse, '', JUNE, MID_MUTED, 1",
    "wrasse, clear, JUNE, MID_MUTED, 3",
    "bass, '', JUNE, PALE_MUTED, 1",
    "pollack, dirty, NOVEMBER, DARK_MUTED, 4",
  })
  void leaningsOfACaseAddUp(String species, String clarity, Month month, Tone tone, int expected) {
    StartingGuide guide = StartingGuide.usual(false);
    assertEquals(expected, guide.leaning(tone, conditions(species, clarity, month)));
  }

  @Test
  void darkMonthsOfTheSouthAreThoseAroundJune() {
    StartingGuide south = StartingGuide.usual(true);
    assertEquals(1, south.leaning(Tone.DARK_MUTED, conditions("", "", Month.JUNE)));
    assertEquals(0, south.leaning(Tone.DARK_MUTED, conditions("", "", Month.JANUARY)));
  }

  @Test
  void anglersLeaningReplacesTheOneForItsCase() {
    Leaning mine =
        new Leaning(Name.BLANK, Optional.of(Clarity.CLEAR), Optional.empty(), Tone.MID_MUTED, -2);
    StartingGuide changed = StartingGuide.usual(false).with(List.of(mine));
    assertEquals(StartingGuide.usual(false).leanings().size(), changed.leanings().size());
    assertEquals(-2, changed.leaning(Tone.MID_MUTED, conditions("", "clear", Month.JUNE)));
    assertEquals(1, changed.leaning(Tone.DARK_MUTED, conditions("", "clear", Month.JUNE)));
    assertEquals(
        changed.leanings().stream().sorted().toList(), changed.leanings(), "in the order shown");
  }
}

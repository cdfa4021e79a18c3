package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Trip;

class SpellingTest {
  /**
   * Textbook pairs, from memory: kitten and sitting are 3 apart, ca and abc 3 where each letter is
   * edited once at most (2 otherwise), a swap of neighbours is one slip.
   */
  @ParameterizedTest
  @CsvSource({
    "kitten, sitting, 3",
    "saturday, sunday, 3",
    "ca, abc, 3",
    "martha, marhta, 1",
    "ab, ba, 1",
    "olive, olive, 0",
    "'', olive, 5",
    "ink, '', 3",
    "rust, crust, 1",
    "baa, aba, 1",
    "body, boody, 1",
    "lenght, lengths, 2",
    "form, from, 1",
    "tied, diet, 2"
  })
  void slipsAreLettersLeftOutPutInChangedOrSwapped(String one, String other, int slips) {
    assertEquals(slips, Spelling.slips(one, other));
    assertEquals(slips, Spelling.slips(other, one));
    assertEquals(slips == 1, Spelling.isOneSlip(one, other));
    assertEquals(slips == 1, Spelling.isOneSlip(other, one));
  }

  /** One slip from five letters on, two from eight. */
  @ParameterizedTest
  @CsvSource({
    "sand, sond, false",
    "olive, olvie, true",
    "olive, alivo, false",
    "chartreuse, chartruese, true",
    "lavender, lavandr, true",
    "lavende, lavandr, false",
    "lavender, lovandir, false",
    "olive, olive, false",
    "size 2 olive, size 3 olive, false",
    "olive dark, dark olive, true",
    "grn pmpkn, green pumpkin, true",
    "g, green, false",
    "rn, green, false",
    "grn, green pumpkin, false"
  })
  void nearIsASlipOrAShortForm(String one, String other, boolean near) {
    assertEquals(near, Spelling.near(Name.of(one), Name.of(other)));
    assertEquals(near, Spelling.near(Name.of(other), Name.of(one)));
  }

  @Test
  void partIsAllTheWordsOfOneAmongThoseOfTheOther() {
    assertTrue(Spelling.partOf(Name.of("paddle"), Name.of("paddle tail")));
    assertTrue(Spelling.partOf(Name.of("paddle tail"), Name.of("tail")));
    assertFalse(Spelling.partOf(Name.of("paddle tail"), Name.of("paddle fin")));
    assertFalse(Spelling.partOf(Name.of("paddle"), Name.of("Paddle")));
  }

  @Test
  void whatIsSpeltAlikeIsKeptOnce() {
    Repeats repeats = new Repeats();
    LocalDate day = LocalDate.of(2026, 5, 1);
    Trip trip = repeats.once(new Trip(day, Name.of("Gull Rocks")));
    assertSame(trip, repeats.once(new Trip(day, Name.of("Gull Rocks"))));
    Trip shouted = new Trip(day, Name.of("GULL ROCKS"));
    assertSame(shouted, repeats.once(shouted), "spelt otherwise");
    Plastic ink = repeats.once(Plastic.of("Brine", "paddle", "ink", 75));
    assertSame(ink, repeats.once(Plastic.of("Brine", "paddle", "ink", 75)));
    for (Plastic other :
        List.of(
            Plastic.of("Brine", "paddle", "Ink", 75),
            Plastic.of("Brine", "Paddle", "ink", 75),
            Plastic.of("brine", "paddle", "ink", 75))) {
      assertSame(other, repeats.once(other));
      assertNotSame(ink, repeats.once(other));
    }
  }
}

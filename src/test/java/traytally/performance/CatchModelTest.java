package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Tone;

/** A family of effects is there only where the log can tell it from the others. */
class CatchModelTest {
  private static final Name INK = Name.of("ink");
  private static final Name OLIVE = Name.of("olive");
  private static final Name SAND = Name.of("sand");

  private static CatchModel model(Stints log, Map<Name, Tone> tones) {
    List<Turn> turns = Turn.of(log.log(), 1);
    return new CatchModel(turns, Measure.TAKES, new LogReading(1, false, tones));
  }

  private static Set<String> families(Stints log, Map<Name, Tone> tones) {
    return model(log, tones).fit().sds().keySet();
  }

  private static Stints two() {
    return new Stints().on(0, "ink", 60, 2).on(0, "olive", 60, 1).on(1, "ink", 60, 1);
  }

  @Test
  void oneBodyLengthAndSeasonAreNoFamilies() {
    assertEquals(Set.of("day", "order", "colour"), families(two(), Map.of()));
    Stints alone = new Stints().on(0, "ink", 60, 2).on(1, "olive", 60, 1);
    assertEquals(Set.of("day", "colour"), families(alone, Map.of()));
  }

  @Test
  void secondBodyAndLengthAreFamilies() {
    Stints log = two().add(1, Plastic.of("", "grub", "olive", 150), OptionalDouble.of(60), 3);
    assertEquals(Set.of("day", "order", "body", "length", "colour"), families(log, Map.of()));
  }

  @Test
  void tonesAreAFamilyOnceTwoColoursShareOne() {
    Stints log = two().on(1, "sand", 60, 1);
    Map<Name, Tone> apart =
        Map.of(INK, Tone.DARK_MUTED, OLIVE, Tone.MID_MUTED, SAND, Tone.PALE_MUTED);
    Map<Name, Tone> shared =
        Map.of(INK, Tone.DARK_MUTED, OLIVE, Tone.DARK_MUTED, SAND, Tone.PALE_MUTED);
    assertEquals(Set.of("day", "order", "colour"), families(log, apart));
    assertEquals(Set.of("day", "order", "tone", "colour"), families(log, shared));
    assertEquals(Set.of("day", "order", "colour"), families(log, Map.of()));
  }

  /** Conditions speak of colours and their tones, not of bodies. */
  @Test
  void secondSeasonIsAFamilyOfColours() {
    Stints log =
        two()
            .add(100, Plastic.of("", "grub", "sand", 150), OptionalDouble.of(60), 3)
            .on(100, "ink", 60, 2);
    Map<Name, Tone> shared =
        Map.of(INK, Tone.DARK_MUTED, OLIVE, Tone.DARK_MUTED, SAND, Tone.PALE_MUTED);
    assertEquals(
        Set.of("day", "order", "body", "length", "tone", "colour", "tone:season", "colour:season"),
        families(log, shared));
    assertEquals(Set.of(Context.SEASON), model(log, shared).contexts());
  }

  /** Olive had twice the takes, but in twice the time. */
  @Test
  void fishAreReckonedByTheHour() {
    Stints log = new Stints();
    for (int day = 0; day < 10; day++) {
      log.inTurn(day, "ink", 60, 300, "olive", 120, 600);
    }
    assertEquals(1, log.performance().colour(OLIVE).rateRatio(), 0.01);
  }

  /** Of a colour the log does not know both its tone and itself are open. */
  @Test
  void unknownColourIsAsOpenAsToneAndColourTogether() {
    Stints log = two().on(1, "sand", 60, 1);
    CatchModel shared = model(log, Map.of(INK, Tone.DARK_MUTED, OLIVE, Tone.DARK_MUTED));
    double tone = shared.fit().sd("tone");
    double colour = shared.fit().sd("colour");
    assertEquals(Math.hypot(tone, colour), shared.unknownColourSd(), 1e-12);
    assertTrue(tone > 0 && colour > 0, tone + ", " + colour);
  }
}

package traytally.performance;

import static traytally.plastic.Tone.DARK_MUTED;
import static traytally.plastic.Tone.MID_BRIGHT;
import static traytally.plastic.Tone.MID_MUTED;
import static traytally.plastic.Tone.PALE_BRIGHT;
import static traytally.plastic.Tone.PALE_MUTED;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import traytally.plastic.Name;
import traytally.plastic.Tone;
import traytally.trip.Clarity;
import traytally.trip.Leaning;
import traytally.trip.Months;

/**
 * What to try first where a log is silent: leanings of tone by fish, clarity and month.
 *
 * <p>Common practice, no source: it is never evidence, nothing of it goes into trust, and the
 * angler may change every line.
 *
 * @param leanings in the order shown
 */
public record StartingGuide(List<Leaning> leanings) {
  public StartingGuide {
    leanings = leanings.stream().sorted().toList();
  }

  /**
   * The guide as the tool comes with it.
   *
   * @param southern whether the dark months are those around June
   */
  public static StartingGuide usual(boolean southern) {
    List<Leaning> usual = new ArrayList<>();
    // Clear water: natural, quiet tones; nothing gaudy.
    usual.add(always("", Optional.of(Clarity.CLEAR), MID_MUTED, 2));
    usual.add(always("", Optional.of(Clarity.CLEAR), DARK_MUTED, 1));
    usual.add(always("", Optional.of(Clarity.CLEAR), MID_BRIGHT, -1));
    // Coloured water: whatever stands out, as a dark outline or by shining.
    usual.add(always("", Optional.of(Clarity.CLOUDY), PALE_BRIGHT, 1));
    usual.add(always("", Optional.of(Clarity.CLOUDY), DARK_MUTED, 1));
    usual.add(always("", Optional.of(Clarity.DIRTY), PALE_BRIGHT, 2));
    usual.add(always("", Optional.of(Clarity.DIRTY), DARK_MUTED, 2));
    usual.add(always("", Optional.of(Clarity.DIRTY), MID_MUTED, -1));
    // Low light: a dark outline against the sky.
    Optional<Months> dark = Months.parse(southern ? "5-8" : "11-2");
    usual.add(new Leaning(Name.BLANK, Optional.empty(), dark, DARK_MUTED, 1));
    // Shoaling fish are curious; wrasse root among crabs and weed; bass chase small pale fish.
    usual.add(always("mackerel", Optional.empty(), PALE_BRIGHT, 1));
    usual.add(always("mackerel", Optional.empty(), MID_BRIGHT, 1));
    usual.add(always("wrasse", Optional.empty(), MID_MUTED, 1));
    usual.add(always("bass", Optional.empty(), PALE_MUTED, 1));
    usual.add(always("pollack", Optional.empty(), DARK_MUTED, 1));
    return new StartingGuide(usual);
  }

  private static Leaning always(
      String species, Optional<Clarity> clarity, Tone tone, int strength) {
    return new Leaning(Name.of(species), clarity, Optional.empty(), tone, strength);
  }

  /** This guide with each change in place of the leaning for the same case. */
  public StartingGuide with(List<Leaning> changes) {
    List<Leaning> changed = new ArrayList<>(leanings);
    for (Leaning change : changes) {
      changed.removeIf(change::sameCase);
      changed.add(change);
    }
    return new StartingGuide(changed);
  }

  /** How much a tone is worth trying under these conditions; above 0 is sooner. */
  public int leaning(Tone tone, Conditions conditions) {
    return leanings.stream()
        .filter(leaning -> leaning.tone() == tone)
        .filter(
            leaning ->
                leaning.holds(conditions.species(), conditions.clarity(), conditions.month()))
        .mapToInt(Leaning::strength)
        .sum();
  }
}

package traytally.trip;

import java.time.Month;
import java.util.Comparator;
import java.util.Optional;
import traytally.plastic.Name;
import traytally.plastic.Tone;

/**
 * A line of the starting guide: under some conditions a tone is worth trying early, or late.
 *
 * @param species the fish; blank for any
 * @param clarity of the water; empty for any
 * @param months it holds in; empty for all
 * @param strength from −2, better left, to 2, try it first; 0 says nothing
 */
public record Leaning(
    Name species, Optional<Clarity> clarity, Optional<Months> months, Tone tone, int strength)
    implements Comparable<Leaning> {
  /** The strongest leaning either way. */
  public static final int STRONGEST = 2;

  private static final Comparator<Leaning> ORDER =
      Comparator.comparing(Leaning::species)
          .thenComparing(leaning -> leaning.clarity().map(Clarity::ordinal).orElse(-1))
          .thenComparing(leaning -> leaning.months().map(Months::text).orElse(""))
          .thenComparing(Leaning::tone);

  public Leaning {
    if (Math.abs(strength) > STRONGEST) {
      throw new IllegalArgumentException("a leaning is from -2 to 2: " + strength);
    }
  }

  /** Whether it is about the same conditions and tone; the strength may differ. */
  public boolean sameCase(Leaning other) {
    return compareTo(other) == 0;
  }

  /** Whether it holds for a trip; what the trip does not say, only a leaning for any fits. */
  public boolean holds(Name sought, Optional<Clarity> water, Optional<Month> month) {
    return (species.isBlank() || species.equals(sought))
        && (clarity.isEmpty() || clarity.equals(water))
        && months.map(m -> month.map(m.months()::contains).orElse(false)).orElse(true);
  }

  @Override
  public int compareTo(Leaning other) {
    return ORDER.compare(this, other);
  }
}

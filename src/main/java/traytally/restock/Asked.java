package traytally.restock;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import traytally.plastic.Name;

/**
 * What the angler asked of the shopping list.
 *
 * @param until the day it must last to, if one was named
 * @param trips how many trips it must last for, if a number was named
 * @param shops the only shops to buy from; empty for any
 */
public record Asked(Optional<LocalDate> until, OptionalInt trips, Set<Name> shops) {
  /** Nothing in particular. */
  public static final Asked NOTHING = new Asked(Optional.empty(), OptionalInt.empty(), Set.of());

  public Asked {
    shops = Set.copyOf(shops);
    if (trips.isPresent() && trips.getAsInt() < 1) {
      throw new IllegalArgumentException("at least one trip: " + trips.getAsInt());
    }
    if (until.isPresent() && trips.isPresent()) {
      throw new IllegalArgumentException("either until a date or for some trips, not both");
    }
  }
}

package traytally.trip;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * A stretch of a trip with one plastic tied on.
 *
 * @param species the fish sought; blank if not said
 * @param minutes time one rod fished it, minutes, if noted
 * @param casts number of casts, if noted
 * @param fish what the fish did
 * @param lost pieces lost
 * @param lostHow how they were lost, if noted
 * @param worn pieces retired, worn out
 * @param rods rods fishing it at the same time, at least 1
 */
public record Stint(
    Trip trip,
    Name species,
    Optional<Clarity> clarity,
    Plastic plastic,
    OptionalDouble minutes,
    OptionalInt casts,
    Fish fish,
    int lost,
    Optional<LossCause> lostHow,
    int worn,
    int rods,
    String note) {

  public Stint {
    if (minutes.isPresent() && !(minutes.getAsDouble() >= 0 && minutes.getAsDouble() < 1e6)) {
      throw new IllegalArgumentException("minutes out of range: " + minutes);
    }
    if (casts.isPresent() && casts.getAsInt() < 0) {
      throw new IllegalArgumentException("casts must not be negative: " + casts);
    }
    if (lost < 0 || worn < 0) {
      throw new IllegalArgumentException("pieces must not be negative: " + lost + ", " + worn);
    }
    if (rods < 1) {
      throw new IllegalArgumentException("at least one rod fishes: " + rods);
    }
  }

  /** Pieces that left the tray: lost and worn. */
  public int use() {
    return Math.addExact(lost, worn);
  }
}

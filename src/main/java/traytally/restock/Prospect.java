package traytally.restock;

import traytally.performance.Standing;
import traytally.performance.Trust;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;

/**
 * What is ahead of one plastic.
 *
 * @param pieces in the tray today
 * @param trust of its colour
 * @param kept whether the angler vouches for it by hand
 * @param endless its use if no tray emptied
 * @param asItIs its use if the other trays are as they are, so may empty and leave it more hours
 */
public record Prospect(
    Plastic plastic, Pieces pieces, Trust trust, boolean kept, Use endless, Use asItIs) {

  /** Its colour's standing; {@code kept} does not change it. */
  public Standing standing() {
    return trust.standing();
  }

  /** Pieces the horizon takes on average, the tray being endless. */
  public double expectedUse() {
    return endless.mean();
  }

  /** The pieces that nine times in ten are enough, the tray being endless. */
  public int useP90() {
    return endless.ninetyPercentBound();
  }

  /** The probability that its tray is empty by the end of the horizon. */
  public double runOutChance() {
    return asItIs.distribution().atLeast(pieces.count());
  }

  /** Whether running out of it is to be avoided: trusted, promising or kept. */
  boolean wanted() {
    return kept || standing() == Standing.TRUSTED || standing() == Standing.PROMISING;
  }
}

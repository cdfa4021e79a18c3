package traytally.plastic;

/**
 * How a colour looks in the water: its base, and the flakes, back or belly laid with it.
 *
 * @param flake the same as the base where there is no second colour
 * @param baseShare the part of the whole that the base is, 0 to 1
 */
public record Look(Lab base, Lab flake, double baseShare) {
  public Look {
    if (!(baseShare >= 0 && baseShare <= 1)) {
      throw new IllegalArgumentException("a share is from 0 to 1: " + baseShare);
    }
  }

  /** The look of two swatches laid in this way. */
  static Look of(Swatch base, Swatch flake, Finish finish) {
    return new Look(Lab.of(base), Lab.of(flake), baseShare(finish));
  }

  /** Rough shares by eye: a laminate is half and half (assumptions of this tool). */
  private static double baseShare(Finish finish) {
    return switch (finish) {
      case SOLID -> 0.9;
      case TRANSLUCENT, LUMINOUS -> 0.8;
      case FLAKE -> 0.75;
      case LAMINATE -> 0.5;
    };
  }

  /**
   * The difference ΔE00 from another look, alike both ways: base from base and flake from flake, by
   * the mean of their shares.
   */
  public double difference(Look other) {
    double share = (baseShare + other.baseShare) / 2;
    return share * base.difference(other.base) + (1 - share) * flake.difference(other.flake);
  }

  /** The tone of base and flake taken together. */
  public Tone tone() {
    return Tone.of(
        new Lab(
            mixed(base.l(), flake.l()), mixed(base.a(), flake.a()), mixed(base.b(), flake.b())));
  }

  private double mixed(double ofBase, double ofFlake) {
    return baseShare * ofBase + (1 - baseShare) * ofFlake;
  }
}

package traytally.plastic;

import java.util.Optional;

/**
 * A colour as it looks: its name, and the swatches the angler gave it.
 *
 * @param base the body's swatch, if given
 * @param flake the swatch of flakes, back or belly, if given
 * @param finish how the colour is laid, if given
 */
public record Colour(
    Name name, Optional<Swatch> base, Optional<Swatch> flake, Optional<Finish> finish) {
  public Colour {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a colour needs a name");
    }
  }

  /**
   * How it looks; empty without a base swatch. Two swatches without a finish are base and flake.
   */
  public Optional<Look> look() {
    Finish laid = finish.orElse(flake.isPresent() ? Finish.FLAKE : Finish.SOLID);
    return base.map(b -> Look.of(b, flake.orElse(b), laid));
  }
}

package traytally.plastic;

/** Sealed bags as the shop sells them; never pieces. */
public record Packs(int count) {
  public static final Packs NONE = new Packs(0);

  public Packs {
    if (count < 0) {
      throw new IllegalArgumentException("count must not be negative: " + count);
    }
  }

  /** The pieces in them, {@code packSize} to a pack. */
  public Pieces opened(int packSize) {
    return new Pieces(Math.multiplyExact(count, packSize));
  }
}

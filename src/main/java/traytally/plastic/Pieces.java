package traytally.plastic;

/** Lures, counted one by one; never packs. */
public record Pieces(int count) {
  public Pieces {
    if (count < 0) {
      throw new IllegalArgumentException("count must not be negative: " + count);
    }
  }
}

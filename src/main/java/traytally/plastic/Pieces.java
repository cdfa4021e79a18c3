package traytally.plastic;

/** Lures, counted one by one; never packs. */
public record Pieces(int count) implements Comparable<Pieces> {
  public static final Pieces NONE = new Pieces(0);

  public Pieces {
    if (count < 0) {
      throw new IllegalArgumentException("count must not be negative: " + count);
    }
  }

  public Pieces plus(Pieces other) {
    return new Pieces(Math.addExact(count, other.count));
  }

  @Override
  public int compareTo(Pieces other) {
    return Integer.compare(count, other.count);
  }
}

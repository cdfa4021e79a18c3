package traytally.plastic;

import java.util.Comparator;

/**
 * One kind of soft plastic the angler owns.
 *
 * @param maker who makes it; may be blank
 * @param body the body style, never blank
 * @param colour the colour's name, never blank
 * @param lengthMm overall length in millimetres; 0 where nobody wrote it down
 */
public record Plastic(Name maker, Name body, Name colour, int lengthMm)
    implements Comparable<Plastic> {
  /** Millimetres in an inch: exact by definition (international yard and pound agreement, 1959). */
  public static final double MM_PER_INCH = 25.4;

  /** Longest length believed, mm: half a metre is past any soft plastic (common practice). */
  public static final int LONGEST_MM = 500;

  /** Upper ends of the length classes, mm: about two, three, four and five inches (common use). */
  private static final int[] LENGTH_CLASSES = {0, 55, 80, 105, 130};

  private static final Comparator<Plastic> ORDER =
      Comparator.comparing(Plastic::body)
          .thenComparing(Plastic::colour)
          .thenComparingInt(Plastic::lengthMm)
          .thenComparing(Plastic::maker);

  public Plastic {
    if (body.isBlank() || colour.isBlank()) {
      throw new IllegalArgumentException("a plastic needs a body style and a colour");
    }
    if (lengthMm < 0 || lengthMm > LONGEST_MM) {
      throw new IllegalArgumentException("length must be 0 to 500 mm: " + lengthMm);
    }
  }

  /** The plastic with these words, the length in millimetres. */
  public static Plastic of(String maker, String body, String colour, int lengthMm) {
    return new Plastic(Name.of(maker), Name.of(body), Name.of(colour), lengthMm);
  }

  public boolean hasLength() {
    return lengthMm > 0;
  }

  /** The class of its length, from 1 for the shortest; 0 where nobody wrote it down. */
  public int lengthClass() {
    int place = 0;
    while (place < LENGTH_CLASSES.length && lengthMm > LENGTH_CLASSES[place]) {
      place++;
    }
    return place;
  }

  @Override
  public int compareTo(Plastic other) {
    return ORDER.compare(this, other);
  }

  /** Body, colour, length and maker in words: {@code paddle, motor oil, 75 mm (Plimwick)}. */
  @Override
  public String toString() {
    String length = hasLength() ? ", " + lengthMm + " mm" : "";
    String by = maker.isBlank() ? "" : " (" + maker + ")";
    return body + ", " + colour + length + by;
  }
}

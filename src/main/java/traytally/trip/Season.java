package traytally.trip;

import java.time.Month;
import traytally.plastic.Worded;

/** A quarter of the year by whole months, as the weather services cut it (common practice). */
public enum Season implements Worded {
  WINTER,
  SPRING,
  SUMMER,
  AUTUMN;

  /** The season of a month; June is summer in the north and winter in the south. */
  public static Season of(Month month, boolean southern) {
    int quarter = month.getValue() % 12 / 3; // December, January and February are 0
    return values()[(quarter + (southern ? 2 : 0)) % 4];
  }
}

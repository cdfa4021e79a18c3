package traytally.trip;

/**
 * What the fish did in a stint.
 *
 * @param follows fish seen following
 * @param takes fish that hit, hooked or not
 * @param hooked takes that were hooked
 * @param landed hooked fish that were landed
 */
public record Fish(int follows, int takes, int hooked, int landed) {
  public static final Fish NONE = new Fish(0, 0, 0, 0);

  public Fish {
    if (follows < 0 || landed < 0 || hooked < landed || takes < hooked) {
      throw new IllegalArgumentException(
          "want follows >= 0 and takes >= hooked >= landed >= 0: "
              + follows
              + ", "
              + takes
              + ", "
              + hooked
              + ", "
              + landed);
    }
  }
}

package traytally.plastic;

import java.util.Optional;

/** How light and how colourful a colour is: what is told apart first under water. */
public enum Tone implements Worded {
  DARK_MUTED,
  DARK_BRIGHT,
  MID_MUTED,
  MID_BRIGHT,
  PALE_MUTED,
  PALE_BRIGHT;

  // Where one ends and the next begins, CIE L* and C* (method, section 4; this tool's choice).
  private static final double MID_FROM = 40;
  private static final double PALE_FROM = 70;
  private static final double BRIGHT_FROM = 40;

  /** The tone that {@code word} names, without regard to case. */
  public static Optional<Tone> parse(String word) {
    return Worded.parse(values(), word);
  }

  /** The tone of a colour as it looks. */
  public static Tone of(Lab lab) {
    boolean bright = lab.chroma() >= BRIGHT_FROM;
    if (lab.l() < MID_FROM) {
      return bright ? DARK_BRIGHT : DARK_MUTED;
    }
    if (lab.l() < PALE_FROM) {
      return bright ? MID_BRIGHT : MID_MUTED;
    }
    return bright ? PALE_BRIGHT : PALE_MUTED;
  }
}

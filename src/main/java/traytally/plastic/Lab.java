package traytally.plastic;

/**
 * A colour as the eye tells it apart: CIE 1976 L*a*b* under daylight D65.
 *
 * @param l lightness L*, 0 black to 100 white
 * @param a green (−) to red (+)
 * @param b blue (−) to yellow (+)
 */
public record Lab(double l, double a, double b) {
  // Linear sRGB to CIE XYZ, IEC 61966-2-1:1999, rows X, Y, Z; white is each row's sum.
  private static final double[][] TO_XYZ = {
    {0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}
  };
  private static final double TWENTY_FIVE_TO_7 = Math.pow(25, 7);

  /** The colour a swatch shows on an sRGB screen. */
  public static Lab of(Swatch swatch) {
    double[] linear = {
      linear(swatch.rgb() >> 16 & 0xFF),
      linear(swatch.rgb() >> 8 & 0xFF),
      linear(swatch.rgb() & 0xFF)
    };
    double[] f = new double[3];
    for (int row = 0; row < 3; row++) {
      double sum = 0;
      double white = 0;
      for (int k = 0; k < 3; k++) {
        sum += TO_XYZ[row][k] * linear[k];
        white += TO_XYZ[row][k];
      }
      f[row] = compressed(sum / white);
    }
    return new Lab(116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2]));
  }

  /** The light of one channel, 0 to 1 (IEC 61966-2-1). */
  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  /** The cube root, straightened near black (CIE 15:2004, section 8.2.1). */
  private static double compressed(double t) {
    double limit = 6.0 / 29;
    return t > limit * limit * limit ? Math.cbrt(t) : t / (3 * limit * limit) + 4.0 / 29;
  }

  /** Chroma C*: how far from grey. */
  public double chroma() {
    return Math.hypot(a, b);
  }

  /**
   * The difference ΔE00 from another colour, alike both ways: about 1 is just seen.
   *
   * <p>CIEDE2000 with all weights 1, step by step as in Sharma, Wu &amp; Dalal, Color Research
   * &amp; Application 30(1), 2005, 21–30, equations 2–22.
   */
  public double difference(Lab other) {
    double stretch = 1 + redGreenStretch((chroma() + other.chroma()) / 2);
    double c1 = Math.hypot(a * stretch, b);
    double c2 = Math.hypot(other.a * stretch, other.b);
    double h1 = hue(a * stretch, b);
    double h2 = hue(other.a * stretch, other.b);
    boolean grey = c1 * c2 == 0;
    double meanL = (l + other.l) / 2;
    double meanC = (c1 + c2) / 2;
    double meanH = grey ? h1 + h2 : meanHue(h1, h2);
    double turn = grey ? 0 : turn(h1, h2);

    double offMid = (meanL - 50) * (meanL - 50);
    double sL = 1 + 0.015 * offMid / Math.sqrt(20 + offMid);
    double sC = 1 + 0.045 * meanC;
    double sH = 1 + 0.015 * meanC * hueWeight(meanH);
    double dL = (other.l - l) / sL;
    double dC = (c2 - c1) / sC;
    double dH = 2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(turn / 2)) / sH;
    return Math.sqrt(dL * dL + dC * dC + dH * dH + rotation(meanC, meanH) * dC * dH);
  }

  /** G, equation 4. */
  private static double redGreenStretch(double meanChroma) {
    return 0.5 * (1 - highChroma(meanChroma));
  }

  private static double highChroma(double chroma) {
    double c7 = Math.pow(chroma, 7);
    return Math.sqrt(c7 / (c7 + TWENTY_FIVE_TO_7));
  }

  /** The hue angle, degrees 0 to below 360; 0 for grey. */
  private static double hue(double redGreen, double yellowBlue) {
    if (redGreen == 0 && yellowBlue == 0) {
      return 0;
    }
    double degrees = Math.toDegrees(Math.atan2(yellowBlue, redGreen));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  /** The turn from one hue to another by the shorter way, degrees, equation 10. */
  private static double turn(double from, double to) {
    double turn = to - from;
    if (turn > 180) {
      return turn - 360;
    }
    return turn < -180 ? turn + 360 : turn;
  }

  /** The hue halfway by the shorter way, degrees, equation 14. */
  private static double meanHue(double h1, double h2) {
    double sum = h1 + h2;
    if (Math.abs(h1 - h2) <= 180) {
      return sum / 2;
    }
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  }

  /** T, equation 15. */
  private static double hueWeight(double meanHue) {
    return 1
        - 0.17 * cosine(meanHue - 30)
        + 0.24 * cosine(2 * meanHue)
        + 0.32 * cosine(3 * meanHue + 6)
        - 0.20 * cosine(4 * meanHue - 63);
  }

  /** R_T, equations 16, 17 and 21. */
  private static double rotation(double meanChroma, double meanHue) {
    double fromBlue = (meanHue - 275) / 25;
    double angle = 30 * Math.exp(-fromBlue * fromBlue);
    return -Math.sin(Math.toRadians(2 * angle)) * 2 * highChroma(meanChroma);
  }

  private static double cosine(double degrees) {
    return Math.cos(Math.toRadians(degrees));
  }
}

package traytally.performance;

/**
 * Where one standing ends and the next begins.
 *
 * @param trustedFrom least trust of a trusted colour
 * @param promisingFrom least trust of a promising one
 * @param doubtfulTo most trust of a doubtful one
 */
public record StandingRule(double trustedFrom, double promisingFrom, double doubtfulTo) {
  /** Trusted needs takes on this many days: one lucky day is no record (method, section 1). */
  private static final int TRUSTED_DAYS = 3;

  private static final int PROMISING_DAYS = 2;

  /** Nothing is doubtful before it had this many days. */
  private static final int DOUBTFUL_DAYS = 3;

  public StandingRule {
    requireProbability(trustedFrom);
    requireProbability(promisingFrom);
    requireProbability(doubtfulTo);
  }

  /**
   * The standing of a colour.
   *
   * @param trust probability that it out-fishes the mean
   */
  public Standing standing(double trust, Evidence evidence) {
    if (trust >= trustedFrom && evidence.daysWithTakes() >= TRUSTED_DAYS) {
      return Standing.TRUSTED;
    }
    if (trust >= promisingFrom && evidence.daysWithTakes() >= PROMISING_DAYS) {
      return Standing.PROMISING;
    }
    if (trust <= doubtfulTo && evidence.days() >= DOUBTFUL_DAYS) {
      return Standing.DOUBTFUL;
    }
    return Standing.UNPROVEN;
  }

  private static void requireProbability(double value) {
    if (!(value >= 0 && value <= 1)) {
      throw new IllegalArgumentException("a probability is from 0 to 1: " + value);
    }
  }
}

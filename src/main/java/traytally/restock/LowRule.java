package traytally.restock;

import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.performance.Standing;

/**
 * When a plastic is low: what it may risk depends on its standing.
 *
 * @param trustedRisk run-out chance accepted of a trusted or kept plastic
 * @param promisingRisk run-out chance accepted of a promising one
 */
public record LowRule(double trustedRisk, double promisingRisk) {
  /** Trust from which a plastic is topped up like a promising one (method, section 3). */
  private static final double AS_LIKELY_AS_NOT = 0.5;

  /** The rule that the angler's settings ask for. */
  public static LowRule of(Settings settings) {
    return new LowRule(
        settings.number(Setting.TRUSTED_RISK), settings.number(Setting.PROMISING_RISK));
  }

  /** Whether it is wanted, and its run-out chance is above what is accepted. */
  public boolean isLow(Prospect prospect) {
    return prospect.wanted() && prospect.runOutChance() > risk(prospect);
  }

  /**
   * Whether it is to be bought if money does not matter: low, or as likely as not better than the
   * mean by what was seen of it, and above the risk accepted of a promising one.
   */
  boolean isShort(Prospect prospect) {
    boolean asGoodAsNot =
        prospect.trust().evidence().days() > 0 && prospect.trust().trust() >= AS_LIKELY_AS_NOT;
    return (prospect.wanted() || asGoodAsNot) && prospect.runOutChance() > risk(prospect);
  }

  /** The run-out chance accepted; a kept plastic counts as trusted. */
  double risk(Prospect prospect) {
    boolean trusted = prospect.kept() || prospect.standing() == Standing.TRUSTED;
    return trusted ? trustedRisk : promisingRisk;
  }
}

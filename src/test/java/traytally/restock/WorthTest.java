package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;

import org.junit.jupiter.api.Test;
import traytally.plastic.Plastic;

/** Without a log, where the rates' distribution is known: log-normal with 0.3² and 0.4². */
class WorthTest {
  private static final Plastic INK = Plastic.of("", "paddle", "ink", 75);
  private static final Plastic OLIVE = Plastic.of("", "paddle", "olive", 75);

  private static Outlook outlook(int ink, int olive) {
    BoxBuilder box = new BoxBuilder().counted(TODAY, INK, ink).counted(TODAY, OLIVE, olive);
    return Outlook.of(box.kept(INK).planned(3, 8).book(), TODAY);
  }

  private static Outlook inkAlone(int pieces) {
    return Outlook.of(new BoxBuilder().counted(TODAY, INK, pieces).planned(3, 8).book(), TODAY);
  }

  private static Worth worth(Outlook outlook) {
    return new Worth(outlook.performance(), outlook.prospects().values());
  }

  private static Prospect ink(Outlook outlook) {
    return outlook.prospect(INK).orElseThrow();
  }

  /** E exp(N(0, 0.25)) = exp(0.125); 1000 draws have a standard error of 0.02. */
  @Test
  void whereNothingElseIsAtHandAllItsTakesAreLost() {
    assertEquals(Math.exp(0.125), worth(inkAlone(3)).edge(INK), 0.06);
    assertEquals(Math.exp(0.125), worth(inkAlone(0)).edge(INK), 0.06);
  }

  /**
   * Of two colours in one body, E |r − r'| = 2 exp(0.045) exp(0.08) (2 Φ(s/2) − 1), s² = 2 × 0.4²
   * (Margrabe, Journal of Finance 33(1), 1978, 177–186, of the right to exchange one for the
   * other): 0.505. With m the mean of r − r' over the draws, the two edges differ by m and sum to
   * (E |r − r'| + |m|) / 2.
   */
  @Test
  void besideAnotherOnlyWhatItHasMoreIsLost() {
    double ink = worth(outlook(3, 8)).edge(INK);
    double olive = worth(outlook(3, 8)).edge(OLIVE);
    assertEquals(0.505, 2 * (ink + olive) - Math.abs(ink - olive), 0.05);
    assertEquals(0, ink - olive, 0.08);
    assertEquals(ink, worth(outlook(0, 8)).edge(INK), 1e-9);
    assertEquals(Math.exp(0.125), worth(outlook(0, 8)).edge(OLIVE), 0.06, "ink is gone");
  }

  /**
   * Half a piece goes in an hour, so that a piece is two hours; and no piece more than is missing.
   */
  @Test
  void pieceIsWorthTheHoursItLasts() {
    Outlook outlook = inkAlone(2);
    Worth worth = worth(outlook);
    double each = worth.edge(INK) / 0.5;
    double before = ink(outlook).endless().distribution().expectedShortage(2);
    double after = ink(outlook).endless().distribution().expectedShortage(5);
    assertEquals(each * (before - after), worth.saved(ink(outlook), 2, 3), 1e-9);
    Basket.Gain gain = worth.gain(ink(outlook), true);
    assertEquals(0, gain.worth().applyAsDouble(0));
    assertEquals(worth.saved(ink(outlook), 2, 3), gain.worth().applyAsDouble(3), 1e-9);
    assertTrue(gain.wanted());
  }

  /** Up to the piece after which what is missing is worth less than a millionth of a take. */
  @Test
  void gainsEndWhereAMoreThanFullTrayDoes() {
    Outlook outlook = inkAlone(2);
    Basket.Gain gain = worth(outlook).gain(ink(outlook), false);
    double all = worth(outlook).saved(ink(outlook), 2, 100_000);
    assertEquals(all, gain.worth().applyAsDouble(gain.most()), 1e-6);
    assertTrue(all - gain.worth().applyAsDouble(gain.most() - 1) > 1e-6);
    assertEquals(
        gain.worth().applyAsDouble(gain.most()), gain.worth().applyAsDouble(gain.most() + 50));
  }

  @Test
  void whereNoTripIsAheadNothingIsSaved() {
    Outlook outlook = Outlook.of(new BoxBuilder().counted(TODAY, INK, 0).book(), TODAY);
    assertEquals(0, worth(outlook).saved(ink(outlook), 0, 5));
    assertEquals(0, worth(outlook).gain(ink(outlook), false).most());
  }

  @Test
  void ofWhatNobodyKnowsNothingIsSaid() {
    Worth worth = worth(inkAlone(2));
    assertThrows(IllegalArgumentException.class, () -> worth.edge(OLIVE));
  }
}

package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import traytally.numeric.Gaussian;
import traytally.performance.LineUp.Candidate;
import traytally.performance.LineUp.Pick;
import traytally.performance.LineUp.Role;
import traytally.plastic.Plastic;
import traytally.plastic.Tone;

/** What is tied on first, next, to try, and missed. */
class LineUpTest {
  /** Without a log no colour is before another: the angler's word and the guide decide. */
  private static final Performance BLANK = new Stints().performance();

  private static Plastic paddle(String colour) {
    return Plastic.of("", "paddle", colour, 75);
  }

  private static Candidate kept(String colour, int pieces, Tone tone, int leaning) {
    return new Candidate(paddle(colour), pieces, true, Optional.of(tone), leaning);
  }

  private static Candidate other(String colour, int pieces, int leaning) {
    return new Candidate(paddle(colour), pieces, false, Optional.empty(), leaning);
  }

  private static List<String> words(LineUp lineUp) {
    return lineUp.picks().stream()
        .map(p -> p.role().word() + " " + p.candidate().plastic().colour().text())
        .toList();
  }

  private static List<String> lineUp(Performance performance, Candidate... candidates) {
    return words(LineUp.of(performance, List.of(candidates)));
  }

  @Test
  void nextIsARealChangeOfTone() {
    assertEquals(
        List.of("first ink", "next olive", "next chalk"),
        lineUp(
            BLANK,
            kept("chalk", 5, Tone.PALE_MUTED, 0),
            kept("olive", 5, Tone.MID_MUTED, 1),
            kept("coal", 5, Tone.DARK_MUTED, 2),
            kept("ink", 6, Tone.DARK_MUTED, 2)));
  }

  @Test
  void ofLikeOnesTheGuidesThenTheFullerTraysThenTheNamesComeFirst() {
    assertEquals(
        List.of("first ink", "next chalk", "next amber", "next olive"),
        lineUp(
            BLANK,
            kept("olive", 5, Tone.MID_MUTED, 0),
            kept("amber", 5, Tone.MID_BRIGHT, 0),
            kept("chalk", 9, Tone.PALE_MUTED, 0),
            kept("ink", 1, Tone.DARK_MUTED, 1)));
  }

  @Test
  void threeChangesAreEnoughForADay() {
    assertEquals(
        List.of("first a", "next b", "next c", "next d"),
        lineUp(
            BLANK,
            kept("a", 5, Tone.DARK_MUTED, 0),
            kept("b", 5, Tone.DARK_BRIGHT, 0),
            kept("c", 5, Tone.MID_MUTED, 0),
            kept("d", 5, Tone.MID_BRIGHT, 0),
            kept("e", 5, Tone.PALE_MUTED, 0)));
  }

  @Test
  void colourOfUnknownLooksIsAToneOfItsOwn() {
    Candidate rust = new Candidate(paddle("rust"), 5, true, Optional.empty(), 0);
    Candidate grub =
        new Candidate(Plastic.of("", "grub", "rust", 50), 4, true, Optional.empty(), 0);
    Candidate sand = new Candidate(paddle("sand"), 3, true, Optional.empty(), 0);
    assertEquals(List.of("first rust", "next sand"), lineUp(BLANK, rust, grub, sand));
  }

  @Test
  void provenComesBeforeTheBestOfTheUnproven() {
    assertEquals(
        List.of("first ink", "try rust"),
        lineUp(BLANK, other("rust", 5, 2), kept("ink", 1, Tone.DARK_MUTED, -2)));
    assertEquals(
        List.of("first rust", "try sand"),
        lineUp(BLANK, other("rust", 1, 2), other("sand", 5, 0), other("coal", 1, 1)));
  }

  @Test
  void oneToTryNeedsASpareAndAColourOfItsOwn() {
    Candidate ink = kept("ink", 5, Tone.DARK_MUTED, 0);
    Candidate inkToo =
        new Candidate(Plastic.of("", "grub", "ink", 50), 9, false, Optional.empty(), 0);
    assertEquals(List.of("first ink"), lineUp(BLANK, ink, inkToo));
    assertEquals(List.of("first ink"), lineUp(BLANK, ink, other("rust", 1, 0)));
    assertEquals(List.of("first ink", "try rust"), lineUp(BLANK, ink, other("rust", 2, 0)));
  }

  @Test
  void whatIsMissedIsSaidLast() {
    LineUp lineUp =
        LineUp.of(
            BLANK,
            List.of(
                kept("ink", 0, Tone.DARK_MUTED, 2),
                kept("olive", 5, Tone.MID_MUTED, 0),
                other("rust", 0, 2)));
    assertEquals(List.of("first olive", "gone ink"), words(lineUp));
    assertEquals(OptionalDouble.empty(), lineUp.picks().get(1).best());
    assertEquals(List.of(), lineUp(BLANK, other("rust", 0, 2)));
    assertEquals(List.of(), lineUp(BLANK));
  }

  /** Olive out-fishes ink on twelve days; rust was once the best of a day. */
  private static Stints log() {
    Stints log = new Stints();
    for (int day = 0; day < 12; day++) {
      log.inTurn(day, "ink", 60, 2, "olive", 60, 6);
    }
    return log.on(3, "rust", 60, 12);
  }

  @Test
  void logSpeaksForTheFirstAndAgainstTheWorst() {
    Performance performance = log().performance();
    LineUp lineUp = LineUp.of(performance, List.of(other("ink", 9, 2), other("olive", 5, 0)));
    assertEquals(List.of("first olive"), words(lineUp));
    Pick olive = lineUp.picks().get(0);
    assertEquals(Standing.TRUSTED, olive.trust().standing());
    assertTrue(olive.proven());
    Map<Plastic, Gaussian> advantages = performance.advantages(List.of(paddle("olive")));
    assertEquals(Math.exp(advantages.get(paddle("olive")).mean()), olive.rateRatio(), 1e-12);
    assertTrue(olive.rateRatio() > 1, olive.toString());
  }

  /**
   * The chance to be the best of two is P(difference &gt; 0) of two normal variables that share
   * only the mean they are taken against: Φ(Δ/√(σ₁²+σ₂²)) but for that. 2000 draws are within 0.03.
   */
  @Test
  void oneToTryIsTheLikeliestBestOfTheUnproven() {
    Performance performance = log().performance();
    LineUp lineUp =
        LineUp.of(
            performance, List.of(other("coal", 4, 0), other("olive", 5, 0), other("rust", 4, 0)));
    assertEquals(List.of("first olive", "try rust"), words(lineUp));
    Map<Plastic, Gaussian> theta = performance.advantages(List.of(paddle("rust"), paddle("coal")));
    Gaussian rust = theta.get(paddle("rust"));
    Gaussian coal = theta.get(paddle("coal"));
    double chance =
        new Gaussian(rust.mean() - coal.mean(), Math.hypot(rust.sd(), coal.sd())).above(0);
    assertEquals(chance, lineUp.picks().get(1).best().orElseThrow(), 0.06);
    assertFalse(lineUp.picks().get(1).proven());
  }

  /** Of one body and colour the draws are the same: the first of them is the best each time. */
  @Test
  void guideSettlesOnlyWhatTheChancesLeaveOpen() {
    Candidate first = kept("ink", 5, Tone.DARK_MUTED, 0);
    Candidate small = new Candidate(Plastic.of("", "craw", "rust", 60), 3, false, none(), 0);
    Candidate large = new Candidate(Plastic.of("", "craw", "rust", 90), 3, false, none(), -1);
    Pick tried = LineUp.of(BLANK, List.of(first, large, small)).picks().get(1);
    assertEquals(small, tried.candidate());
    assertEquals(1, tried.best().orElseThrow(), 1e-9);
    assertEquals(Role.TRY, tried.role());
  }

  private static Optional<Tone> none() {
    return Optional.empty();
  }

  @Test
  void betterByTheLogComesBeforeFullerTraysAndTheGuide() {
    Candidate olive = kept("olive", 1, Tone.MID_MUTED, -2);
    Candidate ink = kept("ink", 9, Tone.DARK_MUTED, 2);
    assertEquals(List.of("first olive", "next ink"), lineUp(log().performance(), ink, olive));
  }

  @Test
  void likelierBestIsTriedBeforeWhatTheGuideLeansTo() {
    Candidate rust = other("rust", 4, -2);
    Candidate coal = other("coal", 9, 2);
    assertEquals(
        List.of("first olive", "try rust"),
        lineUp(log().performance(), other("olive", 5, 0), coal, rust));
  }

  @Test
  void withoutALogEveryPlasticIsAsGoodAsTheMean() {
    assertEquals(
        Map.of(paddle("ink"), new Gaussian(0, 0)), BLANK.advantages(List.of(paddle("ink"))));
  }
}

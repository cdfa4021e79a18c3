package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import traytally.numeric.Gaussian;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

class TrustTest {
  private static Trust trust(Grain grain, Plastic plastic, double mean, double sd) {
    return new Trust(
        Subject.of(grain, plastic), Evidence.NONE, new Gaussian(mean, sd), Standing.UNPROVEN);
  }

  private static Plastic plastic(String maker, String body, String colour, int lengthMm) {
    return Plastic.of(maker, body, colour, lengthMm);
  }

  /** Of the standard normal 5 % lie beyond 1.6449 and 15.87 % beyond 1 (any table of it). */
  @Test
  void numbersAreThoseOfTheNormalDistribution() {
    Trust trust = trust(Grain.BODY, plastic("", "paddle", "ink", 75), 0.2, 0.2);
    assertEquals(0.8413, trust.trust(), 1e-4);
    assertEquals(Math.exp(0.2), trust.rateRatio(), 1e-12);
    assertEquals(Math.exp(0.2 - 1.6449 * 0.2), trust.low(), 1e-4);
    assertEquals(Math.exp(0.2 + 1.6449 * 0.2), trust.high(), 1e-4);
    assertEquals(0.2, trust.logRatioMean());
    assertEquals(0.2, trust.logRatioSd());
  }

  @Test
  void subjectSaysWhatWasPooledOver() {
    Plastic paddle = plastic("", "paddle", "ink", 75);
    Trust body = trust(Grain.BODY, paddle, 0, 1);
    assertEquals(Optional.of(Name.of("paddle")), body.body());
    assertEquals(Optional.empty(), body.colour());
    assertEquals(OptionalInt.empty(), body.lengthMm());
    Trust whole = trust(Grain.PLASTIC, paddle, 0, 1);
    assertEquals(OptionalInt.of(75), whole.lengthMm());
    assertEquals(Optional.of(paddle), whole.plastic());
    Trust unknown = trust(Grain.PLASTIC, plastic("", "paddle", "ink", 0), 0, 1);
    assertEquals(OptionalInt.empty(), unknown.lengthMm());
  }

  @Test
  void mostTrustedComeFirstAndLikeOnesByColourBodyLengthAndMaker() {
    List<Trust> inOrder =
        List.of(
            trust(Grain.PLASTIC, plastic("", "paddle", "white", 75), 2, 1),
            trust(Grain.PLASTIC, plastic("", "paddle", "white", 75), 0.2, 0.1),
            trust(Grain.PLASTIC, plastic("", "paddle", "white", 75), 0.1, 0.05),
            trust(Grain.PLASTIC, plastic("", "grub", "ink", 150), 0, 1),
            trust(Grain.PLASTIC, plastic("", "paddle", "ink", 50), 0, 1),
            trust(Grain.PLASTIC, plastic("", "paddle", "ink", 75), 0, 1),
            trust(Grain.PLASTIC, plastic("Brine", "paddle", "ink", 75), 0, 1),
            trust(Grain.PLASTIC, plastic("", "craw", "olive", 20), 0, 1));
    Stream<Trust> mixed = Stream.of(6, 2, 7, 5, 1, 4, 0, 3).map(inOrder::get);
    assertEquals(inOrder, mixed.sorted(Trust.ORDER).toList());
  }
}

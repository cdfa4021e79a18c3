package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The Hessian that is only multiplied with, against the one that is factorised whole. */
class NestedHessianTest {
  private static final int COLOURS = 30;
  private static final int DAYS = 150;

  private final Random random = new Random(20260501);
  private final int[] day = new int[600];
  private final int[] colour = new int[600];
  private final int[] fish = new int[600];
  private final int[] body = new int[600];

  private CountData data() {
    int[] counts = new int[600];
    double[] effect = new double[COLOURS];
    Arrays.setAll(effect, c -> 0.4 * random.nextGaussian());
    int[] both = new int[600];
    int[] quarter = new int[600];
    for (int i = 0; i < counts.length; i++) {
      day[i] = i * DAYS / counts.length;
      colour[i] = random.nextInt(COLOURS);
      fish[i] = day[i] % 3;
      body[i] = random.nextInt(4);
      both[i] = colour[i] * 3 + fish[i];
      quarter[i] = colour[i] * 4 + day[i] % 4;
      double rate = Math.exp(0.4 + effect[colour[i]]);
      for (double wait = -Math.log(random.nextDouble());
          wait < rate;
          wait -= Math.log(random.nextDouble())) {
        counts[i]++;
      }
    }
    return CountData.of(counts, new double[600])
        .blockedBy("day", day, DAYS)
        .groupedBy("body", body, 4)
        .groupedBy("colour", colour, COLOURS)
        .groupedWithin("colour", "colour:fish", both, COLOURS * 3)
        .groupedWithin("colour", "colour:season", quarter, COLOURS * 4);
  }

  private record Pair(Hessian whole, Hessian nested, CountDesign design) {}

  private Pair assembled() {
    CountDesign design = new CountDesign(data(), true);
    double[] weight = new double[design.observations];
    Arrays.setAll(weight, i -> 0.2 + random.nextDouble());
    Effects sds = Effects.zero(design);
    Arrays.fill(sds.blocks, 0.8);
    double[] sd = {0.3, 0.4, 0.2, 0.2, 10};
    for (int g = 0; g < sd.length; g++) {
      Arrays.fill(sds.columns, design.groupStart[g], design.groupStart[g + 1], sd[g]);
    }
    Hessian whole = new BlockedHessian(design);
    Hessian nested = new NestedHessian(design);
    assertTrue(whole.assemble(weight, sds) && nested.assemble(weight, sds));
    return new Pair(whole, nested, design);
  }

  @Test
  void itSolvesTheSameSystem() {
    Pair both = assembled();
    Effects right = Effects.zero(both.design());
    Arrays.setAll(right.columns, k -> random.nextGaussian());
    Arrays.setAll(right.blocks, k -> random.nextGaussian());
    Effects other = right.copy();
    both.whole().solve(right, 1e-8);
    both.nested().solve(other, 1e-8);
    assertArrayNear(right.columns, other.columns, 1e-5);
    assertArrayNear(right.blocks, other.blocks, 1e-5);
  }

  private static void assertArrayNear(double[] expected, double[] actual, double tolerance) {
    for (int k = 0; k < expected.length; k++) {
      assertEquals(expected[k], actual[k], tolerance, "at " + k);
    }
  }

  /** What a few probes leave open is small beside what one log likelihood can tell. */
  @Test
  void itsEstimatesAreNear() {
    Pair both = assembled();
    assertEquals(both.whole().logDeterminant(), both.nested().logDeterminant(), 3);
    both.whole().invert();
    both.nested().invert();
    double[] exact = new double[both.design().observations];
    double[] probed = exact.clone();
    double[] exactBlocks = new double[DAYS];
    double[] probedBlocks = new double[DAYS];
    both.whole().variances(exact, exactBlocks);
    both.nested().variances(probed, probedBlocks);
    assertEquals(mean(exact), mean(probed), 0.1 * mean(exact));
    assertEquals(mean(exactBlocks), mean(probedBlocks), 0.02);
    double kept = 0;
    for (int k = 0; k < both.design().columns; k++) {
      double gap = both.whole().shrunkVariance(k) - both.nested().shrunkVariance(k);
      assertTrue(Math.abs(gap) < 0.3, "column " + k + ": " + gap);
      kept += gap / both.design().columns;
    }
    assertEquals(0, kept, 0.01);
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  @Test
  void itsPosteriorIsTheSame() {
    Pair both = assembled();
    both.whole().invert();
    both.nested().invert();
    JointEffects exact = both.whole().posterior();
    JointEffects solved = both.nested().posterior();
    JointEffects.Sum one = new JointEffects.Sum(new int[] {5, 40}, new double[] {1, 0.5});
    JointEffects.Sum other = new JointEffects.Sum(new int[] {6, 50}, new double[] {1, 0.5});
    assertEquals(exact.covariance(one, other), solved.covariance(one, other), 1e-4);
    double variance = exact.differences(List.of(one), other)[0];
    assertEquals(variance, solved.differences(List.of(one), other)[0], 0.02 * variance);
    double drawn = 0;
    for (int d = 0; d < 2000; d++) {
      double[] draw = solved.draw(random);
      double gap = draw[5] + draw[40] / 2 - draw[6] - draw[50] / 2;
      drawn += gap * gap / 2000;
    }
    // The variance of 2,000 squares: a relative error of √(2/2000) = 0.032 is one deviation.
    assertEquals(variance, drawn, 0.13 * variance);
  }

  /** The whole fit, once by each way. */
  @Test
  void theFitIsNearlyTheSame() {
    CountData data = data();
    Map<String, Double> scales =
        Map.of("day", 1.5, "body", 0.3, "colour", 0.4, "colour:fish", 0.2, "colour:season", 0.2);
    MixedCountModel model =
        MixedCountModel.negativeBinomial().withPriors(Priors.halfNormal(scales));
    MixedCountFit exact = model.fit(data);
    MixedCountFit nested = model.fit(data, NestedHessian::new);
    assertTrue(nested.converged());
    exact.sds().forEach((name, sd) -> assertEquals(sd, nested.sd(name), 0.06, name));
    assertArrayNear(exact.effects("colour"), nested.effects("colour"), 0.06);
  }

  @Test
  void whatDoesNotLieWithinIsRefused() {
    CountData data =
        CountData.of(new int[] {1, 2}, new double[2]).groupedBy("colour", new int[] {0, 1}, 2);
    assertThrows(
        IllegalArgumentException.class,
        () -> data.groupedWithin("colour", "fish", new int[] {0, 0}, 1));
    assertThrows(
        IllegalArgumentException.class,
        () -> data.groupedWithin("body", "fish", new int[] {0, 1}, 2));
  }
}

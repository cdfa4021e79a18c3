package traytally.performance;

import java.util.List;
import java.util.Locale;
import java.util.function.LongFunction;
import traytally.simulation.SimulatedAngler;

/** How often trust comes true over simulated anglers. */
final class TrustCalibration {
  private static final int BINS = 10;

  private final double[] stated = new double[BINS];
  private final double[] came = new double[BINS];
  private final int[] count = new int[BINS];
  private int trusted;
  private int trustedAbove;
  private int covered;
  private int all;
  private int anglers;

  TrustCalibration(int anglers, int trips, LongFunction<SimulatedAngler> kind, long firstSeed) {
    this.anglers = anglers;
    for (int i = 0; i < anglers; i++) {
      SimulatedAngler angler = kind.apply(firstSeed + i);
      angler.fish(trips);
      add(angler);
    }
  }

  private void add(SimulatedAngler angler) {
    List<Trust> trusts =
        Performance.of(
                angler.log(), LogReading.plain(1), Measure.TAKES, new StandingRule(0.8, 0.65, 0.1))
            .by(Grain.COLOUR);
    double middle =
        trusts.stream()
            .mapToDouble(t -> angler.effect(t.colour().orElseThrow()))
            .average()
            .orElseThrow();
    for (Trust trust : trusts) {
      double truth = angler.effect(trust.colour().orElseThrow()) - middle;
      int bin = Math.min(BINS - 1, (int) (trust.trust() * BINS));
      stated[bin] += trust.trust();
      came[bin] += truth > 0 ? 1 : 0;
      count[bin]++;
      all++;
      covered += Math.log(trust.low()) <= truth && truth <= Math.log(trust.high()) ? 1 : 0;
      if (trust.standing() == Standing.TRUSTED) {
        trusted++;
        trustedAbove += truth > 0 ? 1 : 0;
      }
    }
  }

  /** Expected calibration error: the bins' gaps between stated and seen, weighted by size. */
  double error() {
    double error = 0;
    for (int b = 0; b < BINS; b++) {
      error += Math.abs(stated[b] - came[b]);
    }
    return error / all;
  }

  /** The error that perfect calibration would show by chance: mean |gap| of each bin's binomial. */
  double chanceError() {
    double error = 0;
    for (int b = 0; b < BINS; b++) {
      if (count[b] > 0) {
        double p = stated[b] / count[b];
        error += Math.sqrt(2 / Math.PI * count[b] * p * (1 - p));
      }
    }
    return error / all;
  }

  double coverage() {
    return (double) covered / all;
  }

  int trusted() {
    return trusted;
  }

  double trustedAbove() {
    return (double) trustedAbove / trusted;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%d anglers: error %.4f (by chance %.4f), coverage %.3f, trusted per angler %.2f, of them"
            + " above the middle %.3f",
        anglers,
        error(),
        chanceError(),
        coverage(),
        (double) trusted / anglers,
        trustedAbove());
  }
}

package traytally.performance;

import java.util.Arrays;
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
  private double modelRank;
  private double rawRank;
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
    addRanks(angler, trusts);
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

  /** How well the order of the colours is found, by the model and by raw takes an hour. */
  private void addRanks(SimulatedAngler angler, List<Trust> trusts) {
    double[] truth = new double[trusts.size()];
    double[] model = new double[trusts.size()];
    double[] raw = new double[trusts.size()];
    for (int i = 0; i < truth.length; i++) {
      truth[i] = angler.effect(trusts.get(i).colour().orElseThrow());
      model[i] = trusts.get(i).logRatioMean();
      raw[i] = trusts.get(i).evidence().rawPerHour().orElse(0);
    }
    modelRank += correlation(ranks(truth), ranks(model)) / anglers;
    rawRank += correlation(ranks(truth), ranks(raw)) / anglers;
  }

  /** The rank of each value, ties at their mean. */
  private static double[] ranks(double[] values) {
    double[] ranks = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      for (double other : values) {
        ranks[i] += other < values[i] ? 1 : other == values[i] ? 0.5 : 0;
      }
    }
    return ranks;
  }

  /** Pearson's correlation; 0 where either does not vary. */
  private static double correlation(double[] one, double[] other) {
    double meanOne = Arrays.stream(one).average().orElse(0);
    double meanOther = Arrays.stream(other).average().orElse(0);
    double both = 0;
    double ofOne = 0;
    double ofOther = 0;
    for (int i = 0; i < one.length; i++) {
      both += (one[i] - meanOne) * (other[i] - meanOther);
      ofOne += (one[i] - meanOne) * (one[i] - meanOne);
      ofOther += (other[i] - meanOther) * (other[i] - meanOther);
    }
    return ofOne * ofOther == 0 ? 0 : both / Math.sqrt(ofOne * ofOther);
  }

  /** Mean rank correlation of the model's order with the truth. */
  double modelRank() {
    return modelRank;
  }

  /** The same of raw takes an hour. */
  double rawRank() {
    return rawRank;
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
            + " above the middle %.3f, rank correlation %.3f (raw %.3f)",
        anglers,
        error(),
        chanceError(),
        coverage(),
        (double) trusted / anglers,
        trustedAbove(),
        modelRank,
        rawRank);
  }
}

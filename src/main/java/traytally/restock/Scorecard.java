package traytally.restock;

import java.util.ArrayList;
import java.util.List;
import traytally.numeric.NegativeBinomial;

/** Adds up how forecasts came true. */
final class Scorecard {
  private static final int BINS = 10;
  private static final double HALF = 0.5;
  private static final double NINE_TENTHS = 0.9;

  /** The pinball losses of one way to forecast. */
  private static final class Losses {
    private double half;
    private double nineTenths;

    void add(NegativeBinomial forecast, int used, int most) {
      half += pinball(HALF, Math.min(most, forecast.quantile(HALF)), used);
      nineTenths += pinball(NINE_TENTHS, Math.min(most, forecast.quantile(NINE_TENTHS)), used);
    }

    private static double pinball(double level, int quantile, int used) {
      return used >= quantile ? level * (used - quantile) : (1 - level) * (quantile - used);
    }

    Audit.Pinball mean(int count) {
      return new Audit.Pinball(count == 0 ? 0 : half / count, count == 0 ? 0 : nineTenths / count);
    }
  }

  private int forecasts;
  private double forecast;
  private int usedInAll;
  private int newcomers;
  private int held;
  private double heldBySaying;
  private final Losses own = new Losses();
  private final Losses croston = new Losses();
  private final Losses average = new Losses();
  private final int[] trays = new int[BINS];
  private final double[] said = new double[BINS];
  private final int[] came = new int[BINS];

  /**
   * Adds one plastic over one horizon.
   *
   * @param used pieces it took
   * @param most pieces it could take: what the tray held and what came into it; the forecasts,
   *     which are for a tray that does not empty, end there too
   * @param byCroston pieces expected by Croston's method
   * @param byAverage pieces expected by the average
   */
  void use(NegativeBinomial expected, int used, int most, double byCroston, double byAverage) {
    int bound = expected.quantile(NINE_TENTHS);
    forecasts++;
    forecast +=
        most == Integer.MAX_VALUE
            ? expected.mean()
            : expected.mean() - expected.expectedShortage(most);
    usedInAll += used;
    held += used <= bound ? 1 : 0;
    heldBySaying += bound >= most ? 1 : expected.cumulative(bound);
    own.add(expected, used, most);
    croston.add(NegativeBinomial.ofMoments(byCroston, byCroston), used, most);
    average.add(NegativeBinomial.ofMoments(byAverage, byAverage), used, most);
  }

  /** Adds pieces used of a plastic that nobody knew when the forecasts were made. */
  void newcomer(int used) {
    newcomers += used;
  }

  /** Adds one tray: how likely it was to empty, and whether it did. */
  void runOut(double chance, boolean empty) {
    int bin = Math.min(BINS - 1, (int) (chance * BINS));
    trays[bin]++;
    said[bin] += chance;
    came[bin] += empty ? 1 : 0;
  }

  Audit.UseScore use() {
    int count = Math.max(1, forecasts);
    return new Audit.UseScore(
        forecasts,
        forecast,
        usedInAll,
        newcomers,
        (double) held / count,
        heldBySaying / count,
        own.mean(forecasts),
        croston.mean(forecasts),
        average.mean(forecasts));
  }

  /** The tenths that any chance fell in. */
  List<Audit.Bin> runOuts() {
    List<Audit.Bin> bins = new ArrayList<>();
    for (int b = 0; b < BINS; b++) {
      if (trays[b] > 0) {
        bins.add(
            new Audit.Bin(
                (double) b / BINS,
                (b + 1.0) / BINS,
                trays[b],
                said[b] / trays[b],
                (double) came[b] / trays[b]));
      }
    }
    return bins;
  }
}

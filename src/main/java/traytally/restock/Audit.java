package traytally.restock;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import traytally.ledger.Book;

/**
 * How often the past's forecasts came true: the log replayed trip by trip, with only what was known
 * on the eve of each.
 *
 * @param trips replayed
 * @param horizonDays days each looked ahead; the trips then made stand for the plan
 * @param use how forecasts of use came true
 * @param runOuts run-out chances by tenths: what was said and what came
 * @param calls how colours did from the day they were trusted
 */
public record Audit(
    LocalDate asOf, int trips, int horizonDays, UseScore use, List<Bin> runOuts, Calls calls) {
  public Audit {
    runOuts = List.copyOf(runOuts);
  }

  /**
   * Run-out chances from {@code from} up to {@code to}.
   *
   * @param trays how many had such a chance
   * @param said their mean chance
   * @param came how many ran out, as a share
   */
  public record Bin(double from, double to, int trays, double said, double came) {}

  /**
   * Forecasts of one plastic's use over one horizon.
   *
   * @param forecasts how many
   * @param forecast pieces expected in all
   * @param used pieces used in all
   * @param newcomers pieces used beside them of plastics that neither book nor log knew then
   * @param held share of the 90 % bounds that held
   * @param heldBySaying the share that was to hold by the forecasts' own word: counts are whole, so
   *     it is above 90 %
   * @param own this tool's pinball losses
   * @param croston those of Croston's method
   * @param average those of the mean of the 12 months before
   */
  public record UseScore(
      int forecasts,
      double forecast,
      int used,
      int newcomers,
      double held,
      double heldBySaying,
      Pinball own,
      Pinball croston,
      Pinball average) {}

  /**
   * Mean pinball loss, pieces, of the quantiles at one half and nine tenths (Koenker &amp; Bassett,
   * Econometrica 46(1), 1978, 33–50).
   */
  public record Pinball(double half, double nineTenths) {}

  /**
   * How the colours called trusted did on the days after.
   *
   * @param colours called trusted at some time
   * @param compared of them fished later beside others
   * @param held of these had more takes an hour than what was fished beside them
   * @param trustedNow still trusted by the whole log
   * @param ratio their takes an hour over the others', day by day (Mantel and Haenszel's ratio of
   *     rates: Rothman, Modern Epidemiology, 1986); empty if nothing compares
   */
  public record Calls(int colours, int compared, int held, int trustedNow, OptionalDouble ratio) {}

  /** Is told how far a replay has come. */
  @FunctionalInterface
  public interface Watcher {
    /** So many trips are replayed of so many. */
    void replayed(int done, int of);
  }

  /**
   * Replays the last trips of a log.
   *
   * @param most how many of them at most
   */
  public static Audit of(Book book, LocalDate asOf, int most, Watcher watcher) {
    return new Replay(book, asOf).audit(most, watcher);
  }

  /** Mean gap between the run-out chances said and what came; 0 if none was said. */
  public double runOutError() {
    double gaps = 0;
    double all = 0;
    for (Bin bin : runOuts) {
      gaps += bin.trays() * Math.abs(bin.said() - bin.came());
      all += bin.trays();
    }
    return all == 0 ? 0 : gaps / all;
  }
}

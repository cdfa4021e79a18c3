package traytally.numeric;

import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The time of one fit with priors of {@code stints-large.csv} (7,969 stints, 2,000 days, 80
 * colours), its days repeated once, twice and four times over.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class MixedCountFitBench {
  @Param({"1", "2", "4"})
  int times;

  private CountData data;

  /** Reads the stints and repeats them, each time on days of their own. */
  @Setup
  public void repeatDays() {
    data = ReferenceLog.repeated("stints-large", times, "colour", "body");
  }

  /** Fits the negative binomial model. */
  @Benchmark
  public MixedCountFit fit() {
    Priors priors = Priors.halfNormal(Map.of("day", 1.5, "colour", 0.4, "body", 0.3));
    return MixedCountModel.negativeBinomial().withPriors(priors).fit(data);
  }
}

package traytally.performance;

import java.util.List;
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
import traytally.simulation.LongLog;
import traytally.trip.Stint;

/**
 * The time of one fit with conditions: 300 colours, 3 fish, 4 clarities, 4 seasons, four stints a
 * day. 16,000 stints over 8,000 show that cost is linear in stints.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx600m")
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
public class ContextFitBench {
  private static final int COLOURS = 300;

  @Param({"8000", "16000", "100000"})
  int stints;

  private List<Turn> turns;
  private LogReading reading;

  /** Makes the log. */
  @Setup
  public void makeLog() {
    List<Stint> log = LongLog.of(stints, COLOURS, 7);
    turns = Turn.of(log, 1);
    reading = new LogReading(1, false, LongLog.tones(COLOURS));
  }

  /** Fits the model. */
  @Benchmark
  public Object fit() {
    return new CatchModel(turns, Measure.TAKES, reading);
  }
}

package sealspan.bench.speed;

import java.util.List;
import java.util.Random;
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
import sealspan.bench.truth.RecurrenceFleet;
import sealspan.stats.recurrence.EventHistory;
import sealspan.stats.recurrence.EventTimes;
import sealspan.stats.recurrence.MeanCumulativeFunction;
import sealspan.stats.recurrence.MeanCumulativeFunction.Mark;
import sealspan.stats.recurrence.PowerLawProcess;
import sealspan.stats.recurrence.TrendTests;

/** Repeated events with exact dates: two a unit on average. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(1)
public class RecurrenceSpeed {
  /** Units. */
  @Param({"10000", "100000", "1000000"})
  public int units;

  private List<EventHistory> histories;
  private List<EventTimes> times;

  /** Units whose rates differ, entered within 500 days and watched to day 2,000. */
  @Setup
  public void draw() {
    histories = RecurrenceFleet.counted(new Random(20_260_102L), units, .001, 2_000);
    times =
        histories.stream()
            .map(
                h ->
                    EventTimes.watched(
                        h.entryDays()[0],
                        h.exitDays()[0],
                        java.util.Arrays.stream(h.eventDays())
                            .filter(day -> day > h.entryDays()[0])
                            .asDoubleStream()
                            .toArray()))
            .toList();
  }

  /** The mean cumulative function with its robust variance at every event day. */
  @Benchmark
  public Object meanWithRobustVariance() {
    return MeanCumulativeFunction.of(histories, Mark.COUNT);
  }

  /** A power law over all systems, with its profile interval. */
  @Benchmark
  public Object powerLaw() {
    return PowerLawProcess.of(times).orThrow().shape(.95);
  }

  /** Laplace's test with variance by unit. */
  @Benchmark
  public Object laplaceByUnit() {
    return TrendTests.laplaceByUnit(times);
  }
}

package sealspan.bench.speed;

import java.util.ArrayList;
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
import sealspan.stats.survival.KaplanMeier;
import sealspan.stats.survival.Lifetime;

/** Survival curves of exact dates. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(1)
public class SurvivalSpeed {
  /** Units. */
  @Param({"10000", "100000", "1000000"})
  public int units;

  private List<Lifetime> lives;

  /** Weibull lives of shape 1.5 and scale 3,000 days, entered late, seen for at most ten years. */
  @Setup
  public void draw() {
    Random random = new Random(20_260_101L);
    lives = new ArrayList<>(units);
    for (int i = 0; i < units; i++) {
      int end = 1 + (int) (3_000 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 1.5));
      int entry = random.nextInt(end);
      int seen = entry + random.nextInt(3_650);
      lives.add(end <= seen ? Lifetime.ended(entry, end) : Lifetime.goingOn(entry, seen));
    }
  }

  /** Kaplan-Meier with Greenwood's variance. */
  @Benchmark
  public Object kaplanMeier() {
    return KaplanMeier.of(lives);
  }
}

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
import sealspan.stats.survival.Lifetime;
import sealspan.stats.survival.LognormalFit;
import sealspan.stats.survival.Turnbull;
import sealspan.stats.survival.WeibullFit;

/** Curves of lives that are known only to have ended between two tests. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4)
@Measurement(iterations = 5)
@Fork(1)
public class EnclosedEndsSpeed {
  /** Lives. */
  @Param({"10000", "100000", "1000000"})
  public int lives;

  private List<Lifetime> data;

  /** Weibull lives of shape 1.5 and scale 3,000 days, looked at about once a year. */
  @Setup
  public void draw() {
    Random random = new Random(20_260_102L);
    data = new ArrayList<>(lives);
    for (int i = 0; i < lives; i++) {
      int end = 1 + (int) (3_000 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 1.5));
      int held = 0;
      int looks = 1 + random.nextInt(15);
      int next = 1 + random.nextInt(365);
      while (looks > 0 && next < end) {
        held = next;
        next += 335 + random.nextInt(60);
        looks--;
      }
      data.add(looks > 0 ? Lifetime.endedWithin(0, held, next) : Lifetime.goingOn(0, held));
    }
  }

  /** The curve without a shape. */
  @Benchmark
  public Object turnbull() {
    return Turnbull.of(data);
  }

  /** Shape and scale. */
  @Benchmark
  public Object weibull() {
    return WeibullFit.of(data);
  }

  /** Mean and spread of the logarithms. */
  @Benchmark
  public Object lognormal() {
    return LognormalFit.of(data);
  }
}

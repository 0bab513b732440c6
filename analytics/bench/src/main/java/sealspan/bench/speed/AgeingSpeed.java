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
import sealspan.stats.ageing.AgeingFit;
import sealspan.stats.ageing.AgeingFit.Frailty;
import sealspan.stats.ageing.AgeingFit.Prior;
import sealspan.stats.ageing.RepairedLife;
import sealspan.stats.ageing.VirtualAge;

/** Virtual age from twelve tests a unit. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(1)
public class AgeingSpeed {
  /** Units. */
  @Param({"2000", "20000", "200000"})
  public int units;

  /** Model. */
  @Param({"KIJIMA_I", "KIJIMA_II"})
  public VirtualAge model;

  private List<RepairedLife> lives;

  /** Shape 1.8, scale 8 years; cleaning leaves .6 of the age, a new seal .05. */
  @Setup
  public void draw() {
    lives =
        new RecurrenceFleet.Ageing(model, 1.8, 8, .6, .05, 0)
            .lives(new Random(20_260_103L), units, 12);
  }

  /** All units alike. */
  @Benchmark
  public Object alike() {
    return AgeingFit.of(lives, model, Frailty.NONE, Prior.WEAK);
  }

  /** Units that differ. */
  @Benchmark
  public Object frail() {
    return AgeingFit.of(lives, model, Frailty.LOGNORMAL, Prior.WEAK);
  }
}

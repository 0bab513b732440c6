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
import sealspan.stats.effect.ActionEffect;
import sealspan.stats.effect.ComparedCases;

/** What each of two actions would have led to, with ten covariates. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2)
@Measurement(iterations = 3)
@Fork(1)
public class ActionEffectSpeed {
  private static final int COVARIATES = 10;

  /** Cases. */
  @Param({"10000", "100000", "1000000"})
  public int size;

  private ComparedCases cases;

  /** The first covariate moves the choice and the failure; units of two cases. */
  @Setup
  public void draw() {
    Random random = new Random(20_260_102L);
    List<String> names = new ArrayList<>();
    double[][] columns = new double[COVARIATES][size];
    boolean[] second = new boolean[size];
    boolean[] failed = new boolean[size];
    double[] years = new double[size];
    int[] unit = new int[size];
    for (int j = 0; j < COVARIATES; j++) {
      names.add("covariate " + j);
    }
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < COVARIATES; j++) {
        columns[j][i] = random.nextGaussian();
      }
      second[i] = random.nextDouble() < 1 / (1 + Math.exp(-columns[0][i]));
      years[i] = 0.8 + 0.4 * random.nextDouble();
      double hazard = 0.2 * Math.exp(0.5 * columns[0][i] - (second[i] ? 0.7 : 0));
      failed[i] = random.nextDouble() < -Math.expm1(-hazard * years[i]);
      unit[i] = i / 2;
    }
    cases = new ComparedCases(names, columns, second, failed, years, unit);
  }

  /** Both models, overlap weights and intervals by unit. */
  @Benchmark
  public Object effect() {
    return ActionEffect.of(cases, 0.95);
  }
}

package sealspan.bench.speed;

import java.util.ArrayList;
import java.util.Arrays;
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
import sealspan.stats.watch.MixtureWatch;

/** What one test costs the watch; one thread. The threshold is never reached. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class WatchSpeed {
  /** Zones: four circles about each of a quarter as many places, of 1, 4, 16 and 64 of them. */
  @Param({"2000", "200000"})
  public int zones;

  private MixtureWatch watch;
  private int[][] zonesOf;
  private boolean[] found;
  private int next;

  /** Places on a ring, and a million outcomes. */
  @Setup
  public void draw() {
    int places = zones / 4;
    List<List<Integer>> of = new ArrayList<>();
    for (int place = 0; place < places; place++) {
      of.add(new ArrayList<>());
    }
    int[] sizes = {1, 4, 16, 64};
    for (int centre = 0; centre < places; centre++) {
      for (int s = 0; s < sizes.length; s++) {
        for (int i = 0; i < sizes[s]; i++) {
          of.get((centre + i) % places).add(4 * centre + s);
        }
      }
    }
    zonesOf = of.stream().map(l -> l.stream().mapToInt(i -> i).toArray()).toArray(int[][]::new);
    double[] weight = new double[zones];
    Arrays.fill(weight, 1.0 / zones);
    watch = new MixtureWatch(weight, Double.MAX_VALUE);
    Random random = new Random(20_261_127L);
    found = new boolean[1 << 20];
    for (int i = 0; i < found.length; i++) {
      found[i] = random.nextDouble() < .05;
    }
  }

  /** One test. */
  @Benchmark
  public Object test() {
    next = next * 1_103_515_245 + 12_345;
    int place = (next >>> 8) % zonesOf.length;
    return watch.observe(zonesOf[place], .05, found[next >>> 12]);
  }
}

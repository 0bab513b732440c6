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
import sealspan.stats.scan.PlanarZones;
import sealspan.stats.scan.ScanSettings;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.VisitDraws;
import sealspan.stats.scan.Visits;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.ZoneLimits;
import sealspan.stats.scan.ZoneOrder;

/** A whole scan of space and time: neighbours, the best zone, 999 replicates; one thread. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(value = 1, jvmArgs = "-Xmx1g")
public class ScanSpeed {
  /** Places; each is visited ten times. */
  @Param({"2000", "10000", "50000"})
  public int places;

  /** Most places of a zone. */
  @Param("500")
  public int neighbours;

  private Visits visits;
  private double[] x;
  private double[] y;
  private List<Window> windows;

  /** Twelve windows over six periods; cases at three visits in ten, as in the scan's reckoning. */
  @Setup
  public void draw() {
    Random random = new Random(20_260_102L);
    int periods = 6;
    int n = 10 * places;
    x = random.doubles(places).toArray();
    y = random.doubles(places).toArray();
    int[] place = new int[n];
    int[] period = new int[n];
    int[] stratum = new int[n];
    boolean[] found = new boolean[n];
    double[] probability = new double[n];
    double mean = Math.min(0.3, 30_000.0 / n);
    for (int i = 0; i < n; i++) {
      place[i] = i / 10;
      period[i] = random.nextInt(periods);
      stratum[i] = random.nextInt(16);
      probability[i] = mean * (0.5 + random.nextDouble());
      found[i] = random.nextDouble() < probability[i];
    }
    visits = new Visits(places, periods, place, period, stratum, found, probability);
    windows = new ArrayList<>(Window.upTo(3, periods)).subList(0, 12);
  }

  /** The scan. */
  @Benchmark
  public Object scan() {
    double[] weight = visits.grid().expectedByPlace();
    List<ZoneOrder> orders = PlanarZones.circles(x, y, weight, new ZoneLimits(0.5, neighbours));
    return ScanStatistic.first(
        visits.grid(), windows, orders, new VisitDraws(visits, 1), ScanSettings.usual(1));
  }
}

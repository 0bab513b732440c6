package sealspan.stats.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ShapesTest {
  private static final ZoneLimits ALL = new ZoneLimits(1, 1_000);

  /** Binned neighbours against all distances sorted, with ties, strips and points in one place. */
  @Test
  void findsTheNeighboursThatMeasuringAllFinds() {
    for (int set = 0; set < 20; set++) {
      Random random = new Random(set);
      int n = 2 + random.nextInt(90);
      double[] x = new double[n];
      double[] y = new double[n];
      for (int i = 0; i < n; i++) {
        x[i] = set % 4 == 0 ? random.nextInt(9) : 100 * random.nextDouble();
        y[i] = set % 4 == 1 ? 0 : set % 4 == 2 ? random.nextInt(3) : random.nextDouble();
      }
      int most = 1 + random.nextInt(n);
      double[] weight = new double[n];
      Arrays.fill(weight, 1);
      List<List<Integer>> wanted = new ArrayList<>();
      for (List<Integer> zone : BruteScan.circles(x, y)) {
        if (zone.size() <= most) {
          wanted.add(zone.stream().sorted().toList());
        }
      }
      List<List<Integer>> found = new ArrayList<>();
      for (ZoneOrder order : PlanarZones.circles(x, y, weight, new ZoneLimits(1, most))) {
        for (int k = 0; k < order.places().length; k++) {
          if (order.complete()[k]) {
            found.add(Arrays.stream(order.places()).limit(k + 1).sorted().boxed().toList());
          }
        }
      }
      assertEquals(new java.util.HashSet<>(wanted), new java.util.HashSet<>(found), "set " + set);
    }
  }

  /** Reference case: places 1 and 2 at one point must enter together (expected.csv of 11). */
  @Test
  void placesAtOnePointEnterTogether() {
    double[] x = {0, 0, 5, 9};
    double[] weight = {1, 1, 1, 1};
    List<ZoneOrder> orders = PlanarZones.circles(x, new double[4], weight, ALL);
    assertEquals(3, orders.size());
    assertArrayEquals(new boolean[] {false, true, true, true}, orders.get(0).complete());
  }

  /** A thin row of places: an ellipse along it holds them before those beside it; a circle not. */
  @Test
  void ellipsesFollowARow() {
    double[] x = {0, 1, 2, 3, 4, 2, 2};
    double[] y = {0, 0, 0, 0, 0, 1.5, -1.5};
    double[] weight = {1, 1, 1, 1, 1, 1, 1};
    List<ZoneOrder> orders =
        PlanarZones.ellipses(x, y, weight, new ZoneLimits(5 / 7.0, 7), new double[] {3}, 6);
    // [4 * 3 / 16]^(1/2) by hand
    assertEquals(Math.sqrt(0.75), orders.get(0).penalty(), 1e-12);
    assertTrue(
        orders.stream()
            .anyMatch(
                o ->
                    o.places().length == 5
                        && Arrays.stream(o.places())
                            .sorted()
                            .boxed()
                            .toList()
                            .equals(List.of(0, 1, 2, 3, 4))));
  }

  /**
   * A comb by hand: a main along y = 0 from 0 to 10, teeth at x = 0, 5, 10 of length 4; places at
   * the tips. Across the gap it is 5, along the pipes 13.
   */
  @Test
  void measuresAlongPipesAndStopsAtClosedValves() {
    List<double[][]> pipes =
        List.of(
            new double[][] {{0, 0}, {5, 0}, {10, 0}},
            new double[][] {{0, 0}, {0, 4}},
            new double[][] {{5, 0}, {5, 4}},
            new double[][] {{10, 0}, {10, 4}});
    double[] x = {0, 5, 10, 5};
    double[] y = {4, 4, 4, -2};
    PipeNetwork open = new PipeNetwork(pipes, List.of(), x, y);
    assertArrayEquals(new double[] {0, 13, 18, 11}, open.distances(0), 1e-12);
    assertArrayEquals(new double[] {13, 0, 13, 6}, open.distances(1), 1e-12);
    PipeNetwork closed =
        new PipeNetwork(pipes, List.of(new double[] {7, 0}, new double[] {5, 2}), x, y);
    double never = Double.POSITIVE_INFINITY;
    assertArrayEquals(new double[] {0, never, never, 11}, closed.distances(0), 1e-12);
    List<ZoneOrder> zones = open.zones(new double[] {1, 1, 1, 1}, new ZoneLimits(0.5, 4));
    assertArrayEquals(new int[] {0, 3}, zones.get(0).places());
    // Asked again with other weights or limits, it answers as one that was never asked before.
    for (int most : new int[] {4, 2}) {
      double[] weight = {1, 1, 1, 5};
      ZoneLimits limits = new ZoneLimits(0.9, most);
      List<ZoneOrder> again = open.zones(weight, limits);
      List<ZoneOrder> anew = new PipeNetwork(pipes, List.of(), x, y).zones(weight, limits);
      assertEquals(anew.size(), again.size());
      for (int i = 0; i < anew.size(); i++) {
        assertArrayEquals(anew.get(i).places(), again.get(i).places());
        assertArrayEquals(anew.get(i).complete(), again.get(i).complete());
      }
    }
  }

  /** The comb again: how far places lie from the pipes, and what hangs together. */
  @Test
  void tellsHowFarPlacesLieFromPipesAndWhatHangsTogether() {
    List<double[][]> pipes =
        List.of(
            new double[][] {{0, 0}, {5, 0}, {10, 0}},
            new double[][] {{0, 0}, {0, 4}},
            new double[][] {{20, 0}, {20, 4}});
    double[] x = {3, -1, 20, 12, 23};
    double[] y = {2, 4, 2, -1.5, 8};
    // 2 above the main; 1 beside a tooth; on a pipe; past an end by 2 and 1.5; past a top by 3, 4.
    assertArrayEquals(new double[] {2, 1, 0, 2.5, 5}, PipeNetwork.offsets(pipes, x, y), 1e-12);
    assertArrayEquals(new int[] {0, 0, 1, 0, 1}, new PipeNetwork(pipes, List.of(), x, y).parts());
    PipeNetwork cut = new PipeNetwork(pipes, List.of(new double[] {0.5, 0}), x, y);
    assertArrayEquals(new int[] {0, 1, 2, 0, 2}, cut.parts());
    assertArrayEquals(
        new double[] {Double.POSITIVE_INFINITY},
        PipeNetwork.offsets(List.of(), new double[1], new double[1]));
  }

  /** Places that nothing was tested at have no expected cases: they are in no best zone alone. */
  @Test
  void aZoneWithNoTestsIsNoCluster() {
    double[] x = {0, 1, 10, 11};
    int[] place = {0, 0, 0, 1, 1, 1};
    boolean[] found = {true, true, false, false, false, true};
    double[] probability = {.4, .4, .4, .4, .4, .4};
    Visits visits =
        new Visits(4, 2, place, new int[] {0, 0, 1, 0, 1, 1}, new int[6], found, probability);
    CaseGrid grid = visits.grid();
    List<ZoneOrder> orders =
        PlanarZones.circles(x, new double[4], grid.expectedByPlace(), new ZoneLimits(.5, 4));
    assertTrue(
        orders.stream().anyMatch(o -> o.places()[0] == 2), "zones without tests are looked at");
    Zone best = new ZoneSearch(grid, Window.upTo(2, 2), orders, 0).best();
    assertArrayEquals(new int[] {0}, best.places());
    assertEquals(new Window(0, 0), best.window());
    double[] maxima =
        ScanStatistic.maxima(
            grid,
            Window.upTo(2, 2),
            orders,
            new VisitDraws(visits, 1),
            new ScanSettings(20, 1, 0, 1, 1));
    assertTrue(Arrays.stream(maxima).allMatch(Double::isFinite));
  }

  /** Two balls by hand: the best subset of both is the two places with cases, so both are sure. */
  @Test
  void tellsHowOftenAPlaceIsInTheSubsetsThatScoreNearlyAsWell() {
    int[] cases = {4, 0, 3, 0, 1};
    double[] expected = {1, 1, 1, 2.5, 2.5};
    CaseGrid grid = new CaseGrid(5, 1, cases, expected);
    double[] x = {0, 1, 2, 50, 60};
    ZoneFinder.OnGrid zones =
        new SubsetZones(
                Window.whole(1),
                weight -> PlanarZones.circles(x, new double[5], weight, new ZoneLimits(.5, 3)))
            .on(grid);
    Cluster cluster = zones.first(new PopulationDraws(grid, 1), 19);
    assertArrayEquals(new int[] {0, 2}, cluster.zone().places());
    // Balls about places 0, 1 and 2 hold all three; that about 0 alone is not a ball of its own.
    NearBest near = zones.nearBest(cluster.zone().score() - 1e-9);
    assertEquals(3, near.zones());
    assertArrayEquals(new double[] {1, 0, 1, 0, 0}, near.share());
  }

  /** Distances on random networks against all pairs by repeated relaxation. */
  @Test
  void distancesAreThoseOfRelaxingAllPairs() {
    for (int set = 0; set < 10; set++) {
      Random random = new Random(300 + set);
      int n = 12;
      List<double[][]> pipes = new ArrayList<>();
      double[][] corners = new double[n][];
      double[][] d = new double[n][n];
      for (int i = 0; i < n; i++) {
        corners[i] = new double[] {100 * random.nextDouble(), 100 * random.nextDouble()};
        Arrays.fill(d[i], Double.POSITIVE_INFINITY);
        d[i][i] = 0;
      }
      for (int e = 0; e < 14; e++) {
        int a = random.nextInt(n);
        int b = random.nextInt(n);
        if (a != b) {
          pipes.add(new double[][] {corners[a], corners[b]});
          double length = Math.hypot(corners[a][0] - corners[b][0], corners[a][1] - corners[b][1]);
          d[a][b] = Math.min(d[a][b], length);
          d[b][a] = d[a][b];
        }
      }
      for (int k = 0; k < n; k++) {
        for (int i = 0; i < n; i++) {
          for (int j = 0; j < n; j++) {
            d[i][j] = Math.min(d[i][j], d[i][k] + d[k][j]);
          }
        }
      }
      boolean[] piped = new boolean[n];
      for (double[][] pipe : pipes) {
        for (int i = 0; i < n; i++) {
          piped[i] |= pipe[0] == corners[i] || pipe[1] == corners[i];
        }
      }
      int[] on = java.util.stream.IntStream.range(0, n).filter(i -> piped[i]).toArray();
      double[] x = Arrays.stream(on).mapToDouble(i -> corners[i][0]).toArray();
      double[] y = Arrays.stream(on).mapToDouble(i -> corners[i][1]).toArray();
      PipeNetwork network = new PipeNetwork(pipes, List.of(), x, y);
      for (int i = 0; i < on.length; i++) {
        double[] found = network.distances(i);
        for (int j = 0; j < on.length; j++) {
          assertEquals(d[on[i]][on[j]], found[j], 1e-9, set + ": " + on[i] + " to " + on[j]);
        }
      }
    }
  }

  /** Every subset of every ball of up to eight places, tried one by one. */
  @Test
  void theFastSubsetIsTheBestOfAllSubsets() {
    for (int set = 0; set < 40; set++) {
      Random random = new Random(900 + set);
      int n = 8;
      int[] cases = new int[2 * n];
      double[] expected = new double[2 * n];
      int total = 0;
      double sum = 0;
      for (int i = 0; i < 2 * n; i++) {
        cases[i] = random.nextInt(4);
        expected[i] = 0.2 + random.nextDouble();
        total += cases[i];
        sum += expected[i];
      }
      for (int i = 0; i < 2 * n; i++) {
        expected[i] *= total / sum;
      }
      CaseGrid grid = new CaseGrid(n, 2, cases, expected);
      double[] x = random.doubles(n).toArray();
      List<ZoneOrder> balls =
          PlanarZones.circles(x, x, grid.expectedByPlace(), new ZoneLimits(1, 5));
      double slow = 0;
      for (ZoneOrder ball : balls) {
        for (Window w : Window.upTo(2, 2)) {
          for (int subset = 1; subset < 1 << ball.places().length; subset++) {
            double c = 0;
            double m = 0;
            for (int k = 0; k < ball.places().length; k++) {
              for (int t = w.first(); t <= w.last() && (subset >> k & 1) == 1; t++) {
                c += cases[t * n + ball.places()[k]];
                m += expected[t * n + ball.places()[k]];
              }
            }
            slow = Math.max(slow, BruteScan.ratio(c, m, total));
          }
        }
      }
      Cluster fast =
          new SubsetScan(grid, Window.upTo(2, 2), balls).first(new PopulationDraws(grid, 1), 19);
      assertEquals(slow, fast.zone().score(), 1e-9);
      assertTrue(fast.p() >= 0.05 && fast.p() <= 1);
    }
  }
}

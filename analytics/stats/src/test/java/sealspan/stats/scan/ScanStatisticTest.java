package sealspan.stats.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;

class ScanStatisticTest {
  private static final ZoneLimits HALF = new ZoneLimits(0.5, 1_000);

  /** Replicates by the fast kernel against the brute-force scan of the same draws. */
  @Test
  void theFastKernelGivesTheMaximaOfTheSlowOne() {
    for (int set = 0; set < 12; set++) {
      Random random = new Random(40 + set);
      int places = 3 + random.nextInt(25);
      int periods = 1 + random.nextInt(5);
      Visits visits = visits(random, places, periods, 60 + random.nextInt(400));
      CaseGrid grid = visits.grid();
      double[] x = coordinates(random, places, set % 3 == 0);
      double[] y = coordinates(random, places, set % 3 == 0);
      List<Window> windows = Window.upTo(1 + random.nextInt(periods), periods);
      double fewest = set % 2;
      List<ZoneOrder> orders = PlanarZones.circles(x, y, grid.expectedByPlace(), HALF);
      NullDraws draws = new VisitDraws(visits, 7);
      ScanSettings settings = new ScanSettings(150, 7, fewest, 1, 1);
      double[] fast = ScanStatistic.maxima(grid, windows, orders, draws, settings);
      for (int r = 0; r < fast.length; r++) {
        int[] cells = new int[grid.total()];
        draws.draw(r, cells);
        int[] cases = new int[places * periods];
        for (int cell : cells) {
          cases[cell]++;
        }
        double slow = BruteScan.largest(cases, grid, x, y, windows, 0.5, fewest);
        assertEquals(slow, fast[r], 1e-9, "set " + set + ", replicate " + r);
      }
      Zone best = new ZoneSearch(grid, windows, orders, fewest).best();
      double observed = BruteScan.largest(grid.cases(), grid, x, y, windows, 0.5, fewest);
      assertEquals(observed, best == null ? 0 : best.score(), 1e-9);
    }
  }

  @Test
  void theMaximaDependOnTheNumberOfTheReplicateOnly() {
    Random random = new Random(5);
    Visits visits = visits(random, 20, 4, 400);
    CaseGrid grid = visits.grid();
    double[] x = coordinates(random, 20, false);
    List<ZoneOrder> orders = PlanarZones.circles(x, x, grid.expectedByPlace(), HALF);
    List<Window> windows = Window.upTo(2, 4);
    NullDraws draws = new VisitDraws(visits, 1);
    double[] few = ScanStatistic.maxima(grid, windows, orders, draws, with(37));
    double[] many = ScanStatistic.maxima(grid, windows, orders, draws, with(300));
    assertArrayEquals(few, Arrays.copyOf(many, 37));
  }

  /**
   * To the last bit what the search of the best zone gives for the cases of each replicate, however
   * many replicates are counted side by side, with shapes of several penalties and windows that
   * leave times out.
   */
  @Test
  void theMaximaAreThoseOfTheSearchHoweverManyAreDoneTogether() {
    Random random = new Random(77);
    int places = 41;
    int periods = 7;
    Visits visits = visits(random, places, periods, 900);
    CaseGrid grid = visits.grid();
    double[] x = coordinates(random, places, false);
    double[] y = coordinates(random, places, false);
    List<Window> windows =
        List.of(new Window(1, 1), new Window(1, 5), new Window(3, 3), new Window(3, 4));
    double[] ratios = {1, 2, 3};
    List<ZoneOrder> orders = PlanarZones.ellipses(x, y, grid.expectedByPlace(), HALF, ratios, 4);
    NullDraws draws = new VisitDraws(visits, 5);
    int replicates = 150;
    double[] searched = new double[replicates];
    for (int r = 0; r < replicates; r++) {
      int[] cells = new int[grid.total()];
      draws.draw(r, cells);
      int[] cases = new int[places * periods];
      for (int cell : cells) {
        cases[cell]++;
      }
      CaseGrid drawn = new CaseGrid(places, periods, cases, grid.expected());
      Zone best = new ZoneSearch(drawn, windows, orders, 0.5).best();
      searched[r] = best == null ? 0 : best.score();
    }
    for (long mostWords : new long[] {1, places * 4L * 3, ReplicateMaxima.MOST_WORDS}) {
      ReplicateMaxima maxima = new ReplicateMaxima(grid, windows, orders, 0.5, draws, mostWords);
      assertArrayEquals(searched, maxima.of(replicates), mostWords + " words");
    }
  }

  /** On one side of the number the ratio reaches the threshold, on the other it does not. */
  @Test
  void knowsTheLargestExpectedNumberThatReachesAThreshold() {
    PoissonRatio ratio = new PoissonRatio(900);
    for (double threshold : new double[] {0.02, 1, 7.5, 60}) {
      double[] largest = ratio.largestExpected(threshold);
      for (int cases = 1; cases <= 900; cases++) {
        assertTrue(ratio.at(cases, largest[cases] * (1 - 1e-8)) >= threshold);
        assertTrue(ratio.at(cases, largest[cases] * (1 + 1e-8)) < threshold);
      }
    }
    assertEquals(17, ratio.largestExpected(0)[17], 1e-7);
  }

  /** Every order once, and the next about the nearest centre that is left. */
  @Test
  void walksFromCentreToNearestCentre() {
    double[] x = {0, 10, 1, 11, 2.5, 12.6};
    double[] weight = {1, 1, 1, 1, 1, 1};
    List<ZoneOrder> orders =
        PlanarZones.circles(x, new double[6], weight, new ZoneLimits(0.7, 1_000));
    int[] centres =
        Arrays.stream(NearWalk.of(orders, 6)).mapToInt(order -> order.places()[0]).toArray();
    assertArrayEquals(new int[] {0, 2, 4, 1, 3, 5}, centres);
  }

  private static ScanSettings with(int replicates) {
    return new ScanSettings(replicates, 1, 0, 1, 1);
  }

  /** Two places of one visit each, one case: every replicate ties, so p is 1, not 1/(R+1). */
  @Test
  void countsTies() {
    Visits visits =
        new Visits(
            2,
            1,
            new int[] {0, 1},
            new int[] {0, 0},
            new int[] {0, 0},
            new boolean[] {true, false},
            new double[] {.5, .5});
    List<ZoneOrder> orders =
        PlanarZones.circles(
            new double[] {0, 1}, new double[2], visits.grid().expectedByPlace(), HALF);
    Cluster cluster =
        ScanStatistic.first(
            visits.grid(), Window.whole(1), orders, new VisitDraws(visits, 3), with(99));
    assertEquals(99, cluster.asLarge());
    assertEquals(1, cluster.p());
  }

  /**
   * Twelve equal places far apart, ten visits each, twelve cases, six of them at one place. P of
   * the largest count by enumeration of the hypergeometric law over places: a zone of one place is
   * best whenever its count is largest, and larger zones only add places with fewer per visit.
   */
  @Test
  void thePValueIsThatOfEnumeration() {
    int places = 12;
    int each = 10;
    double[] x = new double[places];
    Visits visits = equal(places, each, place -> place == 0 ? 6 : place < 7 ? 1 : 0);
    for (int i = 0; i < places; i++) {
      x[i] = i;
    }
    ZoneLimits single = new ZoneLimits(0.5, 1);
    // Neighbours at equal distance enter together, so single places are given as orders of one.
    List<ZoneOrder> orders =
        PlanarZones.circles(x, new double[places], visits.grid().expectedByPlace(), single);
    assertEquals(places, orders.size());
    int replicates = 19_999;
    Cluster cluster =
        ScanStatistic.first(
            visits.grid(), Window.whole(1), orders, new VisitDraws(visits, 11), with(replicates));
    double exact = 1 - shareWithAllBelow(6, places, each, 12);
    double error = Math.sqrt(exact * (1 - exact) / replicates);
    assertEquals(exact, cluster.p(), 4 * error);
  }

  /**
   * Share of the ways to choose cases among places * each visits with fewer than k at any place.
   */
  private static double shareWithAllBelow(int k, int places, int each, int cases) {
    double[] ways = new double[cases + 1];
    ways[0] = 1;
    for (int place = 0; place < places; place++) {
      double[] next = new double[cases + 1];
      for (int have = 0; have <= cases; have++) {
        for (int here = 0; here < k && have + here <= cases; here++) {
          next[have + here] += ways[have] * choose(each, here);
        }
      }
      ways = next;
    }
    return ways[cases] / choose(places * each, cases);
  }

  private static double choose(int n, int k) {
    double ways = 1;
    for (int i = 0; i < k; i++) {
      ways = ways * (n - i) / (i + 1);
    }
    return ways;
  }

  @Test
  void findsASecondClusterAfterTakingTheFirstOut() {
    int places = 30;
    double[] x = new double[places];
    for (int i = 0; i < places; i++) {
      x[i] = i * i;
    }
    Visits visits =
        equal(places, 40, place -> place < 3 ? 24 : place >= 26 ? 14 : place % 3 == 0 ? 3 : 2);
    Estimate<List<Cluster>> found =
        ScanStatistic.of(
            visits,
            Window.whole(1),
            weight -> PlanarZones.circles(x, new double[places], weight, HALF),
            ScanSettings.usual(99));
    List<Cluster> clusters = found.orThrow();
    assertEquals(3, clusters.size());
    assertArrayEquals(new int[] {0, 1, 2}, sorted(clusters.get(0).zone().places()));
    assertArrayEquals(new int[] {26, 27, 28, 29}, sorted(clusters.get(1).zone().places()));
    assertEquals(0.001, clusters.get(1).p());
    assertTrue(clusters.get(1).gumbelP().orThrow() < 0.001);
    assertTrue(clusters.get(2).p() > 0.05);
  }

  private static int[] sorted(int[] places) {
    int[] sorted = places.clone();
    Arrays.sort(sorted);
    return sorted;
  }

  @Test
  void saysWhyThereIsNoCluster() {
    assertNot("nothing was found at any visit", equal(3, 5, p -> 0), new double[] {0, 1, 3});
    assertNot("at every visit", equal(3, 5, p -> 5), new double[] {0, 1, 3});
    assertNot("all visits are of one place", equal(1, 9, p -> 2), new double[1]);
    assertNot("all lie at one point", equal(3, 5, p -> p), new double[3]);
    assertNot("no visit with a place", equal(3, 0, p -> 0), new double[3]);
  }

  private static void assertNot(String because, Visits visits, double[] x) {
    Estimate<List<Cluster>> found =
        ScanStatistic.of(
            visits,
            Window.whole(1),
            weight -> PlanarZones.circles(x, new double[x.length], weight, HALF),
            ScanSettings.usual(1));
    String said = ((Estimate.NotIdentified<List<Cluster>>) found).because();
    assertTrue(said.contains(because), said);
  }

  private interface CasesOf {
    int at(int place);
  }

  private static Visits equal(int places, int each, CasesOf cases) {
    int n = places * each;
    int[] place = new int[n];
    boolean[] found = new boolean[n];
    double[] probability = new double[n];
    for (int i = 0; i < n; i++) {
      place[i] = i / each;
      found[i] = i % each < cases.at(place[i]);
      probability[i] = 0.1;
    }
    return new Visits(places, 1, place, new int[n], new int[n], found, probability);
  }

  private static Visits visits(Random random, int places, int periods, int n) {
    int[] place = new int[n];
    int[] period = new int[n];
    int[] stratum = new int[n];
    boolean[] found = new boolean[n];
    double[] probability = new double[n];
    for (int i = 0; i < n; i++) {
      place[i] = random.nextInt(places);
      period[i] = random.nextInt(periods);
      stratum[i] = random.nextInt(3);
      probability[i] = 0.02 + 0.3 * random.nextDouble();
      found[i] = random.nextDouble() < probability[i];
    }
    return new Visits(places, periods, place, period, stratum, found, probability);
  }

  /** Coordinates, on a coarse lattice where ties are wanted. */
  private static double[] coordinates(Random random, int places, boolean ties) {
    double[] values = new double[places];
    for (int i = 0; i < places; i++) {
      values[i] = ties ? random.nextInt(4) : random.nextDouble();
    }
    return values;
  }
}

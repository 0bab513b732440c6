package sealspan.stats.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class PermutedTimesTest {
  private static final int[] PLACE = {0, 0, 0, 1, 1, 2};
  private static final int[] PERIOD = {0, 0, 0, 1, 2, 1};

  /** Cases as given, and beside each a visit of the same place and period that found nothing. */
  private static Visits visits(int[] place, int[] period) {
    int n = place.length;
    int[] places = Arrays.copyOf(place, 2 * n);
    int[] periods = Arrays.copyOf(period, 2 * n);
    boolean[] found = new boolean[2 * n];
    double[] probability = new double[2 * n];
    Arrays.fill(probability, 0.5);
    for (int i = 0; i < n; i++) {
      places[n + i] = place[i];
      periods[n + i] = period[i];
      found[i] = true;
    }
    return new Visits(3, 3, places, periods, new int[2 * n], found, probability);
  }

  /**
   * By hand, by the formula of Kulldorff and others (2005, PLoS Medicine 2:e59): place 0 has 3 of 6
   * cases, period 0 has 3 of 6, so 1.5 are expected there; and so on.
   */
  @Test
  void expectsTheProductOfTheMargins() {
    CaseGrid grid = PermutedTimes.grid(visits(PLACE, PERIOD));
    assertArrayEquals(
        new double[] {1.5, 1, .5, 1, 4 / 6., 2 / 6., .5, 2 / 6., 1 / 6.}, grid.expected(), 1e-12);
    assertArrayEquals(new int[] {3, 0, 0, 0, 1, 1, 0, 1, 0}, grid.cases());
  }

  @Test
  void everyPlaceAndPeriodKeepsItsNumber() {
    PermutedTimes draws = new PermutedTimes(visits(PLACE, PERIOD), 3);
    int[] cells = new int[6];
    boolean moved = false;
    for (int r = 0; r < 50; r++) {
      draws.draw(r, cells);
      int[] ofPlace = new int[3];
      int[] ofPeriod = new int[3];
      for (int cell : cells) {
        ofPlace[cell % 3]++;
        ofPeriod[cell / 3]++;
      }
      assertArrayEquals(new int[] {3, 2, 1}, ofPlace);
      assertArrayEquals(new int[] {3, 2, 1}, ofPeriod);
      moved |= Arrays.stream(cells).filter(c -> c == 0).count() < 3;
    }
    assertTrue(moved, "nothing was dealt out anew");
  }

  /** A replicate depends on its number and the seed, and not on the order of the visits. */
  @Test
  void theOrderOfVisitsDecidesNothing() {
    int[] placeBack = {2, 1, 1, 0, 0, 0};
    int[] periodBack = {1, 2, 1, 0, 0, 0};
    int[] here = new int[6];
    int[] there = new int[6];
    PermutedTimes forward = new PermutedTimes(visits(PLACE, PERIOD), 9);
    PermutedTimes back = new PermutedTimes(visits(placeBack, periodBack), 9);
    for (int r : new int[] {7, 0, 3}) {
      forward.draw(r, here);
      back.draw(r, there);
      assertArrayEquals(here, there);
    }
  }

  /** The p-value against all 720 ways to deal the six periods out among the six cases. */
  @Test
  void thePValueIsThatOfAllPermutations() {
    Visits visits = visits(PLACE, PERIOD);
    CaseGrid grid = ScanNull.PERMUTED_TIMES.grid(visits);
    List<ZoneOrder> singles = new ArrayList<>();
    for (int place = 0; place < 3; place++) {
      singles.add(new ZoneOrder(new int[] {place}, new boolean[] {true}, 1));
    }
    ZoneFinder zones = new OrderedZones(Window.upTo(1, 3), weight -> singles, 0);
    int replicates = 19_999;
    Cluster cluster = zones.on(grid).first(ScanNull.PERMUTED_TIMES.draws(visits, 4), replicates);
    double observed = largest(PERIOD, grid.expected());
    assertEquals(observed, cluster.zone().score(), 1e-12);
    int[] counts = new int[2];
    permute(PERIOD.clone(), 0, grid.expected(), observed, counts);
    assertEquals(720, counts[0]);
    double exact = (double) counts[1] / counts[0];
    double error = Math.sqrt(exact * (1 - exact) / replicates);
    assertEquals(exact, cluster.p(), 4 * error);
  }

  private static void permute(
      int[] periods, int from, double[] expected, double observed, int[] counts) {
    if (from == periods.length) {
      counts[0]++;
      counts[1] += largest(periods, expected) >= observed - 1e-9 ? 1 : 0;
      return;
    }
    for (int i = from; i < periods.length; i++) {
      swap(periods, from, i);
      permute(periods, from + 1, expected, observed, counts);
      swap(periods, from, i);
    }
  }

  private static void swap(int[] values, int a, int b) {
    int kept = values[a];
    values[a] = values[b];
    values[b] = kept;
  }

  private static double largest(int[] periods, double[] expected) {
    int[] cases = new int[9];
    for (int i = 0; i < periods.length; i++) {
      cases[periods[i] * 3 + PLACE[i]]++;
    }
    double largest = 0;
    for (int cell = 0; cell < 9; cell++) {
      largest = Math.max(largest, BruteScan.ratio(cases[cell], expected[cell], 6));
    }
    return largest;
  }
}

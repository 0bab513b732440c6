package sealspan.stats.scan;

import java.util.Arrays;
import java.util.List;

/**
 * Which places the zones hold that score nearly as well as the best: where a cluster ends is never
 * sure, and a place that is in nearly all of them belongs to it more surely than one that is in
 * few.
 *
 * @param zones number of such zones, over all centres and windows
 * @param share by place the share of them that hold it, 0 to 1
 */
public record NearBest(int zones, double[] share) {
  /**
   * The zones that reach a score.
   *
   * @param grid cases and expected cases
   * @param windows windows, ordered by first period, then last
   * @param orders the places about each centre
   * @param fewestExpected zones that expect fewer cases are not looked at
   * @param least the score to reach, more than 0
   */
  public static NearBest of(
      CaseGrid grid,
      List<Window> windows,
      List<ZoneOrder> orders,
      double fewestExpected,
      double least) {
    PoissonRatio ratio = new PoissonRatio(grid.total());
    int[] holding = new int[grid.places()];
    int zones = 0;
    int[] cases = new int[grid.places()];
    double[] expected = new double[grid.places()];
    for (Window window : windows) {
      Arrays.fill(cases, 0);
      Arrays.fill(expected, 0);
      for (int period = window.first(); period <= window.last(); period++) {
        grid.addCases(period, cases);
        grid.addExpected(period, expected);
      }
      for (ZoneOrder order : orders) {
        zones += count(order, cases, expected, ratio, fewestExpected, least, holding);
      }
    }
    double[] share = new double[grid.places()];
    for (int place = 0; place < share.length; place++) {
      share[place] = zones == 0 ? 0 : (double) holding[place] / zones;
    }
    return new NearBest(zones, share);
  }

  private static int count(
      ZoneOrder order,
      int[] cases,
      double[] expected,
      PoissonRatio ratio,
      double fewestExpected,
      double least,
      int[] holding) {
    int[] places = order.places();
    int[] endingAt = new int[places.length];
    int zones = 0;
    int inZone = 0;
    double expectedInZone = 0;
    for (int k = 0; k < places.length; k++) {
      inZone += cases[places[k]];
      expectedInZone += expected[places[k]];
      if (inZone > expectedInZone
          && order.complete()[k]
          && expectedInZone >= fewestExpected
          && order.penalty() * ratio.at(inZone, expectedInZone) >= least) {
        endingAt[k] = 1;
        zones++;
      }
    }
    int from = 0;
    for (int k = places.length - 1; k >= 0 && zones > 0; k--) {
      from += endingAt[k];
      holding[places[k]] += from;
    }
    return zones;
  }
}

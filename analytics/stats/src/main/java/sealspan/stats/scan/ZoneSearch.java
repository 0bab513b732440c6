package sealspan.stats.scan;

import java.util.Arrays;
import java.util.List;

/** The zone of the largest score in a grid. Among equal scores the first met wins. */
public final class ZoneSearch {
  private final CaseGrid grid;
  private final List<Window> windows;
  private final List<ZoneOrder> orders;
  private final double fewestExpected;
  private final PoissonRatio ratio;

  /**
   * A search.
   *
   * @param grid cases and expected cases
   * @param windows windows, ordered by first period, then last
   * @param orders the places about each centre
   * @param fewestExpected zones that expect fewer cases are not looked at
   */
  public ZoneSearch(
      CaseGrid grid, List<Window> windows, List<ZoneOrder> orders, double fewestExpected) {
    this.grid = grid;
    this.windows = windows;
    this.orders = orders;
    this.fewestExpected = fewestExpected;
    this.ratio = new PoissonRatio(grid.total());
  }

  /** The best zone; null where none has more cases than expected. */
  public Zone best() {
    return best(new boolean[grid.places()]);
  }

  /**
   * The best zone without some places; null where there is none with more cases than expected.
   *
   * @param barred zones that hold one of these places are not looked at
   */
  public Zone best(boolean[] barred) {
    Zone best = null;
    int[] cases = new int[grid.places()];
    double[] expected = new double[grid.places()];
    Window before = null;
    for (Window window : windows) {
      addUp(before, window, cases, expected);
      before = window;
      for (ZoneOrder order : orders) {
        best = better(best, order, window, cases, expected, barred);
      }
    }
    return best;
  }

  private void addUp(Window before, Window window, int[] cases, double[] expected) {
    int from = window.first();
    if (before != null && before.first() == from && before.last() < window.last()) {
      from = before.last() + 1;
    } else {
      Arrays.fill(cases, 0);
      Arrays.fill(expected, 0);
    }
    for (int period = from; period <= window.last(); period++) {
      grid.addCases(period, cases);
      grid.addExpected(period, expected);
    }
  }

  private Zone better(
      Zone best, ZoneOrder order, Window window, int[] cases, double[] expected, boolean[] barred) {
    Zone found = best;
    int inZone = 0;
    double expectedInZone = 0;
    int[] places = order.places();
    for (int k = 0; k < places.length && !barred[places[k]]; k++) {
      inZone += cases[places[k]];
      expectedInZone += expected[places[k]];
      if (inZone > expectedInZone
          && order.complete()[k]
          && expectedInZone >= fewestExpected
          && mayExceed(found, order.penalty(), inZone, expectedInZone)) {
        double score = order.penalty() * ratio.at(inZone, expectedInZone);
        if (score > (found == null ? 0 : found.score())) {
          found =
              new Zone(
                  Arrays.copyOf(places, k + 1),
                  window,
                  inZone,
                  expectedInZone,
                  score,
                  grid.total());
        }
      }
    }
    return found;
  }

  /** Whether a zone may have a larger score, by logarithms that are quick. */
  private boolean mayExceed(Zone found, double penalty, int cases, double expected) {
    if (found == null) {
      return true;
    }
    double outside = ratio.total() - expected;
    double roughly = penalty * ratio.roughly(cases, Math.log(expected), Math.log(outside));
    return !(roughly <= found.score() - PoissonRatio.ROUGHNESS);
  }
}

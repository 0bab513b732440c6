package sealspan.stats.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.stats.LiveR;

/** Units that are all alike over the year but for seasons: R's glm with units and bands. */
@LiveR.Needed
class CaseSeriesAgainstRTest {
  @Test
  void windowsAndBands() {
    List<RiskWindow> windows = List.of(new RiskWindow("before", -5, -1), CaseSeriesTest.AFTER);
    List<WatchedSpan> units = CaseSeriesTest.invented(9, 12, windows);
    CaseSeries series = CaseSeries.of(units, windows, day -> day / 60, .95).orThrow();
    List<double[]> days = new ArrayList<>();
    for (int u = 0; u < units.size(); u++) {
      int[] window = units.get(u).windowOfDay(windows);
      double[] counts = new double[window.length];
      for (int day : units.get(u).outcomeDays()) {
        counts[day]++;
      }
      for (int d = 0; d < window.length; d++) {
        days.add(new double[] {u, window[d], d / 60, counts[d]});
      }
    }
    double[] r =
        LiveR.given("unit", column(days, 0))
            .and("window", column(days, 1))
            .and("band", column(days, 2))
            .and("count", column(days, 3))
            .ask(
                "f <- glm(count ~ factor(unit) + factor(band) + factor(window), poisson,\n"
                    + " control = glm.control(epsilon = 1e-14, maxit = 100))\n"
                    + "answer <- list(ratio = exp(coef(f)[c('factor(window)1',"
                    + " 'factor(window)2')]))")
            .get("ratio");
    assertEquals(r[0], series.windows().get(0).ratio(), 1e-6);
    assertEquals(r[1], series.windows().get(1).ratio(), 1e-6);
  }

  private static double[] column(List<double[]> rows, int at) {
    return rows.stream().mapToDouble(row -> row[at]).toArray();
  }
}

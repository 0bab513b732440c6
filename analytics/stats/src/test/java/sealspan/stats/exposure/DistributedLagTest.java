package sealspan.stats.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Reference;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.StratifiedFit;
import sealspan.stats.regression.StratifiedRegression;

class DistributedLagTest {
  private static final Reference FILE = Reference.read("14_count_logit_regression/input_lag.csv");

  static double[] column(String name) {
    return FILE.rows().stream().mapToDouble(row -> Double.parseDouble(row.get(name))).toArray();
  }

  private static double[][] turbidity() {
    return new double[][] {column("turb0"), column("turb1"), column("turb2"), column("turb3")};
  }

  private static int[] zones() {
    return Arrays.stream(column("zone")).mapToInt(z -> (int) z).toArray();
  }

  static Estimate<DistributedLag> fit(LagBasis basis) {
    double[] logTests = Arrays.stream(column("exposure")).map(StrictMath::log).toArray();
    return DistributedLag.fit(column("fouled"), logTests, turbidity(), basis, zones(), .95);
  }

  /** One coefficient for each lag: R's glm with a factor of zones, reference case 14. */
  @Test
  void freeLagsAgreeWithR() {
    DistributedLag free = fit(LagBasis.free(3)).orThrow();
    Reference expected = Reference.read("14_count_logit_regression/expected.csv");
    double total = 0;
    for (int lag = 0; lag <= 3; lag++) {
      double value = expected.value("lag zone-FE turb" + lag);
      assertEquals(value, free.byLag().get(lag).value(), 1e-9);
      total += value;
    }
    assertEquals(total, free.total().value(), 1e-9);
  }

  /** As many curves as lags leave the lags free; with fewer the curve has the form promised. */
  @Test
  void curvesByHand() {
    DistributedLag free = fit(LagBasis.free(3)).orThrow();
    for (LagBasis full : new LagBasis[] {LagBasis.polynomial(3, 3), LagBasis.naturalSpline(3, 4)}) {
      DistributedLag same = fit(full).orThrow();
      for (int lag = 0; lag <= 3; lag++) {
        assertEquals(free.byLag().get(lag).value(), same.byLag().get(lag).value(), 1e-8);
        assertEquals(
            free.byLag().get(lag).standardError(), same.byLag().get(lag).standardError(), 1e-8);
      }
    }
    DistributedLag line = fit(LagBasis.polynomial(3, 1)).orThrow();
    for (int lag = 1; lag < 3; lag++) {
      assertEquals(
          0,
          line.byLag().get(lag - 1).value()
              - 2 * line.byLag().get(lag).value()
              + line.byLag().get(lag + 1).value(),
          1e-10);
    }
    // A natural spline of three knots is straight beyond none, so its ends do not bend.
    double[] last = LagBasis.naturalSpline(1000, 3).columns()[2];
    assertEquals(0, last[1000] - 2 * last[999] + last[998], 1e-5);
    assertThrows(IllegalArgumentException.class, () -> LagBasis.naturalSpline(3, 5));
    assertThrows(IllegalArgumentException.class, () -> fit(LagBasis.free(4)));
  }

  /**
   * Series: the error of the total against the sum over all pairs of rows, one by one, of the
   * scores of the free fit, with weights by hand: 1 at the same week, 2/3 and 1/3 at the next two.
   */
  @Test
  void neighbouringWeeksMayBeAlike() {
    double[] logTests = Arrays.stream(column("exposure")).map(StrictMath::log).toArray();
    int n = logTests.length;
    int[] zone = zones();
    int[] week = new int[n];
    for (int i = 1; i < n; i++) {
      week[i] = zone[i] == zone[i - 1] ? week[i - 1] + 1 : 0;
    }
    double[][] lags = turbidity();
    Design design = Design.ofRows(n);
    for (int lag = 0; lag <= 3; lag++) {
      design = design.column("lag " + lag, lags[lag]);
    }
    Observations rows = Observations.of(design, column("fouled")).offset(logTests);
    StratifiedFit fit = StratifiedRegression.fit(Family.POISSON, rows, zone).orThrow();
    int told = fit.rows().length;
    double[] moves = new double[told];
    for (int i = 0; i < told; i++) {
      for (int j = 0; j < 4; j++) {
        for (int k = 0; k < 4; k++) {
          moves[i] += fit.covariance()[j][k] * fit.scores()[i][k];
        }
      }
    }
    double variance = 0;
    for (int a = 0; a < told; a++) {
      for (int b = 0; b < told; b++) {
        int apart = Math.abs(week[fit.rows()[a]] - week[fit.rows()[b]]);
        if (zone[fit.rows()[a]] == zone[fit.rows()[b]] && apart <= 2) {
          variance += (3 - apart) / 3.0 * moves[a] * moves[b];
        }
      }
    }
    variance *= told / (double) (told - fit.strata() - 4);
    double dispersed = fit(LagBasis.free(3)).orThrow().total().standardError();
    DistributedLag lag =
        DistributedLag.fit(
                column("fouled"),
                logTests,
                lags,
                LagBasis.free(3),
                zone,
                new DistributedLag.Series(zone, week, 2),
                .95)
            .orThrow();
    double expected = Math.max(dispersed, Math.sqrt(variance));
    assertEquals(expected, lag.total().standardError(), 1e-9);
    double[][] serial = fit.serialCovariance(zone, week, 2);
    double sum = Arrays.stream(serial).flatMapToDouble(Arrays::stream).sum();
    assertEquals(variance, sum, 1e-9 * variance);
  }

  @Test
  void nothingToTell() {
    assertEquals(
        Estimate.notIdentified("there is no stratum with an event"),
        DistributedLag.fit(
            new double[4],
            new double[4],
            new double[][] {{1, 0, 1, 0}, {0, 1, 0, 1}},
            LagBasis.free(1),
            new int[4],
            .95));
  }
}

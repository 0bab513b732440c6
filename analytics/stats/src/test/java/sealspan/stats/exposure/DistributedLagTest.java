package sealspan.stats.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Reference;

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

package sealspan.stats.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Interval;
import sealspan.stats.Reference;

class CountedRateTest {
  private static final Reference EXPECTED = Reference.read("01_poisson_exact/expected.csv");

  /** R 4.2.2 poisson.test and qchisq; the NIST case is e-Handbook 8.4.5.1. */
  @Test
  void garwoodAgreesWithR() {
    for (Map<String, String> row : Reference.read("01_poisson_exact/input.csv").rows()) {
      for (String level : new String[] {"0.8", "0.9", "0.95", "0.99"}) {
        Interval interval =
            CountedRate.garwood(
                Long.parseLong(row.get("n")),
                Double.parseDouble(row.get("T")),
                Double.parseDouble(level));
        double lower = EXPECTED.value(row.get("case") + " garwood_lo " + level);
        double upper = EXPECTED.value(row.get("case") + " garwood_hi " + level);
        assertEquals(lower, interval.lower(), 1e-10 * lower);
        assertEquals(upper, interval.upper(), 1e-10 * upper);
      }
    }
  }

  /** Garwood 1936, table for no events and level .95: 3.689 (from memory); by hand -ln(.025). */
  @Test
  void withoutEventsTheUpperLimitIsMinusLogOfTheTail() {
    Interval interval = CountedRate.garwood(0, 1, 0.95);
    assertEquals(0, interval.lower());
    assertEquals(3.689, interval.upper(), 5e-4);
    assertEquals(-Math.log(0.025), interval.upper(), 1e-12);
  }

  /** Independent: at each limit the Poisson tail, summed term by term, is the tail error. */
  @Property(tries = 100, seed = "7")
  void limitsCutOffTheTails(@ForAll @IntRange(min = 1, max = 60) int events) {
    Interval interval = CountedRate.garwood(events, 1, 0.9);
    assertEquals(0.05, 1 - atMost(interval.lower(), events - 1), 1e-9);
    assertEquals(0.05, atMost(interval.upper(), events), 1e-9);
  }

  @Test
  void refusesNoExposure() {
    assertThrows(IllegalArgumentException.class, () -> CountedRate.garwood(1, 0, 0.95));
    assertThrows(IllegalArgumentException.class, () -> CountedRate.garwood(-1, 1, 0.95));
  }

  /** R 4.2.2 binom.test. */
  @Test
  void clopperPearsonAgreesWithR() {
    for (int[] c : new int[][] {{0, 20}, {3, 50}, {20, 20}}) {
      Interval interval = Share.clopperPearson(c[0], c[1], 0.95);
      assertEquals(EXPECTED.value("CP95_lo_" + c[0] + "_" + c[1]), interval.lower(), 1e-10);
      assertEquals(EXPECTED.value("CP95_hi_" + c[0] + "_" + c[1]), interval.upper(), 1e-10);
    }
  }

  /** By hand: 1 of 1 has lower limit .025; nothing seen leaves everything open. */
  @Test
  void clopperPearsonAtTheEdges() {
    assertEquals(0.025, Share.clopperPearson(1, 1, 0.95).lower(), 1e-12);
    assertEquals(new Interval(0, 1, 0.95), Share.clopperPearson(0, 0, 0.95));
    assertTrue(Share.clopperPearson(1, 1_000_000_000L, 0.95).lower() > 2e-11);
  }

  /** Independent: at each limit the binomial tail, summed term by term, is the tail error. */
  @Property(tries = 100, seed = "7")
  void clopperPearsonLimitsCutOffTheTails(
      @ForAll @IntRange(min = 1, max = 40) int hits, @ForAll @IntRange(max = 40) int misses) {
    int cases = hits + misses;
    Interval interval = Share.clopperPearson(hits, cases, 0.95);
    double above = 0;
    double below = 0;
    for (int k = 0; k <= cases; k++) {
      above += k >= hits ? binomial(k, cases, interval.lower()) : 0;
      below += k <= hits ? binomial(k, cases, interval.upper()) : 0;
    }
    assertEquals(0.025, above, 1e-10);
    assertEquals(misses == 0 ? 1 : 0.025, below, 1e-10);
  }

  private static double binomial(int k, int n, double p) {
    double value = 1;
    for (int i = 1; i <= k; i++) {
      value *= (n - k + i) * p / i;
    }
    return value * Math.pow(1 - p, n - k);
  }

  private static double atMost(double mean, int most) {
    double term = Math.exp(-mean);
    double sum = term;
    for (int k = 1; k <= most; k++) {
      term *= mean / k;
      sum += term;
    }
    return sum;
  }
}

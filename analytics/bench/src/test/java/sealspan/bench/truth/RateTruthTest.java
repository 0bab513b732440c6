package sealspan.bench.truth;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sealspan.stats.Interval;
import sealspan.stats.rates.Share;

/**
 * The short version of {@link RateTruth}: it fails only where chance would make it fail less than
 * once in a thousand times.
 */
class RateTruthTest {
  private static final double LOWEST = .93;
  private static final double HIGHEST = .97;

  /** An exact interval may cover more often than it says, never less. */
  @Test
  void exactIntervalsCoverAtLeastAsOftenAsTheySay() {
    RateTruth.Coverage coverage = RateTruth.exact(.2, 10, 2_000);
    assertTrue(range(coverage).upper() >= .95, coverage.toString());
  }

  @Test
  void approximateIntervalsCoverWithinTheRange() {
    within(RateTruth.profile(.2, 500, 1_000));
    within(RateTruth.ratio(RateTruth.Tests.INDEPENDENT, 600));
    within(RateTruth.ratio(RateTruth.Tests.ALIKE_WITHIN_UNITS, 1_000));
  }

  /** Averaged over units; fleets are the independent runs, their mean is all but normal. */
  @Test
  void shrunkIntervalsCoverAndClaimsAreSeldomWrong() {
    RateTruth.Fleets fleets = RateTruth.fleets(DrawnFleet.Kind.BAD_MINORITY, 400, 40);
    double slack = 3.3 * error(fleets.coverage());
    double mean = mean(fleets.coverage());
    assertTrue(mean + slack >= LOWEST && mean - slack <= HIGHEST, "covers " + mean);
    double wrong = mean(fleets.wrong());
    assertTrue(wrong - 3.1 * error(fleets.wrong()) <= .1 + .02, "wrong claims " + wrong);
    assertTrue(fleets.claims() > 200, "claims " + fleets.claims());
    assertTrue(fleets.found() >= fleets.foundRaw(), fleets.found() + ", " + fleets.foundRaw());
  }

  private static void within(RateTruth.Coverage coverage) {
    Interval range = range(coverage);
    assertTrue(range.lower() <= HIGHEST && range.upper() >= LOWEST, coverage.toString());
  }

  private static Interval range(RateTruth.Coverage coverage) {
    return Share.clopperPearson(coverage.covered(), coverage.runs(), .998);
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  private static double error(double[] values) {
    double mean = mean(values);
    double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return Math.sqrt(squares / (values.length - 1) / values.length);
  }
}

package sealspan.study;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;

/**
 * How alike the outcomes of different assemblies of one site are: the mean product of their
 * standardised residuals over all pairs of tests. No interval allows for it; so its size is shown.
 *
 * @param correlation correlation between tests of different assemblies of a site
 * @param designEffect factor by which it widens the variance of a mean over a site's tests; at
 *     least 1
 */
record SiteLikeness(double correlation, double designEffect) {
  private static final int FEWEST_PAIRS = 100;
  private static final double LEAST_VARIANCE = 1e-6;

  /** Null where fewer than 100 pairs of tests can tell. */
  static SiteLikeness of(List<RatedUnit> units, ExposureScale scale, RateEffects effects) {
    List<HiddenFailures> scaled =
        units.stream().map(unit -> RateModel.scaled(unit, scale, effects, 1)).toList();
    double perDay = HiddenFailureRate.maximumLikelihood(RatePriors.pooled(scaled));
    if (!(perDay > 0) || Double.isInfinite(perDay)) {
      return null;
    }
    Map<String, double[]> sites = new TreeMap<>();
    for (RatedUnit unit : units) {
      if (unit.siteId() != null && !unit.tests().isEmpty()) {
        double sum = residuals(unit, scale, effects, perDay);
        double n = unit.tests().size();
        double[] site = sites.computeIfAbsent(unit.siteId(), s -> new double[4]);
        site[0] += sum;
        site[1] += sum * sum;
        site[2] += n;
        site[3] += n * n;
      }
    }
    double products = 0;
    double pairs = 0;
    double tests = 0;
    for (double[] site : sites.values()) {
      products += site[0] * site[0] - site[1];
      pairs += site[2] * site[2] - site[3];
      tests += site[2];
    }
    if (pairs < 2 * FEWEST_PAIRS) {
      return null;
    }
    double correlation = Math.max(-1, Math.min(1, products / pairs));
    return new SiteLikeness(correlation, 1 + Math.max(0, correlation) * pairs / tests);
  }

  private static double residuals(
      RatedUnit unit, ExposureScale scale, RateEffects effects, double perDay) {
    double sum = 0;
    for (RatedTest test : unit.tests()) {
      double days = scale.years(test.days(), unit.type()) * RatePriors.YEAR_DAYS;
      double hazard = perDay * days * effects.multiplier(test.levels());
      double fails = -StrictMath.expm1(-hazard);
      double variance = fails * StrictMath.exp(-hazard);
      // A test whose outcome is all but certain tells nothing of likeness.
      boolean open = variance > LEAST_VARIANCE;
      sum += open ? ((test.failed() ? 1 : 0) - fails) / Math.sqrt(variance) : 0;
    }
    return sum;
  }
}

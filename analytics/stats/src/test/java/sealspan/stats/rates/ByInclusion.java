package sealspan.stats.rates;

import org.hipparchus.special.Gamma;

/**
 * The posterior of a hidden-failure rate written out another way: the product over failed tests of
 * (1 - exp(-rate x days)) is expanded into a signed sum over subsets, each term a gamma integral.
 * Good for a few failures only, because the terms cancel.
 */
final class ByInclusion {
  private final GammaPrior prior;
  private final HiddenFailures unit;

  ByInclusion(GammaPrior prior, HiddenFailures unit) {
    this.prior = prior;
    this.unit = unit;
  }

  double logMarginal() {
    return Math.log(sum(0, null));
  }

  double mean() {
    return sum(1, null) / sum(0, null);
  }

  double probabilityAbove(double perDay) {
    return sum(0, perDay) / sum(0, null);
  }

  private double sum(int power, Double above) {
    int[] failed = unit.failedDays();
    double a = prior.shape();
    double sum = 0;
    for (int subset = 0; subset < 1 << failed.length; subset++) {
      double exposure = prior.exposureDays() + unit.passedTotalDays();
      for (int i = 0; i < failed.length; i++) {
        exposure += (subset >> i & 1) == 1 ? failed[i] : 0;
      }
      double term =
          Math.exp(a * Math.log(prior.exposureDays() / exposure))
              * (power == 1 ? a / exposure : 1)
              * (above == null ? 1 : Gamma.regularizedGammaQ(a + power, above * exposure));
      sum += Integer.bitCount(subset) % 2 == 0 ? term : -term;
    }
    return sum;
  }
}

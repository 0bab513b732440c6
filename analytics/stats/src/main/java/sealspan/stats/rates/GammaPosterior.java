package sealspan.stats.rates;

import org.hipparchus.special.Gamma;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/**
 * What is known of the rate of counted events: gamma(shape, exposureDays), in closed form.
 *
 * @param shape prior shape plus events
 * @param exposureDays prior exposure plus exposure
 */
public record GammaPosterior(double shape, double exposureDays) {
  /** The posterior of one unit. */
  public static GammaPosterior of(GammaPrior prior, long events, double exposureDays) {
    return new GammaPosterior(prior.shape() + events, prior.exposureDays() + exposureDays);
  }

  /** Posterior mean rate per day. */
  public double meanPerDay() {
    return shape / exposureDays;
  }

  /** Posterior probability that the rate exceeds a limit per day. */
  public double probabilityAbove(double perDay) {
    return Gamma.regularizedGammaQ(shape, perDay * exposureDays);
  }

  /** Equal-tailed posterior interval of the rate per day. */
  public Interval interval(double level) {
    double tail = Confidence.tail(level);
    return new Interval(quantile(tail), quantile(1 - tail), level);
  }

  /** The rate per day below which the posterior has this probability. */
  public double quantile(double probability) {
    double root =
        RootSearch.around(
            u -> Gamma.regularizedGammaP(shape, StrictMath.exp(u)) - probability,
            StrictMath.log(shape),
            Math.min(2, 2 / Math.sqrt(shape)));
    return StrictMath.exp(root) / exposureDays;
  }
}

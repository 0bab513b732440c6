package sealspan.stats.effect;

import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * How strongly something that was not recorded would have to go with both the choice of the action
 * and the outcome, as a risk ratio each, to explain a ratio away: {@code RR + sqrt(RR (RR - 1))}
 * (VanderWeele and Ding 2017, Annals of Internal Medicine 167:268).
 *
 * @param ofEstimate for the estimate
 * @param ofLimit for the limit of its interval that is nearer to 1; 1 where the interval holds 1
 */
public record TippingPoint(double ofEstimate, double ofLimit) {

  /** The tipping point of a risk ratio above 0. */
  public static TippingPoint of(PointEstimate ratio) {
    Interval interval = ratio.interval();
    double nearer =
        interval.contains(1) ? 1 : ratio.value() > 1 ? interval.lower() : interval.upper();
    return new TippingPoint(of(ratio.value()), of(nearer));
  }

  /** The same for one ratio; a ratio below 1 counts as its inverse. */
  public static double of(double ratio) {
    if (!(ratio > 0)) {
      throw new IllegalArgumentException("a risk ratio is above 0, not " + ratio);
    }
    double above = ratio < 1 ? 1 / ratio : ratio;
    return above + Math.sqrt(above * (above - 1));
  }
}

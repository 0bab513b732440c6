package sealspan.stats.survival;

import java.util.Collection;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.NewtonAscent;
import sealspan.stats.PointEstimate;
import sealspan.stats.RootSearch;

/**
 * A curve of lives that do not age, S(t) = exp(-t/mean), fitted by maximum likelihood to the same
 * data as {@link WeibullFit}; the comparison that tells whether a shape is needed.
 */
public final class ExponentialFit implements LifeFit {
  private static final double LOG_RANGE = 20;

  private final WeibullLikelihood likelihood;
  private final NewtonAscent.Point top;

  private ExponentialFit(WeibullLikelihood likelihood, NewtonAscent.Point top) {
    this.likelihood = likelihood;
    this.top = top;
  }

  /** Fits the curve, or says why these lives do not fix one. */
  public static Estimate<ExponentialFit> of(Collection<Lifetime> lifetimes) {
    WeibullLikelihood likelihood = new WeibullLikelihood(lifetimes);
    if (likelihood.ended() == 0) {
      return Estimate.notIdentified(
          "none of the " + likelihood.lives() + " lives has been seen to end");
    }
    double start = likelihood.roughLogScale();
    NewtonAscent.Box box = new NewtonAscent.Box(start - LOG_RANGE, start + LOG_RANGE, 0, 0);
    NewtonAscent.Point top = NewtonAscent.climb(likelihood, start, 0, box);
    boolean inside = top.x() > box.lowestX() && top.x() < box.highestX();
    // A curvature this small belongs to a likelihood that only creeps towards its bound.
    return inside && top.hxx() < -1e-6
        ? Estimate.of(new ExponentialFit(likelihood, top))
        : Estimate.notIdentified("every life ended before it was first looked at");
  }

  /** Mean life, days. */
  public double meanDays() {
    return StrictMath.exp(top.x());
  }

  @Override
  public int parameters() {
    return 1;
  }

  @Override
  public double shareBeyond(int day) {
    return StrictMath.exp(-Math.max(0, day) / meanDays());
  }

  @Override
  public double quantileDays(double share) {
    return -meanDays() * StrictMath.log1p(-share);
  }

  @Override
  public double logLikelihood() {
    return top.value();
  }

  /** Standard error of the logarithm of the mean. */
  public double standardErrorLogMean() {
    return Math.sqrt(-1 / top.hxx());
  }

  /** Mean life in days with its likelihood-ratio interval. */
  public PointEstimate meanDays(double level) {
    double z = Confidence.z(level);
    double target = top.value() - z * z / 2;
    return new PointEstimate(
        meanDays(),
        meanDays() * standardErrorLogMean(),
        new Interval(limit(target, -1), limit(target, 1), level));
  }

  private double limit(double target, int direction) {
    double inside = top.x();
    double step = direction * standardErrorLogMean();
    while (likelihood.at(inside + step, 0).value() > target) {
      inside += step;
    }
    double outside = inside + step;
    return StrictMath.exp(
        RootSearch.between(
            x -> Math.max(-1e300, likelihood.at(x, 0).value() - target),
            Math.min(inside, outside),
            Math.max(inside, outside)));
  }
}

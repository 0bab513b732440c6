package sealspan.stats.survival;

import java.util.Collection;
import org.hipparchus.special.Gamma;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.NewtonAscent;
import sealspan.stats.PointEstimate;

/**
 * A Weibull curve, S(t) = exp(-(t/scale)^shape), fitted by maximum likelihood to independent lives
 * with known, open and enclosed ends and late entry. Shape above 1: they wear; below 1: the early
 * ones fail. Intervals are profile-likelihood intervals. Repeated lives of one unit are not
 * independent: fit first lives only, or the intervals are too narrow and the curve is bent.
 *
 * <p>A life that carries no information (never at risk for a day) is left out and counted. A shape
 * is sought between 0.02 and 100.
 */
public final class WeibullFit implements LifeFit {
  private static final LikelihoodTop.Sides SHAPE =
      new LikelihoodTop.Sides(
          0.02,
          100,
          "the likelihood grows as the shape falls to 0; the ends do not follow such a curve",
          "the ends lie too close together; the likelihood grows with the shape without limit");

  private final WeibullLikelihood likelihood;
  private final LikelihoodTop fit;
  private final NewtonAscent.Point top;
  private final long leftOut;

  private WeibullFit(WeibullLikelihood likelihood, LikelihoodTop fit, long leftOut) {
    this.likelihood = likelihood;
    this.fit = fit;
    this.leftOut = leftOut;
    top = fit.point();
  }

  /** Fits the curve, or says why these lives do not fix one. */
  public static Estimate<WeibullFit> of(Collection<Lifetime> lifetimes) {
    WeibullLikelihood likelihood = new WeibullLikelihood(lifetimes);
    if (likelihood.ended() == 0) {
      return Estimate.notIdentified(
          "none of the " + likelihood.lives() + " lives has been seen to end");
    }
    long all = lifetimes.stream().mapToLong(Lifetime::count).sum();
    Estimate<LikelihoodTop> found = LikelihoodTop.of(likelihood, likelihood.roughLogScale(), SHAPE);
    return found instanceof Estimate.Identified<LikelihoodTop> identified
        ? Estimate.of(new WeibullFit(likelihood, identified.value(), all - likelihood.lives()))
        : Estimate.notIdentified(((Estimate.NotIdentified<LikelihoodTop>) found).because());
  }

  @Override
  public int parameters() {
    return 2;
  }

  /** Shape at the maximum. */
  public double shape() {
    return StrictMath.exp(top.y());
  }

  /** Scale at the maximum, days: the age that 36.8 % reach. */
  public double scaleDays() {
    return StrictMath.exp(top.x());
  }

  @Override
  public double logLikelihood() {
    return top.value();
  }

  /** Standard error of the logarithm of the scale. */
  public double standardErrorLogScale() {
    return Math.sqrt(top.varianceX());
  }

  /** Standard error of the logarithm of the shape. */
  public double standardErrorLogShape() {
    return Math.sqrt(top.varianceY());
  }

  /** Lives used. */
  public long lives() {
    return likelihood.lives();
  }

  /** Lives used that ended. */
  public long ended() {
    return likelihood.ended();
  }

  /** Lives given that carry no information. */
  public long leftOut() {
    return leftOut;
  }

  /** The longest time in the data, days. */
  public int longestDay() {
    return likelihood.longestDay();
  }

  /** Shape with its profile interval; a limit is 0 or infinite where the data set none. */
  public PointEstimate shape(double level) {
    return new PointEstimate(shape(), shape() * standardErrorLogShape(), exp(fit.second(level)));
  }

  /** Scale in days with its profile interval. */
  public PointEstimate scaleDays(double level) {
    return new PointEstimate(
        scaleDays(), scaleDays() * standardErrorLogScale(), exp(fit.first(level)));
  }

  /** Share that lasts beyond a day, at least 1, with its profile interval. */
  public PointEstimate survival(int day, double level) {
    if (day < 1) {
      throw new IllegalArgumentException("the curve needs a day of at least 1, but got " + day);
    }
    double logHazard = shape() * (StrictMath.log(day) - top.x());
    LikelihoodTop.Profile profile = fit.of(Rescaled.hazardOn(day), logHazard, level);
    Interval log = profile.interval();
    double hazard = StrictMath.exp(logHazard);
    double share = StrictMath.exp(-hazard);
    return new PointEstimate(
        share,
        share * hazard * Math.sqrt(profile.variance()),
        new Interval(
            StrictMath.exp(-StrictMath.exp(log.upper())),
            StrictMath.exp(-StrictMath.exp(log.lower())),
            level));
  }

  /** The age by which this share has ended, in days, with its profile interval. */
  public PointEstimate quantileDays(double share, double level) {
    double days = quantileDays(share);
    LikelihoodTop.Profile profile = fit.of(Rescaled.quantile(share), StrictMath.log(days), level);
    return new PointEstimate(days, days * Math.sqrt(profile.variance()), exp(profile.interval()));
  }

  @Override
  public double shareBeyond(int day) {
    return day <= 0
        ? 1
        : StrictMath.exp(-StrictMath.exp(shape() * (StrictMath.log(day) - top.x())));
  }

  @Override
  public double quantileDays(double share) {
    return scaleDays() * StrictMath.pow(-StrictMath.log1p(-share), 1 / shape());
  }

  /**
   * Mean life in days with its profile interval. It reaches beyond the data: quote it with {@link
   * #shareOfMeanBeyondLongestDay}.
   */
  public PointEstimate meanDays(double level) {
    double logMean = top.x() + Gamma.logGamma(1 + 1 / shape());
    LikelihoodTop.Profile profile = fit.of(Rescaled.mean(), logMean, level);
    double mean = StrictMath.exp(logMean);
    return new PointEstimate(mean, mean * Math.sqrt(profile.variance()), exp(profile.interval()));
  }

  /** Share of the mean that lies beyond the longest time in the data: the extrapolated part. */
  public double shareOfMeanBeyondLongestDay() {
    double hazard = StrictMath.exp(shape() * (StrictMath.log(longestDay()) - top.x()));
    return Gamma.regularizedGammaQ(1 / shape(), hazard);
  }

  private static Interval exp(Interval log) {
    return new Interval(StrictMath.exp(log.lower()), StrictMath.exp(log.upper()), log.level());
  }
}

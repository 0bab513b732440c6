package sealspan.stats.survival;

import java.util.Collection;
import org.hipparchus.distribution.continuous.NormalDistribution;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * A lognormal curve, log life normal with mean mu and standard deviation sigma, fitted by maximum
 * likelihood to the same data as {@link WeibullFit}, under the same terms. Its hazard rises and
 * then falls. A sigma is sought between 0.01 and 50.
 */
public final class LognormalFit implements LifeFit {
  private static final NormalDistribution NORMAL = new NormalDistribution();
  private static final LikelihoodTop.Sides SIGMA =
      new LikelihoodTop.Sides(
          0.01,
          50,
          "the ends lie too close together; the likelihood grows as the spread falls to 0",
          "the likelihood grows with the spread; the ends do not follow such a curve");

  private final LifeCounts counts;
  private final LikelihoodTop top;
  private final long leftOut;

  private LognormalFit(LifeCounts counts, LikelihoodTop top, long leftOut) {
    this.counts = counts;
    this.top = top;
    this.leftOut = leftOut;
  }

  /** Fits the curve, or says why these lives do not fix one. */
  public static Estimate<LognormalFit> of(Collection<Lifetime> lifetimes) {
    LifeCounts counts = new LifeCounts(lifetimes);
    if (counts.ended() == 0) {
      return Estimate.notIdentified(
          "none of the " + counts.lives() + " lives has been seen to end");
    }
    long all = lifetimes.stream().mapToLong(Lifetime::count).sum();
    Estimate<LikelihoodTop> top =
        LikelihoodTop.of(new LognormalLikelihood(counts), counts.roughLogMean(), SIGMA);
    return top instanceof Estimate.Identified<LikelihoodTop> found
        ? Estimate.of(new LognormalFit(counts, found.value(), all - counts.lives()))
        : Estimate.notIdentified(((Estimate.NotIdentified<LikelihoodTop>) top).because());
  }

  @Override
  public int parameters() {
    return 2;
  }

  @Override
  public double logLikelihood() {
    return top.point().value();
  }

  /** Mean of the natural logarithms of lives in days. */
  public double mu() {
    return top.point().x();
  }

  /** Standard deviation of the logarithms. */
  public double sigma() {
    return StrictMath.exp(top.point().y());
  }

  /** Standard error of mu. */
  public double standardErrorMu() {
    return Math.sqrt(top.point().varianceX());
  }

  /** Standard error of the logarithm of sigma. */
  public double standardErrorLogSigma() {
    return Math.sqrt(top.point().varianceY());
  }

  /** Lives used. */
  public long lives() {
    return counts.lives();
  }

  /** Lives used that ended. */
  public long ended() {
    return counts.ended();
  }

  /** Lives given that carry no information. */
  public long leftOut() {
    return leftOut;
  }

  /** The longest time in the data, days. */
  public int longestDay() {
    return counts.longestDay();
  }

  /** Sigma with its profile interval; a limit is 0 or infinite where the data set none. */
  public PointEstimate sigma(double level) {
    return new PointEstimate(sigma(), sigma() * standardErrorLogSigma(), exp(top.second(level)));
  }

  /** The age by which half have ended, in days, with its profile interval. */
  public PointEstimate medianDays(double level) {
    double median = StrictMath.exp(mu());
    return new PointEstimate(median, median * standardErrorMu(), exp(top.first(level)));
  }

  /** Share that lasts beyond a day, at least 1, with its profile interval. */
  public PointEstimate survival(int day, double level) {
    if (day < 1) {
      throw new IllegalArgumentException("the curve needs a day of at least 1, but got " + day);
    }
    double z = place(day);
    LikelihoodTop.Profile profile = top.of(Rescaled.placeOf(day), z, level);
    return new PointEstimate(
        beyond(z),
        NORMAL.density(z) * Math.sqrt(profile.variance()),
        new Interval(
            beyond(profile.interval().upper()), beyond(profile.interval().lower()), level));
  }

  /** The age by which this share has ended, in days, with its profile interval. */
  public PointEstimate quantileDays(double share, double level) {
    double z = NORMAL.inverseCumulativeProbability(share);
    double days = quantileDays(share);
    LikelihoodTop.Profile profile = top.of(Rescaled.dayAt(z), StrictMath.log(days), level);
    return new PointEstimate(days, days * Math.sqrt(profile.variance()), exp(profile.interval()));
  }

  /**
   * Mean life in days with its profile interval. It reaches beyond the data: quote it with {@link
   * #shareOfMeanBeyondLongestDay}.
   */
  public PointEstimate meanDays(double level) {
    double logMean = mu() + sigma() * sigma() / 2;
    LikelihoodTop.Profile profile = top.of(Rescaled.meanOfLognormal(), logMean, level);
    double mean = StrictMath.exp(logMean);
    return new PointEstimate(mean, mean * Math.sqrt(profile.variance()), exp(profile.interval()));
  }

  /** Share of the area under the curve that lies beyond the longest time in the data. */
  public double shareOfMeanBeyondLongestDay() {
    double day = counts.longestDay();
    double z = place(counts.longestDay());
    double mean = StrictMath.exp(mu() + sigma() * sigma() / 2);
    return Math.max(0, beyond(z - sigma()) - day * beyond(z) / mean);
  }

  @Override
  public double shareBeyond(int day) {
    return day <= 0 ? 1 : beyond(place(day));
  }

  @Override
  public double quantileDays(double share) {
    return StrictMath.exp(mu() + sigma() * NORMAL.inverseCumulativeProbability(share));
  }

  private double place(int day) {
    return (StrictMath.log(day) - mu()) / sigma();
  }

  private static double beyond(double z) {
    return NORMAL.cumulativeProbability(-z);
  }

  private static Interval exp(Interval log) {
    return new Interval(StrictMath.exp(log.lower()), StrictMath.exp(log.upper()), log.level());
  }
}

package sealspan.stats.survival;

import java.util.Collection;
import org.hipparchus.special.Gamma;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.NewtonAscent;
import sealspan.stats.PointEstimate;
import sealspan.stats.ProfileLimits;

/**
 * A Weibull curve, S(t) = exp(-(t/scale)^shape), fitted by maximum likelihood to independent lives
 * with known, open and enclosed ends and late entry. Shape above 1: they wear; below 1: the early
 * ones fail. Intervals are profile-likelihood intervals. Repeated lives of one unit are not
 * independent: fit first lives only, or the intervals are too narrow and the curve is bent.
 *
 * <p>A life that carries no information (never at risk for a day) is left out and counted. A shape
 * is sought between 0.02 and 100.
 */
public final class WeibullFit {
  private static final double LOWEST_SHAPE = 0.02;
  private static final double HIGHEST_SHAPE = 100;
  private static final double LOG_SCALE_RANGE = 20;
  private static final double FLAT_CORRELATION = 1 - 1e-8;
  private static final double FLAT_ERROR = 20;

  private final WeibullLikelihood likelihood;
  private final NewtonAscent.Point top;
  private final NewtonAscent.Box box;
  private final long leftOut;

  private WeibullFit(
      WeibullLikelihood likelihood, NewtonAscent.Point top, NewtonAscent.Box box, long leftOut) {
    this.likelihood = likelihood;
    this.top = top;
    this.box = box;
    this.leftOut = leftOut;
  }

  /** Fits the curve, or says why these lives do not fix one. */
  public static Estimate<WeibullFit> of(Collection<Lifetime> lifetimes) {
    long all = 0;
    for (Lifetime life : lifetimes) {
      all += life.count();
    }
    WeibullLikelihood likelihood = new WeibullLikelihood(lifetimes);
    if (likelihood.ended() == 0) {
      return Estimate.notIdentified(
          "none of the " + likelihood.lives() + " lives has been seen to end");
    }
    double start = likelihood.roughLogScale();
    NewtonAscent.Box box =
        new NewtonAscent.Box(
            start - LOG_SCALE_RANGE,
            start + LOG_SCALE_RANGE,
            StrictMath.log(LOWEST_SHAPE),
            StrictMath.log(HIGHEST_SHAPE));
    NewtonAscent.Point top = NewtonAscent.climb(likelihood, start, 0, box);
    String obstacle = obstacle(top, box);
    return obstacle != null
        ? Estimate.notIdentified(obstacle)
        : Estimate.of(new WeibullFit(likelihood, top, box, all - likelihood.lives()));
  }

  private static String obstacle(NewtonAscent.Point top, NewtonAscent.Box box) {
    if (top.y() >= box.highestY()) {
      return "the ends lie too close together; the likelihood grows with the shape without limit";
    }
    if (top.y() <= box.lowestY()) {
      return "the likelihood grows as the shape falls to 0; the ends do not follow such a curve";
    }
    boolean steep =
        top.concave() && top.hxy() * top.hxy() < FLAT_CORRELATION * top.hxx() * top.hyy();
    if (box.onSide(top)
        || !steep
        || top.varianceX() > FLAT_ERROR * FLAT_ERROR
        || top.varianceY() > FLAT_ERROR * FLAT_ERROR) {
      return "the ends are known too roughly: many pairs of shape and scale fit them equally well";
    }
    return null;
  }

  /** Shape at the maximum. */
  public double shape() {
    return StrictMath.exp(top.y());
  }

  /** Scale at the maximum, days: the age that 36.8 % reach. */
  public double scaleDays() {
    return StrictMath.exp(top.x());
  }

  /** Log-likelihood at the maximum; known ends count by their density per day. */
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
    NewtonAscent.Surface turned = (x, y) -> swapped(likelihood.at(y, x));
    Interval log =
        ProfileLimits.of(
            turned,
            swapped(top),
            new NewtonAscent.Box(box.lowestY(), box.highestY(), box.lowestX(), box.highestX()),
            level);
    return new PointEstimate(shape(), shape() * standardErrorLogShape(), exp(log));
  }

  /** Scale in days with its profile interval. */
  public PointEstimate scaleDays(double level) {
    return new PointEstimate(
        scaleDays(),
        scaleDays() * standardErrorLogScale(),
        exp(ProfileLimits.of(likelihood, top, box, level)));
  }

  /** Share that lasts beyond a day, at least 1, with its profile interval. */
  public PointEstimate survival(int day, double level) {
    if (day < 1) {
      throw new IllegalArgumentException("the curve needs a day of at least 1, but got " + day);
    }
    double logHazard = shape() * (StrictMath.log(day) - top.x());
    Rescaled surface = new Rescaled(likelihood, Rescaled.hazardOn(day));
    NewtonAscent.Point here = surface.at(logHazard, top.y());
    Interval log = ProfileLimits.of(surface, here, around(logHazard), level);
    double hazard = StrictMath.exp(logHazard);
    double share = StrictMath.exp(-hazard);
    return new PointEstimate(
        share,
        share * hazard * Math.sqrt(here.varianceX()),
        new Interval(
            StrictMath.exp(-StrictMath.exp(log.upper())),
            StrictMath.exp(-StrictMath.exp(log.lower())),
            level));
  }

  /** The age by which this share has ended, days. */
  public double quantileDays(double share) {
    return scaleDays() * StrictMath.pow(-StrictMath.log1p(-share), 1 / shape());
  }

  /**
   * Mean life in days with its profile interval. It reaches beyond the data: quote it with {@link
   * #shareOfMeanBeyondLongestDay}.
   */
  public PointEstimate meanDays(double level) {
    double logMean = top.x() + Gamma.logGamma(1 + 1 / shape());
    Rescaled surface = new Rescaled(likelihood, Rescaled.mean());
    NewtonAscent.Point here = surface.at(logMean, top.y());
    Interval log = ProfileLimits.of(surface, here, around(logMean), level);
    double mean = StrictMath.exp(logMean);
    return new PointEstimate(mean, mean * Math.sqrt(here.varianceX()), exp(log));
  }

  /** Share of the mean that lies beyond the longest time in the data: the extrapolated part. */
  public double shareOfMeanBeyondLongestDay() {
    double hazard = StrictMath.exp(shape() * (StrictMath.log(longestDay()) - top.x()));
    return Gamma.regularizedGammaQ(1 / shape(), hazard);
  }

  private NewtonAscent.Box around(double x) {
    return new NewtonAscent.Box(
        x - LOG_SCALE_RANGE, x + LOG_SCALE_RANGE, box.lowestY(), box.highestY());
  }

  private static Interval exp(Interval log) {
    return new Interval(StrictMath.exp(log.lower()), StrictMath.exp(log.upper()), log.level());
  }

  private static NewtonAscent.Point swapped(NewtonAscent.Point p) {
    return new NewtonAscent.Point(
        p.y(), p.x(), p.value(), p.gy(), p.gx(), p.hyy(), p.hxy(), p.hxx());
  }
}

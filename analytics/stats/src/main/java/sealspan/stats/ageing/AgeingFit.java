package sealspan.stats.ageing;

import java.util.Collection;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.special.Gamma;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * A Weibull hazard of the virtual age, and the share of the age that repairs of each kind leave, by
 * maximum likelihood on failures that are found at tests. The order of the units is of no account,
 * to the last bit.
 *
 * <p>The surface can have several tops, and where the hazard is close to flat it is flat itself:
 * the climb is started from several places, and limits are those of the profile. Weak priors, where
 * asked for: log shape normal around log 1.3 with deviation .5, the logit of a share around 0 with
 * deviation 1.5.
 */
public final class AgeingFit {
  /** With fewer failures nothing is said of shape or repair. */
  public static final int FEWEST_FAILURES = 5;

  /** How the prior is chosen. */
  public enum Prior {
    /** None: maximum likelihood. */
    NONE,
    /** The weak priors. */
    WEAK
  }

  /** Whether units may differ by a factor of their own. */
  public enum Frailty {
    /** All units alike. */
    NONE,
    /** A lognormal factor of mean 1, integrated by Gauss-Hermite quadrature with 15 nodes. */
    LOGNORMAL
  }

  /** How limits are found. */
  public enum Limits {
    /**
     * By the profile of the likelihood alone: with the priors limits of shares near 0 and 1 would
     * hold the truth too seldom. The estimate is always inside.
     */
    PROFILE,
    /**
     * By its curvature at the top: one inversion instead of many climbs, good for large samples.
     */
    CURVATURE
  }

  private final AgeingSurface surface;
  private final AgeingPoint top;
  private final AgeingProfile profile;
  private final int units;
  private final int failures;
  private final int starts;
  private final int startsAtTop;

  private AgeingFit(RepairedLives lives, AgeingSearch.Found found) {
    surface = found.surface();
    top = found.top();
    units = lives.units;
    failures = lives.failures;
    starts = found.starts();
    startsAtTop = found.startsAtTop();
    profile = new AgeingProfile(surface, top);
  }

  /** Fits a model; not identified without passes, without failures, or where it has no top. */
  public static Estimate<AgeingFit> of(
      Collection<RepairedLife> units, VirtualAge model, Frailty frailty, Prior prior) {
    RepairedLives lives = RepairedLives.of(units);
    if (lives.units == 0) {
      return Estimate.notIdentified("no unit was watched from new");
    }
    if (lives.failures == 0) {
      return Estimate.notIdentified("none of the " + lives.units + " units was found failed");
    }
    if (!lives.bounded) {
      return Estimate.notIdentified("every test failed, so any short life fits");
    }
    AgeingSearch.Found found = AgeingSearch.of(lives, model, frailty, prior);
    if (found == null) {
      return Estimate.notIdentified("the likelihood is not finite anywhere near these lives");
    }
    AgeingFit fit = new AgeingFit(lives, found);
    return fit.hasTop()
        ? Estimate.of(fit)
        : Estimate.notIdentified(
            "the likelihood has no top: these failures fit ever steeper or ever flatter hazards");
  }

  private boolean hasTop() {
    for (int j : new int[] {AgeingPoint.SHAPE, AgeingPoint.SCALE}) {
      if (surface.onSide(top, j) || !(profile.variance(j) < 1e6)) {
        return false;
      }
    }
    return true;
  }

  /** Units that were seen at least once. */
  public int units() {
    return units;
  }

  /** Failures found. */
  public int failures() {
    return failures;
  }

  /** Places that the climb was started from. */
  public int starts() {
    return starts;
  }

  /** How many of them led to the top that was chosen. */
  public int startsAtTop() {
    return startsAtTop;
  }

  /** Log-likelihood at the top, without priors. */
  public double logLikelihood() {
    return surface.logLikelihood(top.at());
  }

  /** Akaike's criterion from {@link #logLikelihood}: smaller fits better. */
  public double aic() {
    return 2 * (surface.parameters() - logLikelihood());
  }

  /** The shape; above 1 units wear. */
  public PointEstimate shape(double level, Limits limits) {
    return exponential(AgeingPoint.SHAPE, level, limits);
  }

  /** The age that 37 % of new units reach, in the caller's unit of time. */
  public PointEstimate scale(double level, Limits limits) {
    return exponential(AgeingPoint.SCALE, level, limits);
  }

  /**
   * The share of age that repairs of a kind leave, 0 (as good as new) to 1 (as bad as old); not
   * identified where no stretch followed such a repair.
   */
  public Estimate<PointEstimate> shareLeft(int kind, double level, Limits limits) {
    int parameter = AgeingPoint.SHARE + kind;
    if (!surface.isFree(parameter)) {
      return Estimate.notIdentified("no such repair was followed by a test");
    }
    double share = logistic(top.at()[parameter]);
    Interval logits = limits(parameter, level, limits);
    double variance = profile.variance(parameter);
    double error =
        Double.isNaN(variance)
            ? Double.POSITIVE_INFINITY
            : share * (1 - share) * Math.sqrt(variance);
    return Estimate.of(
        new PointEstimate(
            share, error, new Interval(logistic(logits.lower()), logistic(logits.upper()), level)));
  }

  /** Standard error of the logit of a share, by curvature; NaN at a boundary. */
  double logitError(int kind) {
    return Math.sqrt(profile.variance(AgeingPoint.SHARE + kind));
  }

  /** Variance of the units' own factor; 0 without frailty. */
  public double frailtyVariance() {
    double deviation = top.at()[AgeingPoint.FRAILTY];
    return StrictMath.expm1(deviation * deviation);
  }

  /**
   * Whether repairs can be told apart by how they leave the age: not with few failures, and not
   * where the shape may be 1, because an age that does not matter cannot be set back.
   *
   * @return the shape that this rests on
   */
  public Estimate<PointEstimate> separates(double level, Limits limits) {
    if (failures < FEWEST_FAILURES) {
      return Estimate.notIdentified(
          "there are " + failures + " failures, and at least " + FEWEST_FAILURES + " are needed");
    }
    double drop =
        new ChiSquaredDistribution(surface.shares() + 1.0).inverseCumulativeProbability(level);
    double strict = Gamma.regularizedGammaP(.5, drop / 2);
    return shape(strict, limits).interval().contains(1)
        ? Estimate.notIdentified(
            "the hazard may be flat, and with a flat hazard the age that a repair leaves has no"
                + " meaning")
        : Estimate.of(shape(level, limits));
  }

  private PointEstimate exponential(int parameter, double level, Limits limits) {
    double value = StrictMath.exp(top.at()[parameter]);
    Interval logs = limits(parameter, level, limits);
    return new PointEstimate(
        value,
        value * Math.sqrt(profile.variance(parameter)),
        new Interval(StrictMath.exp(logs.lower()), StrictMath.exp(logs.upper()), level));
  }

  private Interval limits(int parameter, double level, Limits limits) {
    if (limits == Limits.CURVATURE) {
      return profile.byCurvature(parameter, level);
    }
    Interval found = likelihoodProfile().of(parameter, level);
    double estimate = top.at()[parameter];
    return new Interval(
        Math.min(found.lower(), estimate), Math.max(found.upper(), estimate), level);
  }

  private AgeingProfile likelihoodProfile() {
    AgeingSurface alone = surface.withoutPrior();
    return new AgeingProfile(alone, new AgeingClimb(alone).from(top.at()));
  }

  /** At the sides of the box the share itself is on its boundary. */
  private static double logistic(double logit) {
    if (logit <= -AgeingSurface.WIDEST_LOGIT) {
      return 0;
    }
    return logit >= AgeingSurface.WIDEST_LOGIT ? 1 : 1 / (1 + StrictMath.exp(-logit));
  }
}

package sealspan.stats.ageing;

/**
 * What is climbed: the log-likelihood with its priors, the parameters that are free, and the box.
 */
final class AgeingSurface {
  /** Beyond this logit a share is taken to lie on its boundary, 0 or 1. */
  static final double WIDEST_LOGIT = 15;

  private static final double[] LOWEST = {
    StrictMath.log(.05), -60, -WIDEST_LOGIT, -WIDEST_LOGIT, 0
  };
  private static final double[] HIGHEST = {StrictMath.log(50), 60, WIDEST_LOGIT, WIDEST_LOGIT, 3};

  private final AgeingLikelihood likelihood;
  private final AgeingFit.Prior prior;
  private final boolean[] free;

  private AgeingSurface(AgeingLikelihood likelihood, AgeingFit.Prior prior, boolean[] free) {
    this.likelihood = likelihood;
    this.prior = prior;
    this.free = free;
  }

  static AgeingSurface of(
      RepairedLives lives, VirtualAge model, AgeingFit.Frailty frailty, AgeingFit.Prior prior) {
    return new AgeingSurface(
        new AgeingLikelihood(lives, model),
        prior,
        new boolean[] {
          true, true, lives.seenAfter[0], lives.seenAfter[1], frailty == AgeingFit.Frailty.LOGNORMAL
        });
  }

  /** The same with one parameter held. */
  AgeingSurface holding(int parameter) {
    boolean[] others = free.clone();
    others[parameter] = false;
    return new AgeingSurface(likelihood, prior, others);
  }

  /** The likelihood alone. */
  AgeingSurface withoutPrior() {
    return new AgeingSurface(likelihood, AgeingFit.Prior.NONE, free);
  }

  /** The same without frailty. */
  AgeingSurface alike() {
    return holding(AgeingPoint.FRAILTY);
  }

  AgeingPoint at(double[] parameters) {
    AgeingPoint point = likelihood.at(parameters);
    if (prior == AgeingFit.Prior.NONE) {
      return point;
    }
    AgeingPoint withPrior = point.plusNormal(AgeingPoint.SHAPE, StrictMath.log(1.3), .5);
    for (int k = 0; k < RepairedLife.KINDS; k++) {
      if (likelihood.tells(k)) {
        withPrior = withPrior.plusNormal(AgeingPoint.SHARE + k, 0, 1.5);
      }
    }
    return withPrior;
  }

  /** Without priors. */
  double logLikelihood(double[] parameters) {
    return likelihood.at(parameters).value();
  }

  /** A log scale at which as many failures are expected as there are. */
  double logScale(double[] parameters) {
    double[] place = parameters.clone();
    place[AgeingPoint.SCALE] = 0;
    double shape = StrictMath.exp(place[AgeingPoint.SHAPE]);
    double scale = StrictMath.log(likelihood.hazardGained(place) / likelihood.failures()) / shape;
    return Double.isFinite(scale) ? scale : 0;
  }

  boolean isFree(int parameter) {
    return free[parameter];
  }

  /** Number of free parameters. */
  int parameters() {
    int count = 0;
    for (boolean each : free) {
      count += each ? 1 : 0;
    }
    return count;
  }

  /** Number of free shares. */
  int shares() {
    int count = 0;
    for (int k = 0; k < RepairedLife.KINDS; k++) {
      count += free[AgeingPoint.SHARE + k] ? 1 : 0;
    }
    return count;
  }

  double lowest(int parameter) {
    return LOWEST[parameter];
  }

  double highest(int parameter) {
    return HIGHEST[parameter];
  }

  boolean onSide(AgeingPoint point, int parameter) {
    double value = point.at()[parameter];
    return value <= LOWEST[parameter] || value >= HIGHEST[parameter];
  }
}

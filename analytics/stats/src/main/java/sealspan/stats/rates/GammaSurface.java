package sealspan.stats.rates;

import org.hipparchus.special.Gamma;
import sealspan.stats.NewtonAscent;

/**
 * The marginal log-likelihood of a gamma prior as a function of log shape (x) and log mean (y),
 * with derivatives. Each unit brings its marginal likelihood and the posterior moments of v =
 * log(rate / mean) and r = rate / mean; gradient and Hessian follow (missing-information identity,
 * Louis 1982).
 */
final class GammaSurface {
  private final double logShape;
  private final double logMean;
  private final double shape;
  private final double slopeConstant;
  private final double curveConstant;
  private double value;
  private double gx;
  private double gy;
  private double hxx;
  private double hxy;
  private double hyy;

  GammaSurface(double logShape, double logMean) {
    this.logShape = logShape;
    this.logMean = logMean;
    shape = StrictMath.exp(logShape);
    slopeConstant = logShape + 1 - Gamma.digamma(shape);
    curveConstant = 1 - shape * Gamma.trigamma(shape);
  }

  /** Adds units that share their data. */
  void add(long count, double logMarginal, double v, double r, double vv, double vr, double rr) {
    double a = shape;
    double sx = a * (slopeConstant + v - r);
    double sy = a * (r - 1);
    value += count * logMarginal;
    gx += count * sx;
    gy += count * sy;
    hxx += count * (sx + a * curveConstant + a * a * (vv - 2 * vr + rr));
    hxy += count * (sy + a * a * (vr - rr));
    hyy += count * (-a * r + a * a * rr);
  }

  /** Adds units whose posterior is gamma(shape + events, prior exposure + exposure). */
  void addConjugate(long count, double logMarginal, double events, double exposureOverPrior) {
    double posterior = shape + events;
    // Posterior exposure times the mean: (shape / mean + exposure) x mean.
    double scale = shape * (1 + exposureOverPrior);
    add(
        count,
        logMarginal,
        Gamma.digamma(posterior) - StrictMath.log(scale),
        posterior / scale,
        Gamma.trigamma(posterior),
        1 / scale,
        posterior / (scale * scale));
  }

  NewtonAscent.Point point() {
    return new NewtonAscent.Point(logShape, logMean, value, gx, gy, hxx, hxy, hyy);
  }
}

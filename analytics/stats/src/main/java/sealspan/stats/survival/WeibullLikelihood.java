package sealspan.stats.survival;

import java.util.Collection;
import sealspan.stats.NewtonAscent;

/**
 * The log-likelihood of Weibull lives, S(t) = exp(-(t/scale)^shape), as a function of log scale (x)
 * and log shape (y), with derivatives. Lives with known, open or enclosed ends count, each given
 * that it lasted to its entry. With z = shape (log t - log scale) the cumulative hazard is H =
 * exp(z), and dH = (-shape H, z H), d2H = (shape^2 H, -shape (1 + z) H, z (1 + z) H).
 */
final class WeibullLikelihood implements NewtonAscent.Surface {
  private final LifeCounts counts;

  /** Lives that enter on each day less those that are last known to go on. */
  private final double[] net;

  private double exactLives;
  private double exactLogDays;

  WeibullLikelihood(Collection<Lifetime> lifetimes) {
    this(new LifeCounts(lifetimes));
  }

  WeibullLikelihood(LifeCounts counts) {
    this.counts = counts;
    net = new double[counts.days()];
    for (int i = 0; i < net.length; i++) {
      net[i] = counts.entering(i) - counts.open(i) - counts.exact(i);
      if (counts.exact(i) > 0) {
        exactLives += counts.exact(i);
        exactLogDays += counts.exact(i) * counts.logDay(i);
      }
    }
    PairCounts.Sorted enclosed = counts.enclosed();
    for (int k = 0; k < enclosed.count().length; k++) {
      net[enclosed.first()[k]] -= enclosed.count()[k];
    }
  }

  /** Lives that carry information. */
  long lives() {
    return counts.lives();
  }

  long ended() {
    return counts.ended();
  }

  int longestDay() {
    return counts.longestDay();
  }

  /** Log of days at risk per end, each enclosed end taken at its last possible day. */
  double roughLogScale() {
    return counts.roughLogMean();
  }

  @Override
  public NewtonAscent.Point at(double logScale, double logShape) {
    double shape = StrictMath.exp(logShape);
    int n = net.length;
    double[] hazard = new double[n];
    double[] byShape = new double[n];
    double[] byShapeTwice = new double[n];
    Sum sum = new Sum(shape);
    for (int i = counts.beginsAtZero() ? 1 : 0; i < n; i++) {
      double z = shape * (counts.logDay(i) - logScale);
      double h = StrictMath.exp(z);
      hazard[i] = h;
      byShape[i] = h == 0 ? 0 : z * h;
      byShapeTwice[i] = h == 0 ? 0 : z * (1 + z) * h;
      if (net[i] != 0 && h != 0) {
        sum.add(net[i], h, byShape[i], byShapeTwice[i]);
      }
    }
    sum.addExact(exactLives, exactLogDays, logScale, logShape);
    sum.addEnclosed(counts.enclosed(), hazard, byShape, byShapeTwice);
    return sum.point(logScale, logShape);
  }

  /** Sums value, gradient and Hessian. */
  private static final class Sum {
    private final double shape;
    private double value;
    private double gx;
    private double gy;
    private double hxx;
    private double hxy;
    private double hyy;

    Sum(double shape) {
      this.shape = shape;
    }

    /** Weight times a hazard. */
    void add(double weight, double h, double hy, double hyy2) {
      value += weight * h;
      gx -= weight * shape * h;
      gy += weight * hy;
      hxx += weight * shape * shape * h;
      hxy -= weight * shape * (h + hy);
      hyy += weight * hyy2;
    }

    /** Log of the hazard rate, log shape + z - log t, over lives with known ends. */
    void addExact(double lives, double logDays, double logScale, double logShape) {
      double z = shape * (logDays - lives * logScale);
      value += lives * logShape + z - logDays;
      gx -= lives * shape;
      gy += lives + z;
      hxy -= lives * shape;
      hyy += z;
    }

    /** log(1 - exp(-D)), D the hazard between two days. */
    void addEnclosed(PairCounts.Sorted pairs, double[] h, double[] hy, double[] hyy2) {
      LogProduct product = new LogProduct();
      double[] counts = pairs.count();
      for (int k = 0; k < counts.length; k++) {
        int lower = pairs.first()[k];
        int upper = pairs.second()[k];
        double d = h[upper] - h[lower];
        if (d > 700) {
          continue; // an end within these days is certain, to all digits
        }
        double weight = counts[k];
        double ends = -StrictMath.expm1(-d);
        double q = (1 - ends) / ends;
        double qq = q / ends;
        double dx = -shape * d;
        double dy = hy[upper] - hy[lower];
        double dyy = hyy2[upper] - hyy2[lower];
        product.add(weight, ends);
        gx += weight * q * dx;
        gy += weight * q * dy;
        hxx += weight * (q * shape * shape * d - qq * dx * dx);
        hxy += weight * (-q * shape * (d + dy) - qq * dx * dy);
        hyy += weight * (q * dyy - qq * dy * dy);
      }
      value += product.value();
    }

    NewtonAscent.Point point(double x, double y) {
      return new NewtonAscent.Point(x, y, value, gx, gy, hxx, hxy, hyy);
    }
  }
}

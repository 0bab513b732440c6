package sealspan.stats.survival;

import java.util.Collection;
import org.hipparchus.special.Erf;
import sealspan.stats.NewtonAscent;

/**
 * The log-likelihood of lognormal lives, log t normal with mean x and standard deviation exp(y), as
 * a function of x and y, with derivatives. Lives with known, open or enclosed ends count, each
 * given that it lasted to its entry. With z = (log t - x) / exp(y) and k = exp(-y): dz = (-k, -z),
 * d2z = (0, k, z).
 */
final class LognormalLikelihood implements NewtonAscent.Surface {
  private static final double LOG_ROOT_2_PI = 0.5 * StrictMath.log(2 * Math.PI);
  private static final double ROOT_2 = Math.sqrt(2);

  /** Beyond this the share above is taken from its continued fraction. */
  private static final double FAR = 30;

  private final LifeCounts counts;
  private double exactLives;
  private double exactLogDays;
  private double exactSquares;

  LognormalLikelihood(Collection<Lifetime> lifetimes) {
    this(new LifeCounts(lifetimes));
  }

  LognormalLikelihood(LifeCounts counts) {
    this.counts = counts;
    for (int i = 0; i < counts.days(); i++) {
      if (counts.exact(i) > 0) {
        exactLives += counts.exact(i);
        exactLogDays += counts.exact(i) * counts.logDay(i);
      }
    }
    for (int i = 0; i < counts.days(); i++) {
      if (counts.exact(i) > 0) {
        double away = counts.logDay(i) - exactLogDays / exactLives;
        exactSquares += counts.exact(i) * away * away;
      }
    }
  }

  @Override
  public NewtonAscent.Point at(double x, double y) {
    Sum sum = new Sum(x, y);
    sum.addExact(exactLives, exactLogDays, exactSquares);
    int n = counts.days();
    double[] z = new double[n];
    double[] density = new double[n];
    double[] above = new double[n];
    double[] below = new double[n];
    if (counts.beginsAtZero()) {
      above[0] = 1;
    }
    for (int i = counts.beginsAtZero() ? 1 : 0; i < n; i++) {
      z[i] = (counts.logDay(i) - x) * sum.k;
      density[i] = StrictMath.exp(-z[i] * z[i] / 2 - LOG_ROOT_2_PI);
      above[i] = Erf.erfc(z[i] / ROOT_2) / 2;
      below[i] = Erf.erfc(-z[i] / ROOT_2) / 2;
      double net = counts.open(i) - counts.entering(i);
      if (net != 0) {
        sum.addBeyond(net, z[i], density[i], above[i]);
      }
    }
    addEnclosed(sum, z, density, above, below);
    return sum.point();
  }

  private void addEnclosed(Sum sum, double[] z, double[] density, double[] above, double[] below) {
    PairCounts.Sorted pairs = counts.enclosed();
    int n = z.length;
    double[] first = new double[n];
    double[] second = new double[n];
    double[] third = new double[n];
    for (int i = 0; i < n; i++) {
      first[i] = z[i] * density[i];
      second[i] = (1 - z[i] * z[i]) * density[i];
      third[i] = z[i] * second[i];
    }
    LogProduct product = new LogProduct();
    for (int k = 0; k < pairs.count().length; k++) {
      int lower = pairs.first()[k];
      int upper = pairs.second()[k];
      double mass = z[lower] > 0 ? above[lower] - above[upper] : below[upper] - below[lower];
      double weight = pairs.count()[k];
      product.add(weight, mass);
      double px = -sum.k * (density[upper] - density[lower]) / mass;
      double py = -(first[upper] - first[lower]) / mass;
      sum.gx += weight * px;
      sum.gy += weight * py;
      sum.hxx += weight * (-sum.k * sum.k * (first[upper] - first[lower]) / mass - px * px);
      sum.hxy += weight * (sum.k * (second[upper] - second[lower]) / mass - px * py);
      sum.hyy += weight * ((third[upper] - third[lower]) / mass - py * py);
    }
    sum.value += product.value();
  }

  /** Sums value, gradient and Hessian. */
  private static final class Sum {
    private final double x;
    private final double y;
    private final double k;
    private double value;
    private double gx;
    private double gy;
    private double hxx;
    private double hxy;
    private double hyy;

    Sum(double x, double y) {
      this.x = x;
      this.y = y;
      k = StrictMath.exp(-y);
    }

    /** Log density per day, -z^2/2 - log sqrt(2 pi) - y - log t, over lives with known ends. */
    void addExact(double lives, double logDays, double squares) {
      if (lives == 0) {
        return;
      }
      double away = logDays / lives - x;
      double z1 = lives * away * k;
      double z2 = (squares + lives * away * away) * k * k;
      value -= z2 / 2 + lives * (LOG_ROOT_2_PI + y) + logDays;
      gx += k * z1;
      gy += z2 - lives;
      hxx -= k * k * lives;
      hxy -= 2 * k * z1;
      hyy -= 2 * z2;
    }

    /** Weight times the log of the share above z. */
    void addBeyond(double weight, double z, double density, double above) {
      double logAbove;
      double rate;
      if (z < FAR) {
        logAbove = StrictMath.log(above);
        rate = density / above;
      } else {
        // Mills' ratio: rate = z + 1/(z + 2/(z + 3/(z + ...))).
        rate = z + 1 / (z + 2 / (z + 3 / (z + 4 / z)));
        logAbove = -z * z / 2 - LOG_ROOT_2_PI - StrictMath.log(rate);
      }
      double slope = -rate;
      double bend = -rate * (rate - z);
      value += weight * logAbove;
      gx -= weight * slope * k;
      gy -= weight * slope * z;
      hxx += weight * bend * k * k;
      hxy += weight * (bend * k * z + slope * k);
      hyy += weight * (bend * z * z + slope * z);
    }

    NewtonAscent.Point point() {
      return new NewtonAscent.Point(x, y, value, gx, gy, hxx, hxy, hyy);
    }
  }
}

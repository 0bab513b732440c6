package sealspan.stats.survival;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import sealspan.stats.NewtonAscent;

/**
 * The log-likelihood of Weibull lives, S(t) = exp(-(t/scale)^shape), as a function of log scale (x)
 * and log shape (y), with derivatives. Lives with known, open or enclosed ends count, each given
 * that it lasted to its entry. Equal lives are merged and summed in sorted order, so that the order
 * of input is of no account.
 */
final class WeibullLikelihood implements NewtonAscent.Surface {
  private final List<Lifetime> rows;
  private final double[] logEntry;
  private final double[] logLower;
  private final double[] logUpper;
  private long lives;
  private long ended;
  private int longestDay;

  WeibullLikelihood(Collection<Lifetime> lifetimes) {
    rows = merged(lifetimes);
    int n = rows.size();
    logEntry = new double[n];
    logLower = new double[n];
    logUpper = new double[n];
    for (int i = 0; i < n; i++) {
      Lifetime row = rows.get(i);
      logEntry[i] = StrictMath.log(row.entryDay());
      logLower[i] = StrictMath.log(row.lowerDay());
      logUpper[i] = StrictMath.log(row.upperDay());
      lives += row.count();
      ended += row.open() ? 0 : row.count();
      longestDay = Math.max(longestDay, row.open() ? row.lowerDay() : row.upperDay());
    }
  }

  /** Lives that carry information. */
  long lives() {
    return lives;
  }

  long ended() {
    return ended;
  }

  int longestDay() {
    return longestDay;
  }

  /** Log of days at risk per end, each enclosed end taken at its last possible day. */
  double roughLogScale() {
    double exposure = 0;
    for (Lifetime row : rows) {
      int last = row.open() ? row.lowerDay() : row.upperDay();
      exposure += (double) row.count() * (last - row.entryDay());
    }
    return StrictMath.log(exposure / ended);
  }

  private static List<Lifetime> merged(Collection<Lifetime> lifetimes) {
    List<Lifetime> sorted = new ArrayList<>(lifetimes.size());
    for (Lifetime life : lifetimes) {
      int lower = Math.max(life.lowerDay(), life.entryDay());
      boolean silent = life.open() ? lower == life.entryDay() : life.upperDay() <= life.entryDay();
      if (!silent) {
        sorted.add(new Lifetime(life.entryDay(), lower, life.upperDay(), life.count()));
      }
    }
    sorted.sort(Lifetime.ORDER);
    List<Lifetime> merged = new ArrayList<>();
    for (Lifetime life : sorted) {
      int last = merged.size() - 1;
      Lifetime before = last < 0 ? null : merged.get(last);
      if (before != null && before.times(1).equals(life.times(1))) {
        merged.set(last, before.times(before.count() + life.count()));
      } else {
        merged.add(life);
      }
    }
    return merged;
  }

  @Override
  public NewtonAscent.Point at(double logScale, double logShape) {
    Terms terms = new Terms(logScale, logShape);
    for (int i = 0; i < rows.size(); i++) {
      Lifetime row = rows.get(i);
      if (row.entryDay() > 0) {
        terms.addHazard(row.count(), logEntry[i]);
      }
      if (row.exact()) {
        terms.addLogHazardRate(row.count(), logLower[i]);
      }
      if (row.lowerDay() > 0) {
        terms.addHazard(-row.count(), logLower[i]);
      }
      if (!row.exact() && !row.open()) {
        terms.addEnclosed(row.count(), row.lowerDay() > 0, logLower[i], logUpper[i]);
      }
    }
    return terms.point();
  }

  /**
   * Sums value, gradient and Hessian. With z = shape (log t - log scale), the cumulative hazard is
   * H = exp(z), and dH = (-shape H, z H), d2H = (shape^2 H, -shape (1 + z) H, z (1 + z) H).
   */
  private static final class Terms {
    private final double x;
    private final double y;
    private final double shape;
    private double value;
    private double gx;
    private double gy;
    private double hxx;
    private double hxy;
    private double hyy;

    Terms(double logScale, double logShape) {
      x = logScale;
      y = logShape;
      shape = StrictMath.exp(logShape);
    }

    private double z(double logDay) {
      return shape * (logDay - x);
    }

    void addHazard(double weight, double logDay) {
      double z = z(logDay);
      double h = weight * StrictMath.exp(z);
      if (h == 0) {
        return;
      }
      value += h;
      gx -= shape * h;
      gy += z * h;
      hxx += shape * shape * h;
      hxy -= shape * (1 + z) * h;
      hyy += z * (1 + z) * h;
    }

    /** log of the hazard rate: log shape + z - log t. */
    void addLogHazardRate(double weight, double logDay) {
      double z = z(logDay);
      value += weight * (y + z - logDay);
      gx -= weight * shape;
      gy += weight * (1 + z);
      hxy -= weight * shape;
      hyy += weight * z;
    }

    /** log(1 - exp(-D)), D the hazard between the two days. */
    void addEnclosed(double weight, boolean fromLower, double logLower, double logUpper) {
      double zu = z(logUpper);
      double hu = StrictMath.exp(zu);
      double zl = fromLower ? z(logLower) : 0;
      double hl = fromLower ? StrictMath.exp(zl) : 0;
      double d = hu - hl;
      if (d > 700) {
        return; // an end within these days is certain, to all digits
      }
      double dx = -shape * d;
      double dy = zu * hu - zl * hl;
      double dxx = shape * shape * d;
      double dxy = -shape * (d + dy);
      double dyy = zu * (1 + zu) * hu - zl * (1 + zl) * hl;
      double q = 1 / StrictMath.expm1(d);
      double qq = q * (1 + q);
      value += weight * StrictMath.log(-StrictMath.expm1(-d));
      gx += weight * q * dx;
      gy += weight * q * dy;
      hxx += weight * (q * dxx - qq * dx * dx);
      hxy += weight * (q * dxy - qq * dx * dy);
      hyy += weight * (q * dyy - qq * dy * dy);
    }

    NewtonAscent.Point point() {
      return new NewtonAscent.Point(x, y, value, gx, gy, hxx, hxy, hyy);
    }
  }
}

package sealspan.stats.survival;

import org.hipparchus.special.Gamma;
import sealspan.stats.NewtonAscent;

/**
 * A log-likelihood in which the first parameter (log scale, or mean of the logs) is replaced by
 * another quantity, so that limits of that quantity can be read off its profile; the second
 * parameter stays.
 */
final class Rescaled implements NewtonAscent.Surface {
  private final NewtonAscent.Surface original;
  private final First first;

  Rescaled(NewtonAscent.Surface original, First first) {
    this.original = original;
    this.first = first;
  }

  /** The first parameter as a function of the quantity (x) and the second (y); linear in x. */
  interface First {
    Jet at(double x, double y);
  }

  /** A value with its derivatives; the second derivative by x is 0. */
  record Jet(double value, double byX, double byY, double byXy, double byYy) {}

  /** Weibull, by x = log of the cumulative hazard on a day: log scale = log day - x / shape. */
  static First hazardOn(double day) {
    double logDay = StrictMath.log(day);
    return (x, y) -> {
      double scale = StrictMath.exp(-y);
      return new Jet(logDay - x * scale, -scale, x * scale, scale, -x * scale);
    };
  }

  /** Weibull, by x = log of the mean: log scale = x - log Gamma(1 + 1 / shape). */
  static First mean() {
    return (x, y) -> {
      double s = StrictMath.exp(-y);
      double digamma = Gamma.digamma(1 + s);
      double trigamma = Gamma.trigamma(1 + s);
      return new Jet(x - Gamma.logGamma(1 + s), 1, s * digamma, 0, -s * digamma - s * s * trigamma);
    };
  }

  /** Weibull, by x = log of the day by which a share has ended: log scale = x - c / shape. */
  static First quantile(double share) {
    double c = StrictMath.log(-StrictMath.log1p(-share));
    return (x, y) -> {
      double scale = c * StrictMath.exp(-y);
      return new Jet(x - scale, 1, scale, 0, -scale);
    };
  }

  /** Lognormal, by x = standard normal place of a day: mean = log day - x spread. */
  static First placeOf(double day) {
    double logDay = StrictMath.log(day);
    return (x, y) -> {
      double spread = StrictMath.exp(y);
      return new Jet(logDay - x * spread, -spread, -x * spread, -spread, -x * spread);
    };
  }

  /** Lognormal, by x = log of the day at a standard normal place z: mean = x - z spread. */
  static First dayAt(double z) {
    return (x, y) -> {
      double spread = z * StrictMath.exp(y);
      return new Jet(x - spread, 1, -spread, 0, -spread);
    };
  }

  /** Lognormal, by x = log of the mean: mean of the logs = x - spread squared / 2. */
  static First meanOfLognormal() {
    return (x, y) -> {
      double square = StrictMath.exp(2 * y);
      return new Jet(x - square / 2, 1, -square, 0, -2 * square);
    };
  }

  @Override
  public NewtonAscent.Point at(double x, double y) {
    Jet j = first.at(x, y);
    NewtonAscent.Point p = original.at(j.value, y);
    return new NewtonAscent.Point(
        x,
        y,
        p.value(),
        p.gx() * j.byX,
        p.gy() + p.gx() * j.byY,
        p.hxx() * j.byX * j.byX,
        p.hxx() * j.byX * j.byY + p.hxy() * j.byX + p.gx() * j.byXy,
        p.hyy() + 2 * p.hxy() * j.byY + p.hxx() * j.byY * j.byY + p.gx() * j.byYy);
  }
}

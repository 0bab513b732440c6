package sealspan.stats.survival;

import org.hipparchus.special.Gamma;
import sealspan.stats.NewtonAscent;

/**
 * A Weibull log-likelihood in which log scale is replaced by another quantity, so that limits of
 * that quantity can be read off its profile; log shape stays the second parameter.
 */
final class Rescaled implements NewtonAscent.Surface {
  private final NewtonAscent.Surface original;
  private final LogScale logScale;

  Rescaled(NewtonAscent.Surface original, LogScale logScale) {
    this.original = original;
    this.logScale = logScale;
  }

  /** Log scale as a function of the quantity (x) and log shape (y); linear in x. */
  interface LogScale {
    Jet at(double x, double y);
  }

  /** A value with its derivatives; the second derivative by x is 0. */
  record Jet(double value, double byX, double byY, double byXy, double byYy) {}

  /** By x = log of the cumulative hazard on a day: log scale = log day - x / shape. */
  static LogScale hazardOn(double day) {
    double logDay = StrictMath.log(day);
    return (x, y) -> {
      double scale = StrictMath.exp(-y);
      return new Jet(logDay - x * scale, -scale, x * scale, scale, -x * scale);
    };
  }

  /** By x = log of the mean: log scale = x - log Gamma(1 + 1 / shape). */
  static LogScale mean() {
    return (x, y) -> {
      double s = StrictMath.exp(-y);
      double digamma = Gamma.digamma(1 + s);
      double trigamma = Gamma.trigamma(1 + s);
      return new Jet(x - Gamma.logGamma(1 + s), 1, s * digamma, 0, -s * digamma - s * s * trigamma);
    };
  }

  @Override
  public NewtonAscent.Point at(double x, double y) {
    Jet j = logScale.at(x, y);
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

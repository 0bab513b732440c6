package sealspan.stats.regression;

import org.hipparchus.analysis.UnivariateFunction;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/**
 * Likelihood-ratio limits of one coefficient: the values at which the log-likelihood, maximised
 * over all other coefficients, lies z squared / 2 below its top. They take rows as independent.
 */
public final class ProfiledCoefficient {
  private static final double FARTHEST = 60;

  private ProfiledCoefficient() {}

  /**
   * The interval; a limit is infinite where the profile does not fall so low, which is how
   * separated outcomes still say something.
   *
   * @param name the column
   */
  public static Interval interval(Family family, Observations data, String name, double level) {
    double z = Confidence.z(level);
    double[] none = new double[data.design().names().size()];
    LogLikelihoodAscent.Top top = LogLikelihoodAscent.climb(family, data, none);
    int column = data.design().index(name);
    double[] values = data.design().values(column);
    double widest = 0;
    for (double value : values) {
      widest = Math.max(widest, Math.abs(value));
    }
    if (widest == 0) {
      return new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, level);
    }
    Observations rest = data.design(data.design().without(name));
    double target = top.logLikelihood() - z * z / 2;
    UnivariateFunction height = at -> heldAt(family, rest, values, at) - target;
    double centre = top.coefficients()[column];
    double lower = limit(height, centre, -1 / widest, FARTHEST / widest, z);
    double upper = limit(height, centre, 1 / widest, FARTHEST / widest, z);
    return new Interval(lower, upper, level);
  }

  private static double limit(
      UnivariateFunction height, double centre, double unit, double farthest, double z) {
    double inside = centre;
    double step = unit * z / 16;
    while (Math.abs(step) < farthest) {
      double outside = centre + step;
      if (height.value(outside) < 0) {
        return RootSearch.between(height, Math.min(inside, outside), Math.max(inside, outside));
      }
      inside = outside;
      step *= 2;
    }
    return unit < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
  }

  private static double heldAt(Family family, Observations rest, double[] values, double at) {
    double[] offset = rest.offset().clone();
    for (int i = 0; i < offset.length; i++) {
      offset[i] += at * values[i];
    }
    return Regression.highestLogLikelihood(family, rest.offset(offset));
  }
}

package sealspan.stats.ageing;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;

/** Limits of one parameter from the surface around its top. */
final class AgeingProfile {
  private static final double CLOSE = 1e-5;

  /** A gain that moves no limit by a thousandth of its distance. */
  private static final double ENOUGH = 1e-6;

  private static final int WIDENINGS = 60;
  private static final int SECANTS = 40;

  private final AgeingSurface surface;
  private final AgeingPoint top;
  private final int[] place;
  private final RealMatrix covariance;

  AgeingProfile(AgeingSurface surface, AgeingPoint top) {
    this.surface = surface;
    this.top = top;
    place = new int[AgeingPoint.PARAMETERS];
    int count = 0;
    for (int j = 0; j < place.length; j++) {
      boolean moves = surface.isFree(j) && !surface.onSide(top, j);
      place[j] = moves ? count++ : -1;
    }
    covariance = covariance(count);
  }

  /** Null where the surface does not curve. */
  private RealMatrix covariance(int count) {
    double[][] information = new double[count][count];
    for (int j = 0; j < place.length; j++) {
      for (int k = 0; k < place.length; k++) {
        if (place[j] >= 0 && place[k] >= 0) {
          information[place[j]][place[k]] = -top.bend()[j][k];
        }
      }
    }
    LUDecomposition decomposed =
        new LUDecomposition(new Array2DRowRealMatrix(information, false), 1e-12);
    return count > 0 && decomposed.getSolver().isNonSingular()
        ? decomposed.getSolver().getInverse()
        : null;
  }

  /**
   * Variance of a parameter by the inverse of the negative second derivatives; NaN where the
   * surface does not curve downward in every direction, and infinite for a parameter that is not
   * free.
   */
  double variance(int parameter) {
    if (!surface.isFree(parameter)) {
      return Double.POSITIVE_INFINITY;
    }
    double variance = covariance(parameter, parameter);
    return variance > 0 ? variance : Double.NaN;
  }

  private double covariance(int one, int other) {
    return covariance == null || place[one] < 0 || place[other] < 0
        ? Double.NaN
        : covariance.getEntry(place[one], place[other]);
  }

  /** Limits by curvature alone, on the scale of the parameter. */
  Interval byCurvature(int parameter, double level) {
    double margin = Confidence.z(level) * Math.sqrt(variance(parameter));
    return Double.isNaN(margin)
        ? new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, level)
        : new Interval(top.at()[parameter] - margin, top.at()[parameter] + margin, level);
  }

  /**
   * Likelihood-ratio limits on the scale of the parameter; infinite where the surface stays high up
   * to the side of the box.
   */
  Interval of(int parameter, double level) {
    return new Interval(limit(parameter, level, -1), limit(parameter, level, 1), level);
  }

  /** The signed root of the drop is close to a straight line, so secants find the limit at once. */
  private double limit(int parameter, double level, int direction) {
    double z = Confidence.z(level);
    double side = direction < 0 ? surface.lowest(parameter) : surface.highest(parameter);
    double variance = variance(parameter);
    double step = Double.isNaN(variance) ? 1 : Math.min(2, z * Math.sqrt(variance));
    double inside = top.at()[parameter];
    double insideDrop = 0;
    double[] start = top.at();
    double outside = inside;
    double outsideDrop = 0;
    for (int i = 0; i < WIDENINGS && outsideDrop < z; i++) {
      if (outside == side) {
        return direction < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
      }
      inside = outside;
      insideDrop = outsideDrop;
      outside = inside + direction * step;
      outside = direction < 0 ? Math.max(side, outside) : Math.min(side, outside);
      AgeingPoint there = ridge(parameter, outside, start);
      outsideDrop = drop(there);
      start = Double.isFinite(there.value()) ? there.at() : start;
      step *= 1.5;
    }
    return between(
        parameter,
        z,
        new double[] {inside, insideDrop},
        new double[] {outside, outsideDrop},
        start);
  }

  private double between(
      int parameter, double z, double[] inside, double[] outside, double[] from) {
    double[] start = from;
    double guess = outside[0];
    for (int i = 0; i < SECANTS; i++) {
      double share = (z - inside[1]) / (outside[1] - inside[1]);
      boolean usable = Double.isFinite(outside[1]) && share > .01 && share < .99;
      double before = guess;
      guess = inside[0] + (usable ? share : .5) * (outside[0] - inside[0]);
      if (Math.abs(outside[1] - z) < CLOSE) {
        return outside[0];
      }
      if (Math.abs(guess - before) < CLOSE * Math.max(1, Math.abs(guess))) {
        return guess;
      }
      AgeingPoint there = ridge(parameter, guess, start);
      double drop = drop(there);
      start = Double.isFinite(there.value()) ? there.at() : start;
      if (Math.abs(drop - z) < CLOSE) {
        return guess;
      }
      if (drop < z) {
        inside = new double[] {guess, drop};
      } else {
        outside = new double[] {guess, drop};
      }
    }
    return guess;
  }

  private double drop(AgeingPoint there) {
    return Double.isFinite(there.value())
        ? Math.sqrt(2 * Math.max(0, top.value() - there.value()))
        : Double.POSITIVE_INFINITY;
  }

  /** The highest point with the parameter held, climbing from a point near by. */
  private AgeingPoint ridge(int parameter, double value, double[] near) {
    AgeingClimb climb = new AgeingClimb(surface.holding(parameter), ENOUGH);
    AgeingPoint there = climb.from(shifted(near, parameter, value));
    return Double.isFinite(there.value()) ? there : climb.from(shifted(top.at(), parameter, value));
  }

  /** A point moved along the ridge, by what the curvature at the top says of its direction. */
  private double[] shifted(double[] point, int parameter, double value) {
    double[] start = point.clone();
    start[parameter] = value;
    double variance = covariance(parameter, parameter);
    for (int j = 0; j < start.length && variance > 0; j++) {
      double along = covariance(j, parameter) / variance * (value - point[parameter]);
      if (j != parameter && Double.isFinite(along) && Math.abs(along) < 2) {
        start[j] = Math.min(surface.highest(j), Math.max(surface.lowest(j), start[j] + along));
      }
    }
    return start;
  }
}

package sealspan.stats;

import org.hipparchus.analysis.UnivariateFunction;

/**
 * Likelihood-ratio limits of the first of two parameters: the values at which the log-likelihood,
 * maximised over the second, lies z squared / 2 below its top.
 */
public final class ProfileLimits {
  private ProfileLimits() {}

  /**
   * The interval of x; a limit is infinite where the profile stays above the depth up to the side
   * of the box.
   *
   * @param surface log-likelihood
   * @param top its maximum, concave there
   * @param box where to search
   */
  public static Interval of(
      NewtonAscent.Surface surface, NewtonAscent.Point top, NewtonAscent.Box box, double level) {
    double z = Confidence.z(level);
    double target = top.value() - z * z / 2;
    double step = z * Math.sqrt(top.varianceX());
    double lower = limit(surface, top, box, target, -step, box.lowestX());
    double upper = limit(surface, top, box, target, step, box.highestX());
    return new Interval(lower, upper, level);
  }

  private static double limit(
      NewtonAscent.Surface surface,
      NewtonAscent.Point top,
      NewtonAscent.Box box,
      double target,
      double firstStep,
      double side) {
    Ridge ridge = new Ridge(surface, top, box, target);
    double inside = top.x();
    double step = firstStep;
    while (true) {
      double outside = top.x() + step;
      boolean atSide = step < 0 ? outside <= side : outside >= side;
      outside = atSide ? side : outside;
      if (ridge.value(outside) < 0) {
        return RootSearch.between(ridge, Math.min(inside, outside), Math.max(inside, outside));
      }
      if (atSide) {
        return step < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
      }
      inside = outside;
      step *= 1.5;
    }
  }

  /** Height of the ridge over the target; each climb starts from where the last one ended. */
  private static final class Ridge implements UnivariateFunction {
    private final NewtonAscent.Surface surface;
    private final NewtonAscent.Point top;
    private final NewtonAscent.Box box;
    private final double target;
    private double y;

    Ridge(
        NewtonAscent.Surface surface, NewtonAscent.Point top, NewtonAscent.Box box, double target) {
      this.surface = surface;
      this.top = top;
      this.box = box;
      this.target = target;
      y = top.y();
    }

    @Override
    public double value(double x) {
      if (x == top.x()) {
        return top.value() - target;
      }
      NewtonAscent.Point best = climb(x, y);
      if (!Double.isFinite(best.value())) {
        best = climb(x, top.y());
      }
      y = Double.isFinite(best.value()) ? best.y() : top.y();
      return Double.isFinite(best.value()) ? best.value() - target : -Double.MAX_VALUE;
    }

    private NewtonAscent.Point climb(double x, double start) {
      return NewtonAscent.climb(
          surface, x, start, new NewtonAscent.Box(x, x, box.lowestY(), box.highestY()));
    }
  }
}

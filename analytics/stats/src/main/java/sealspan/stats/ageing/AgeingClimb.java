package sealspan.stats.ageing;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealVector;

/**
 * The maximum of a smooth function of a few parameters inside a box, by Newton steps that always go
 * uphill: where the surface curves upward in a direction, the step takes the curvature's size. A
 * step that does not climb is halved.
 */
final class AgeingClimb {
  private static final int STEPS = 100;
  private static final double LONGEST_STEP = 1.5;
  private static final double FLAT = 1e-9;

  private static final double CLOSEST = 1e-13;

  private final AgeingSurface surface;
  private final double enough;

  /** A climb to the very top. */
  AgeingClimb(AgeingSurface surface) {
    this(surface, 0);
  }

  /** A climb that may end where no more than a gain is left. */
  AgeingClimb(AgeingSurface surface, double enough) {
    this.surface = surface;
    this.enough = enough;
  }

  /** Climbs from a start; the top may lie on a side of the box. */
  AgeingPoint from(double[] start) {
    AgeingPoint here = surface.at(start.clone());
    if (!Double.isFinite(here.value())) {
      return here;
    }
    for (int i = 0; i < STEPS; i++) {
      double[] step = step(here);
      double gain = 0;
      for (int j = 0; j < step.length; j++) {
        gain += here.slope()[j] * step[j];
      }
      double size = Math.max(1, Math.abs(here.value()));
      if (!(gain > Math.max(enough, CLOSEST * size))) {
        return here;
      }
      // So close to the top, differences of the value are rounding noise: trust the step.
      boolean trusted = gain < 1e-9 * size;
      AgeingPoint next = move(here, step, gain, trusted);
      if (next == null) {
        return here;
      }
      here = next;
    }
    return here;
  }

  private AgeingPoint move(AgeingPoint here, double[] step, double gain, boolean trusted) {
    double fraction = 1;
    for (int halvings = 0; halvings < 40; halvings++) {
      double[] place = here.at().clone();
      for (int j = 0; j < place.length; j++) {
        if (step[j] != 0) {
          double moved = place[j] + fraction * step[j];
          place[j] = Math.min(surface.highest(j), Math.max(surface.lowest(j), moved));
        }
      }
      AgeingPoint next = surface.at(place);
      boolean climbs = next.value() >= here.value() + 1e-5 * fraction * gain;
      if (Double.isFinite(next.value()) && (climbs || trusted)) {
        return next;
      }
      fraction /= 2;
    }
    return null;
  }

  private double[] step(AgeingPoint here) {
    int[] moving = new int[here.at().length];
    int count = 0;
    for (int j = 0; j < moving.length; j++) {
      double slope = here.slope()[j];
      double at = here.at()[j];
      boolean held = at <= surface.lowest(j) && slope < 0 || at >= surface.highest(j) && slope > 0;
      if (surface.isFree(j) && !held) {
        moving[count++] = j;
      }
    }
    double[] step = new double[moving.length];
    if (count == 0) {
      return step;
    }
    double[][] bend = new double[count][count];
    double[] slope = new double[count];
    for (int i = 0; i < count; i++) {
      slope[i] = here.slope()[moving[i]];
      for (int j = 0; j < count; j++) {
        bend[i][j] = here.bend()[moving[i]][moving[j]];
      }
    }
    double[] found = uphill(bend, slope);
    for (int i = 0; i < count; i++) {
      step[moving[i]] = found[i];
    }
    return step;
  }

  private static double[] uphill(double[][] bend, double[] slope) {
    EigenDecompositionSymmetric axes =
        new EigenDecompositionSymmetric(new Array2DRowRealMatrix(bend, false));
    double[] step = new double[slope.length];
    for (int a = 0; a < slope.length; a++) {
      RealVector axis = axes.getEigenvector(a);
      double along = 0;
      for (int i = 0; i < slope.length; i++) {
        along += axis.getEntry(i) * slope[i];
      }
      double length = along / Math.max(Math.abs(axes.getEigenvalue(a)), FLAT);
      length = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, length));
      for (int i = 0; i < slope.length; i++) {
        step[i] += length * axis.getEntry(i);
      }
    }
    return step;
  }
}

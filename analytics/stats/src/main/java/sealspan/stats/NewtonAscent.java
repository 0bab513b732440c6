package sealspan.stats;

/**
 * The maximum of a smooth function of two parameters inside a box, by Newton steps with analytic
 * first and second derivatives. In a direction in which the surface curves upward the step still
 * goes uphill; a step that does not climb is halved.
 */
public final class NewtonAscent {
  private static final int STEPS = 200;
  private static final double LONGEST_STEP = 2;
  private static final double FLAT = 1e-12;

  private NewtonAscent() {}

  /** A function with its derivatives. */
  public interface Surface {
    /** Value, gradient and Hessian at (x, y); a value that is not finite means "not here". */
    Point at(double x, double y);
  }

  /** Value, gradient (gx, gy) and Hessian (hxx, hxy, hyy) at a place. */
  public record Point(
      double x, double y, double value, double gx, double gy, double hxx, double hxy, double hyy) {

    /** Whether the surface curves downward in every direction. */
    public boolean concave() {
      return hxx < 0 && hxx * hyy - hxy * hxy > 0;
    }

    /** Variance of x by the inverse of the negative Hessian; needs {@link #concave}. */
    public double varianceX() {
      return -hyy / (hxx * hyy - hxy * hxy);
    }

    /** Variance of y by the inverse of the negative Hessian. */
    public double varianceY() {
      return -hxx / (hxx * hyy - hxy * hxy);
    }

    /** Covariance of x and y by the inverse of the negative Hessian. */
    public double covariance() {
      return hxy / (hxx * hyy - hxy * hxy);
    }
  }

  /** Limits of the search, ends included. */
  public record Box(double lowestX, double highestX, double lowestY, double highestY) {
    /** Whether the point lies on a side of the box. */
    public boolean onSide(Point point) {
      return point.x <= lowestX || point.x >= highestX || point.y <= lowestY || point.y >= highestY;
    }

    private double clampX(double x) {
      return Math.min(highestX, Math.max(lowestX, x));
    }

    private double clampY(double y) {
      return Math.min(highestY, Math.max(lowestY, y));
    }
  }

  /** Climbs from a start where the surface is finite; the result may lie on a side of the box. */
  public static Point climb(Surface surface, double startX, double startY, Box box) {
    Point here = surface.at(box.clampX(startX), box.clampY(startY));
    for (int i = 0; i < STEPS; i++) {
      double[] step = step(here, box);
      double gain = here.gx * step[0] + here.gy * step[1];
      if (!(gain > 0)) {
        return here;
      }
      // So close to the top, differences of the value are rounding noise: trust the step.
      boolean trusted = gain < 1e-9 * Math.max(1, Math.abs(here.value));
      Point next = move(surface, here, step, gain, box, trusted);
      if (next == null) {
        return here;
      }
      boolean done = trusted && gain < 1e-12 * Math.max(1, Math.abs(here.value));
      here = next;
      if (done) {
        return here;
      }
    }
    return here;
  }

  private static Point move(
      Surface surface, Point here, double[] step, double gain, Box box, boolean trusted) {
    double fraction = 1;
    for (int halvings = 0; halvings < 60; halvings++) {
      Point next =
          surface.at(
              box.clampX(here.x + fraction * step[0]), box.clampY(here.y + fraction * step[1]));
      boolean climbs = next.value >= here.value + 1e-6 * fraction * gain;
      if (Double.isFinite(next.value) && (climbs || trusted)) {
        return next;
      }
      fraction /= 2;
    }
    return null;
  }

  private static double[] step(Point p, Box box) {
    boolean xHeld = p.x <= box.lowestX && p.gx < 0 || p.x >= box.highestX && p.gx > 0;
    boolean yHeld = p.y <= box.lowestY && p.gy < 0 || p.y >= box.highestY && p.gy > 0;
    double gx = xHeld ? 0 : p.gx;
    double gy = yHeld ? 0 : p.gy;
    double cross = xHeld || yHeld ? 0 : p.hxy;
    // A held direction takes the curvature of the other, so that it does not pass for a flat one.
    double hxx = xHeld ? (yHeld ? -1 : p.hyy) : p.hxx;
    double hyy = yHeld ? hxx : p.hyy;
    double turn = StrictMath.atan2(2 * cross, hxx - hyy) / 2;
    double cos = StrictMath.cos(turn);
    double sin = StrictMath.sin(turn);
    double middle = (hxx + hyy) / 2;
    double spread = StrictMath.hypot((hxx - hyy) / 2, cross);
    double along = component(gx * cos + gy * sin, middle + spread);
    double across = component(gy * cos - gx * sin, middle - spread);
    return new double[] {along * cos - across * sin, along * sin + across * cos};
  }

  /** The step in one principal direction: always uphill, and bounded. */
  private static double component(double gradient, double curvature) {
    double step = gradient / Math.max(Math.abs(curvature), FLAT);
    return Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, step));
  }
}

package sealspan.stats.survival;

import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.NewtonAscent;
import sealspan.stats.ProfileLimits;

/**
 * The maximum of a likelihood of lives in two parameters, of which the first is a logarithm of
 * days, and the profiles around it.
 */
final class LikelihoodTop {
  private static final double LOG_DAYS_RANGE = 20;
  private static final double FLAT_CORRELATION = 1 - 1e-8;
  private static final double FLAT_ERROR = 20;

  private final NewtonAscent.Surface surface;
  private final NewtonAscent.Point point;
  private final NewtonAscent.Box box;

  private LikelihoodTop(
      NewtonAscent.Surface surface, NewtonAscent.Point point, NewtonAscent.Box box) {
    this.surface = surface;
    this.point = point;
    this.box = box;
  }

  /** What a second parameter means at the sides of its range. */
  record Sides(double lowest, double highest, String atLowest, String atHighest) {}

  /** Climbs from (start, 0), or says why the data fix no maximum. */
  static Estimate<LikelihoodTop> of(NewtonAscent.Surface surface, double start, Sides sides) {
    NewtonAscent.Box box =
        new NewtonAscent.Box(
            start - LOG_DAYS_RANGE,
            start + LOG_DAYS_RANGE,
            StrictMath.log(sides.lowest),
            StrictMath.log(sides.highest));
    NewtonAscent.Point top = NewtonAscent.climb(surface, start, 0, box);
    String obstacle = obstacle(top, box, sides);
    return obstacle != null
        ? Estimate.notIdentified(obstacle)
        : Estimate.of(new LikelihoodTop(surface, top, box));
  }

  private static String obstacle(NewtonAscent.Point top, NewtonAscent.Box box, Sides sides) {
    if (top.y() >= box.highestY()) {
      return sides.atHighest;
    }
    if (top.y() <= box.lowestY()) {
      return sides.atLowest;
    }
    boolean steep =
        top.concave() && top.hxy() * top.hxy() < FLAT_CORRELATION * top.hxx() * top.hyy();
    if (box.onSide(top)
        || !steep
        || top.varianceX() > FLAT_ERROR * FLAT_ERROR
        || top.varianceY() > FLAT_ERROR * FLAT_ERROR) {
      return "the ends are known too roughly: many pairs of shape and scale fit them equally well";
    }
    return null;
  }

  NewtonAscent.Point point() {
    return point;
  }

  /** Profile interval of the first parameter. */
  Interval first(double level) {
    return ProfileLimits.of(surface, point, box, level);
  }

  /** Profile interval of the second parameter. */
  Interval second(double level) {
    NewtonAscent.Surface turned = (x, y) -> swapped(surface.at(y, x));
    return ProfileLimits.of(
        turned,
        swapped(point),
        new NewtonAscent.Box(box.lowestY(), box.highestY(), box.lowestX(), box.highestX()),
        level);
  }

  /** A quantity that replaces the first parameter: its variance and its profile interval. */
  record Profile(double variance, Interval interval) {}

  /** The profile of a quantity whose value at the maximum is given. */
  Profile of(Rescaled.First quantity, double value, double level) {
    Rescaled rescaled = new Rescaled(surface, quantity);
    NewtonAscent.Point here = rescaled.at(value, point.y());
    NewtonAscent.Box around =
        new NewtonAscent.Box(
            value - LOG_DAYS_RANGE, value + LOG_DAYS_RANGE, box.lowestY(), box.highestY());
    return new Profile(here.varianceX(), ProfileLimits.of(rescaled, here, around, level));
  }

  private static NewtonAscent.Point swapped(NewtonAscent.Point p) {
    return new NewtonAscent.Point(
        p.y(), p.x(), p.value(), p.gy(), p.gx(), p.hyy(), p.hxy(), p.hxx());
  }
}

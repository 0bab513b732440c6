package sealspan.stats.survival;

import java.util.Arrays;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * The share of lives that last beyond each day, a step function: the value on a day includes the
 * ends of that day. It is known from fromDay to toDay, and conditional on lasting to fromDay.
 */
public final class SurvivalCurve {
  private static final double HALF = 0.5 + 1e-12;

  private final int fromDay;
  private final int toDay;
  private final double fewestBeforeFirstEnd;
  private final int[] days;
  private final double[] atRisk;
  private final double[] ended;
  private final double[] survival;
  private final double[] logVariance;

  SurvivalCurve(
      int fromDay,
      int toDay,
      double fewestBeforeFirstEnd,
      int[] days,
      double[] atRisk,
      double[] ended,
      double[] logVariance) {
    this.fromDay = fromDay;
    this.toDay = toDay;
    this.fewestBeforeFirstEnd = fewestBeforeFirstEnd;
    this.days = days;
    this.atRisk = atRisk;
    this.ended = ended;
    this.logVariance = logVariance;
    survival = new double[days.length];
    double share = 1;
    for (int j = 0; j < days.length; j++) {
      share = ended[j] >= atRisk[j] ? 0 : share * (1 - ended[j] / atRisk[j]);
      survival[j] = share;
    }
  }

  /** The curve is conditional on lasting to this day. */
  public int fromDay() {
    return fromDay;
  }

  /** The last day that the curve is known on. */
  public int toDay() {
    return toDay;
  }

  /** The days on which lives ended, ascending. */
  public int[] days() {
    return days.clone();
  }

  /** Lives at risk on those days (weighted, where the estimator weights). */
  public double[] atRisk() {
    return atRisk.clone();
  }

  /** Lives that ended on those days (weighted likewise). */
  public double[] ended() {
    return ended.clone();
  }

  /** The curve on those days. */
  public double[] survival() {
    return survival.clone();
  }

  /** Variance of the curve on those days; where it is 0, that of the step before. */
  public double[] variance() {
    double[] variance = new double[days.length];
    for (int j = 0; j < days.length; j++) {
      double error = standardError(j);
      variance[j] = error * error;
    }
    return variance;
  }

  /**
   * The curve on a day, with an interval on the log-minus-log scale. Before the first end the lower
   * limit is tail^(1/n), n the fewest lives at risk so far: any curve lower than that makes "no end
   * seen" less likely than the tail. Where the curve has come to 0 the upper limit is that of the
   * step before. Not identified outside the known days, unless the curve has come to 0.
   */
  public Estimate<PointEstimate> at(int day, double level) {
    boolean done = days.length > 0 && survival[days.length - 1] == 0;
    if (day < fromDay || day > toDay && !done) {
      return Estimate.notIdentified(
          "the curve is known only from day "
              + fromDay
              + " to day "
              + toDay
              + ", and day "
              + day
              + " lies outside");
    }
    int step = stepAt(day);
    double value = step < 0 ? 1 : survival[step];
    return Estimate.of(
        new PointEstimate(value, step < 0 ? 0 : standardError(step), interval(step, level)));
  }

  /** The median; not identified while more than half last beyond the known days. */
  public Estimate<Median> median(double level) {
    int middle = firstAtMostHalf(survival);
    if (middle < 0) {
      return Estimate.notIdentified("more than half last beyond day " + toDay);
    }
    double[] lower = new double[days.length];
    double[] upper = new double[days.length];
    for (int j = 0; j < days.length; j++) {
      Interval interval = interval(j, level);
      lower[j] = interval.lower();
      upper[j] = interval.upper();
    }
    int early = firstAtMostHalf(lower);
    int late = firstAtMostHalf(upper);
    return Estimate.of(
        new Median(
            days[middle],
            new Interval(days[early], late < 0 ? Double.POSITIVE_INFINITY : days[late], level)));
  }

  private static int firstAtMostHalf(double[] values) {
    for (int j = 0; j < values.length; j++) {
      if (values[j] <= HALF) {
        return j;
      }
    }
    return -1;
  }

  /** Why the area up to a day is not known, or null when it is. */
  String areaUnknown(int day) {
    boolean done = days.length > 0 && survival[days.length - 1] == 0;
    if (day <= fromDay) {
      return "the mean needs a day after day " + fromDay + ", but got day " + day;
    }
    return day > toDay && !done
        ? "lives were watched only to day " + toDay + ", not to day " + day
        : null;
  }

  /** Mean life within (fromDay, day]: the area under the curve. */
  double areaTo(int day) {
    return day - fromDay - shortfall(day);
  }

  private double shortfall(int day) {
    double sum = 0;
    for (int j = 0; j < days.length && days[j] < day; j++) {
      int end = j + 1 < days.length ? Math.min(day, days[j + 1]) : day;
      sum += (1 - survival[j]) * (end - days[j]);
    }
    return sum;
  }

  /** For each step before the day, the area under the curve from the step to the day. */
  double[] areasFromSteps(int day) {
    double[] areas = new double[days.length];
    int end = day;
    double sum = 0;
    for (int j = days.length - 1; j >= 0; j--) {
      if (days[j] < day) {
        sum += survival[j] * (end - days[j]);
        areas[j] = sum;
        end = days[j];
      }
    }
    return areas;
  }

  private int stepAt(int day) {
    int index = Arrays.binarySearch(days, day);
    return index >= 0 ? index : -index - 2;
  }

  private double standardError(int step) {
    int j = survival[step] == 0 ? step - 1 : step;
    return j < 0 ? 0 : survival[j] * Math.sqrt(logVariance[j]);
  }

  private Interval interval(int step, double level) {
    double tail = Confidence.tail(level);
    if (step < 0) {
      return new Interval(StrictMath.pow(tail, 1 / fewestBeforeFirstEnd), 1, level);
    }
    if (survival[step] == 0) {
      double upper =
          step == 0 ? 1 - StrictMath.pow(tail, 1 / atRisk[0]) : interval(step - 1, level).upper();
      return new Interval(0, upper, level);
    }
    double log = StrictMath.log(survival[step]);
    double width = Confidence.z(level) * Math.sqrt(logVariance[step]) / -log;
    return new Interval(
        StrictMath.exp(log * StrictMath.exp(width)),
        StrictMath.exp(log * StrictMath.exp(-width)),
        level);
  }
}

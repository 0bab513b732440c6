package sealspan.stats.recurrence;

import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * The mean number (or cost) of events per unit up to each day, for repeatable events with exact
 * dates: at each event day the marks divided by the units watched (Nelson 1995). Units may enter
 * late, leave and come back. The variance is robust: it takes the unit as what was sampled and
 * assumes nothing about how a unit's events depend on each other (Lawless and Nadeau 1995). The
 * order of the input is of no account, to the last bit.
 *
 * <p>Where nobody is watched for a while the mean is not known beyond the gap. The curve then
 * covers the unbroken stretch with most events, {@link #fromDay} to {@link #toDay}, and counts from
 * its start.
 */
public final class MeanCumulativeFunction {
  private final Mark mark;
  private final int fromDay;
  private final int toDay;
  private final long units;
  private final long eventsLeftOut;
  private final long fewestBeforeFirstEvent;
  private final int[] days;
  private final long[] watched;
  private final long[] events;
  private final double[] mean;
  private final double[] variance;

  /** What an event adds to the curve. */
  public enum Mark {
    /** One, whatever its mark. */
    COUNT,
    /** Its mark. */
    MARK
  }

  private MeanCumulativeFunction(Mark mark, WatchedUnits watchedUnits, CurveSweep sweep) {
    this.mark = mark;
    fromDay = watchedUnits.fromDay();
    toDay = watchedUnits.toDay();
    units = watchedUnits.unitsInStretch();
    eventsLeftOut = watchedUnits.eventsLeftOut();
    fewestBeforeFirstEvent = sweep.fewestBeforeFirstEvent();
    days = sweep.days();
    watched = sweep.watched();
    events = sweep.events();
    mean = sweep.mean();
    variance = sweep.variance();
  }

  /** Estimates the curve; not identified when no unit was watched. */
  public static Estimate<MeanCumulativeFunction> of(Collection<EventHistory> histories, Mark mark) {
    WatchedUnits units = WatchedUnits.of(histories);
    if (units == null) {
      return Estimate.notIdentified("no unit was watched");
    }
    return Estimate.of(new MeanCumulativeFunction(mark, units, CurveSweep.over(units, mark)));
  }

  /** The curve counts from here; events on this day are not in it. */
  public int fromDay() {
    return fromDay;
  }

  /** The last day that the curve is known on. */
  public int toDay() {
    return toDay;
  }

  /** Units watched at some time in the stretch. */
  public long units() {
    return units;
  }

  /** Events outside the stretch, or on days on which their unit was not watched. */
  public long eventsLeftOut() {
    return eventsLeftOut;
  }

  /** The event days of the curve, ascending. */
  public int[] days() {
    return days.clone();
  }

  /** Units watched on each event day. */
  public long[] watched() {
    return watched.clone();
  }

  /** Number of events on each event day. */
  public long[] events() {
    return events.clone();
  }

  /** The mean per unit just after each event day. */
  public double[] mean() {
    return mean.clone();
  }

  /** The robust variance of the mean just after each event day. */
  public double[] variance() {
    return variance.clone();
  }

  /**
   * The mean per unit in (fromDay, day], with an interval on the logarithmic scale. Before the
   * first event the upper limit is that of a Poisson process without events on the fewest units
   * watched (for marks: none). With a single unit the variation between units is unknown and the
   * interval is open above.
   */
  public Estimate<PointEstimate> at(int day, double level) {
    if (day < fromDay || day > toDay) {
      return Estimate.notIdentified(
          "units were watched without a break only from day "
              + fromDay
              + " to day "
              + toDay
              + ", and day "
              + day
              + " lies outside");
    }
    int index = Arrays.binarySearch(days, day);
    index = index >= 0 ? index : -index - 2;
    double value = index < 0 ? 0 : mean[index];
    double error = index < 0 ? 0 : Math.sqrt(variance[index]);
    return Estimate.of(new PointEstimate(value, error, interval(index, level)));
  }

  private Interval interval(int index, double level) {
    double z = Confidence.z(level);
    if (index < 0) {
      double upper =
          mark == Mark.COUNT
              ? -StrictMath.log(Confidence.tail(level)) / fewestBeforeFirstEvent
              : Double.POSITIVE_INFINITY;
      return new Interval(0, upper, level);
    }
    if (units < 2) {
      return new Interval(0, Double.POSITIVE_INFINITY, level);
    }
    double error = Math.sqrt(variance[index]);
    if (mean[index] <= 0) {
      return new Interval(mean[index] - z * error, mean[index] + z * error, level);
    }
    double factor = StrictMath.exp(z * error / mean[index]);
    return new Interval(mean[index] / factor, mean[index] * factor, level);
  }

  /**
   * Mean time between events in days, restricted to (fromDay, day]: the length of the stretch
   * divided by the mean number of events per unit in it. It is the reciprocal of an average rate,
   * needs no model, and depends on the day chosen, which must be quoted with it: as long as units
   * are young it is longer than the mean gap between events. The interval is the reciprocal of the
   * mean's, so it rests on the robust variance. Not identified before the first event.
   */
  public Estimate<PointEstimate> meanTimeBetween(int day, double level) {
    if (!(at(day, level) instanceof Estimate.Identified<PointEstimate> identified)) {
      return at(day, level);
    }
    PointEstimate events = identified.value();
    double length = (double) day - fromDay;
    if (events.value() <= 0 || length == 0) {
      return Estimate.notIdentified(
          "there is no event up to day "
              + day
              + "; by then a unit has at most "
              + String.format(Locale.ROOT, "%.3g", events.interval().upper())
              + " on average, upper limit at level "
              + level);
    }
    double time = length / events.value();
    Interval interval =
        new Interval(length / events.interval().upper(), length / events.interval().lower(), level);
    return Estimate.of(
        new PointEstimate(time, time * events.standardError() / events.value(), interval));
  }
}

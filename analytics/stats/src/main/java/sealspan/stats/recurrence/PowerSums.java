package sealspan.stats.recurrence;

import java.util.Arrays;
import sealspan.stats.NewtonAscent;

/**
 * Log-likelihood of a power law process in the logarithms of its shape and of its rate at a
 * reference time. Ends and starts of windows enter through power sums alone, so equal ones are kept
 * once with their number: where times are whole days an evaluation costs no more than there are
 * different days.
 */
final class PowerSums implements NewtonAscent.Surface {
  private final double reference;
  private final double[] logTimes;
  private final double[] weights;
  private final double[] logStarts;
  private final double[] logEnds;
  private final int[] counts;
  private final long events;
  private final double sumOfLogs;

  /**
   * Collects what the likelihood needs.
   *
   * @param windowStarts starts of the windows, 0 or more
   * @param windowEnds their ends
   * @param times exact times of events
   * @param intervals intervals with counted events: starts, ends; empty for exact times
   * @param counts the counts
   * @param reference the reference time, above 0
   */
  PowerSums(
      double[] windowStarts,
      double[] windowEnds,
      double[] times,
      double[][] intervals,
      int[] counts,
      double reference) {
    this.reference = reference;
    double[] signed = new double[windowStarts.length + windowEnds.length];
    for (int i = 0; i < windowEnds.length; i++) {
      signed[2 * i] = windowEnds[i];
      signed[2 * i + 1] = -windowStarts[i];
    }
    Arrays.sort(signed);
    double[] kept = new double[signed.length];
    double[] weight = new double[signed.length];
    int size = 0;
    for (double time : signed) {
      if (time == 0) {
        continue;
      }
      double log = StrictMath.log(Math.abs(time) / reference);
      boolean same =
          size > 0 && log == kept[size - 1] && Math.signum(weight[size - 1]) == sign(time);
      if (!same) {
        kept[size++] = log;
      }
      weight[size - 1] += sign(time);
    }
    logTimes = Arrays.copyOf(kept, size);
    weights = Arrays.copyOf(weight, size);
    logStarts = logs(intervals[0], reference);
    logEnds = logs(intervals[1], reference);
    this.counts = counts;
    long counted = 0;
    for (int count : counts) {
      counted += count;
    }
    events = times.length + counted;
    double sum = 0;
    for (double log : sortedLogs(times, reference)) {
      sum += log;
    }
    sumOfLogs = sum;
  }

  private static double sign(double time) {
    return time > 0 ? 1 : -1;
  }

  private static double[] logs(double[] times, double reference) {
    double[] logs = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      logs[i] = StrictMath.log(times[i] / reference);
    }
    return logs;
  }

  private static double[] sortedLogs(double[] times, double reference) {
    double[] logs = logs(times, reference);
    Arrays.sort(logs);
    return logs;
  }

  long events() {
    return events;
  }

  /** The logarithm of the constant rate that fits best. */
  double logConstantRate() {
    return StrictMath.log(events / (Span.of(this, 0).size * reference));
  }

  /** Log-likelihood, up to what depends on counts alone; x is log shape, y log rate. */
  @Override
  public NewtonAscent.Point at(double logShape, double logRate) {
    double shape = StrictMath.exp(logShape);
    double rate = StrictMath.exp(logRate) * reference;
    Span all = Span.of(this, logShape);
    double value = events * logRate - rate * all.size;
    double gx = -rate * all.slope;
    double hxx = -rate * all.bend;
    if (counts.length == 0) {
      value += (shape - 1) * sumOfLogs;
      gx += shape * sumOfLogs;
      hxx += shape * sumOfLogs;
    } else {
      for (int k = 0; k < counts.length; k++) {
        if (counts[k] > 0) {
          Span span = Span.between(logStarts[k], logEnds[k], shape);
          double slope = span.slope / span.size;
          value += counts[k] * StrictMath.log(span.size * reference);
          gx += counts[k] * slope;
          hxx += counts[k] * (span.bend / span.size - slope * slope);
        }
      }
    }
    return new NewtonAscent.Point(
        logShape,
        logRate,
        value,
        gx,
        events - rate * all.size,
        hxx,
        -rate * all.slope,
        -rate * all.size);
  }

  /**
   * The integral of (t / reference)^(shape - 1) over spans of time, in units of the reference, with
   * its first and second derivative in the logarithm of the shape.
   */
  record Span(double size, double slope, double bend) {
    private static Span of(PowerSums sums, double logShape) {
      double shape = StrictMath.exp(logShape);
      double power = 0;
      double first = 0;
      double second = 0;
      for (int i = 0; i < sums.logTimes.length; i++) {
        double log = sums.logTimes[i];
        double term = sums.weights[i] * StrictMath.exp(shape * log);
        power += term;
        first += term * log;
        second += term * log * log;
      }
      return of(power, first, second, shape);
    }

    /** From powers of the end less those of the start, times the log's powers 0, 1, 2. */
    private static Span of(double power, double first, double second, double shape) {
      return new Span(power / shape, first - power / shape, shape * second - first + power / shape);
    }

    /** One span by the logarithms of its bounds; the start may be at minus infinity. */
    static Span between(double logStart, double logEnd, double shape) {
      double end = StrictMath.exp(shape * logEnd);
      double start = StrictMath.exp(shape * logStart);
      double log = start == 0 ? 0 : logStart;
      return of(
          end - start,
          end * logEnd - start * log,
          end * logEnd * logEnd - start * log * log,
          shape);
    }
  }
}

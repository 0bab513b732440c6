package sealspan.stats.recurrence;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.special.Gamma;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.NewtonAscent;
import sealspan.stats.PointEstimate;
import sealspan.stats.ProfileLimits;

/**
 * Events whose rate follows a power of time, scale * shape * t^(shape - 1), by maximum likelihood
 * (Crow 1974; MIL-HDBK-189): several systems with their own windows, ended by time or by an event,
 * or events that were only counted within intervals. Above shape 1 the rate rises. Every system
 * starts its clock at 0; its window may begin later. The order of the input is of no account, to
 * the last bit.
 */
public final class PowerLawProcess {
  private static final NewtonAscent.Box BOX =
      new NewtonAscent.Box(StrictMath.log(1e-3), StrictMath.log(1e3), -500, 500);

  private final List<EventTimes> systems;
  private final PowerSums sums;
  private final double longest;
  private final NewtonAscent.Point top;
  private final double constantLogLikelihood;

  private PowerLawProcess(
      List<EventTimes> systems, PowerSums sums, double longest, NewtonAscent.Point top) {
    this.systems = systems;
    this.sums = sums;
    this.longest = longest;
    this.top = top;
    constantLogLikelihood = sums.at(0, sums.logConstantRate()).value();
  }

  /** Fits systems with exact event times; windows start at 0 or later. */
  public static Estimate<PowerLawProcess> of(Collection<EventTimes> systems) {
    List<EventTimes> sorted = systems.stream().sorted(EventTimes.ORDER).toList();
    double[] starts = sorted.stream().mapToDouble(EventTimes::start).toArray();
    double[] ends = sorted.stream().mapToDouble(EventTimes::end).toArray();
    double[] times = sorted.stream().flatMapToDouble(s -> Arrays.stream(s.times())).toArray();
    return fit(sorted, starts, ends, times, new double[2][0], new int[0]);
  }

  /** Fits systems whose events were counted within intervals that start at 0 or later. */
  public static Estimate<PowerLawProcess> ofCounts(Collection<CountedIntervals> systems) {
    double[][] spans = new double[2][];
    spans[0] =
        systems.stream()
            .flatMapToDouble(s -> Arrays.stream(s.bounds(), 0, s.counts().length))
            .toArray();
    spans[1] =
        systems.stream()
            .flatMapToDouble(s -> Arrays.stream(s.bounds(), 1, s.bounds().length))
            .toArray();
    int[] counts = systems.stream().flatMapToInt(s -> Arrays.stream(s.counts())).toArray();
    Integer[] order = new Integer[counts.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(
        order,
        (i, j) ->
            Arrays.compare(
                new double[] {spans[0][i], spans[1][i], counts[i]},
                new double[] {spans[0][j], spans[1][j], counts[j]}));
    double[] starts = Arrays.stream(order).mapToDouble(i -> spans[0][i]).toArray();
    double[] ends = Arrays.stream(order).mapToDouble(i -> spans[1][i]).toArray();
    return fit(
        List.of(),
        starts,
        ends,
        new double[0],
        new double[][] {starts, ends},
        Arrays.stream(order).mapToInt(i -> counts[i]).toArray());
  }

  private static Estimate<PowerLawProcess> fit(
      List<EventTimes> systems,
      double[] starts,
      double[] ends,
      double[] times,
      double[][] intervals,
      int[] counts) {
    double longest = 0;
    double watched = 0;
    for (int i = 0; i < starts.length; i++) {
      if (starts[i] < 0) {
        throw new IllegalArgumentException(
            "a power law process starts at 0, but a window starts at " + starts[i]);
      }
      longest = Math.max(longest, ends[i]);
      watched += ends[i] - starts[i];
    }
    if (starts.length == 0) {
      return Estimate.notIdentified("no system was watched");
    }
    PowerSums sums = new PowerSums(starts, ends, times, intervals, counts, longest);
    if (sums.events() == 0) {
      return Estimate.notIdentified(
          String.format(
              Locale.ROOT,
              "there is no event; a constant rate would be at most %.4g per unit of time, upper 95 %%"
                  + " limit",
              -StrictMath.log(.05) / watched));
    }
    NewtonAscent.Point top = NewtonAscent.climb(sums, 0, sums.logConstantRate(), BOX);
    if (BOX.onSide(top) || !top.concave()) {
      return Estimate.notIdentified(
          sums.events() == 1
              ? "one event alone does not tell how the rate changes"
              : "the rate changes faster than any power of time, or all events lie at one end");
    }
    return Estimate.of(new PowerLawProcess(systems, sums, longest, top));
  }

  /** Events used. */
  public long events() {
    return sums.events();
  }

  /** Shape by maximum likelihood; above 1 the rate rises. */
  public double shape() {
    return StrictMath.exp(top.x());
  }

  /** Expected events of a system by time 1. */
  public double scale() {
    return StrictMath.exp(top.y() + (1 - shape()) * StrictMath.log(longest)) / shape();
  }

  /** Log-likelihood at its top; of counts, without what depends on the counts alone. */
  public double logLikelihood() {
    return top.value();
  }

  /** Log-likelihood of the best constant rate. */
  public double constantLogLikelihood() {
    return constantLogLikelihood;
  }

  /** Likelihood-ratio test against a constant rate: two-sided p by chi-squared with 1 degree. */
  public double constantRateP() {
    double twice = 2 * Math.max(0, top.value() - constantLogLikelihood);
    return Gamma.regularizedGammaQ(.5, twice / 2);
  }

  /**
   * The shape with its interval: exact by chi-squared where all windows start at 0 and end at one
   * time, or one system is ended by its last event; by profile likelihood else. It takes the events
   * as Poisson: see {@link #shapeByUnit}.
   */
  public PointEstimate shape(double level) {
    double error = shape() * Math.sqrt(top.varianceX());
    int degrees = exactDegrees();
    if (degrees > 0) {
      ChiSquaredDistribution chi = new ChiSquaredDistribution(degrees);
      double factor = shape() / (2.0 * events());
      double tail = Confidence.tail(level);
      return new PointEstimate(
          shape(),
          error,
          new Interval(
              factor * chi.inverseCumulativeProbability(tail),
              factor * chi.inverseCumulativeProbability(1 - tail),
              level));
    }
    return new PointEstimate(shape(), error, exp(ProfileLimits.of(sums, top, BOX, level), level));
  }

  /** The exact interval's degrees of freedom; 0 where there is none. */
  private int exactDegrees() {
    boolean common =
        !systems.isEmpty() && systems.stream().allMatch(s -> s.start() == 0 && s.end() == longest);
    if (common && systems.stream().allMatch(s -> s.ending() == EventTimes.Ending.TIME)) {
      return Math.toIntExact(2 * events());
    }
    return common && systems.size() == 1 ? Math.toIntExact(2 * (events() - 1)) : 0;
  }

  /**
   * The unbiased shape where the interval of {@link #shape} is exact (MIL-HDBK-189); not identified
   * elsewhere and with too few events.
   */
  public Estimate<Double> unbiasedShape() {
    int degrees = exactDegrees();
    return degrees > 2
        ? Estimate.of(shape() * (degrees - 2) / (2.0 * events()))
        : Estimate.notIdentified(
            "an unbiased shape needs windows from 0 to one end and more than one event");
  }

  /**
   * The shape with an interval that takes the system, not the event, as what was sampled (sandwich
   * variance on the logarithmic scale); needs at least 10 systems.
   */
  public Estimate<PointEstimate> shapeByUnit(double level) {
    if (systems.size() < 10) {
      return Estimate.notIdentified(
          "only " + systems.size() + " systems; how they differ needs at least 10");
    }
    double rate = StrictMath.exp(top.y()) * longest;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (EventTimes system : systems) {
      PowerSums.Span span =
          PowerSums.Span.between(
              StrictMath.log(system.start() / longest),
              StrictMath.log(system.end() / longest),
              shape());
      double x = -rate * span.slope();
      for (double time : system.times()) {
        x += shape() * StrictMath.log(time / longest);
      }
      double y = system.times().length - rate * span.size();
      xx += x * x;
      xy += x * y;
      yy += y * y;
    }
    double a = top.varianceX();
    double b = top.covariance();
    double variance = a * a * xx + 2 * a * b * xy + b * b * yy;
    double error = Math.sqrt(variance * systems.size() / (systems.size() - 1.0));
    double factor = StrictMath.exp(Confidence.z(level) * error);
    return Estimate.of(
        new PointEstimate(
            shape(), shape() * error, new Interval(shape() / factor, shape() * factor, level)));
  }

  /** The rate of one system at a time above 0, with its profile interval. */
  public PointEstimate rateAt(double time, double level) {
    double shift = StrictMath.log(time / longest);
    NewtonAscent.Surface turned = (rate, shape) -> turned(rate, shape, shift);
    double logRate = top.y() + (shape() - 1) * shift;
    NewtonAscent.Point peak = turned.at(logRate, top.x());
    Interval limits =
        ProfileLimits.of(turned, peak, new NewtonAscent.Box(-500, 500, -6.9, 6.9), level);
    double rate = StrictMath.exp(logRate);
    return new PointEstimate(rate, rate * Math.sqrt(peak.varianceX()), exp(limits, level));
  }

  /** The surface in the logarithms of the rate at another time and of the shape. */
  private NewtonAscent.Point turned(double logRate, double logShape, double shift) {
    double shape = StrictMath.exp(logShape);
    NewtonAscent.Point p = sums.at(logShape, logRate - (shape - 1) * shift);
    // d y / d log shape at a fixed rate, and its own derivative
    double turn = -shape * shift;
    return new NewtonAscent.Point(
        logRate,
        logShape,
        p.value(),
        p.gy(),
        p.gx() + p.gy() * turn,
        p.hyy(),
        p.hxy() + p.hyy() * turn,
        p.hxx() + 2 * p.hxy() * turn + p.hyy() * turn * turn + p.gy() * turn);
  }

  private static Interval exp(Interval logs, double level) {
    return new Interval(StrictMath.exp(logs.lower()), StrictMath.exp(logs.upper()), level);
  }

  /**
   * Mean time between events at the end of the windows, from the unbiased shape, with the limits of
   * NIST/SEMATECH 8.4.5.2; only where all windows run from 0 to one time that no event set.
   */
  public Estimate<PointEstimate> meanTimeAtEnd(double level) {
    double n = events();
    if (exactDegrees() != 2 * events() || n < 2) {
      return Estimate.notIdentified(
          "the limits hold for two or more events in windows from 0 to one time");
    }
    double mean = longest * systems.size() / ((n - 1) / n * shape() * n);
    double z = Confidence.z(level);
    double low = n + z * z / 4 + Math.sqrt(n * z * z / 2 + z * z * z * z / 16);
    double high = n - z * Math.sqrt(n / 2);
    double upper = high > 0 ? mean * n * (n - 1) / (high * high) : Double.POSITIVE_INFINITY;
    return Estimate.of(
        new PointEstimate(
            mean,
            mean / Math.sqrt(n),
            new Interval(mean * n * (n - 1) / (low * low), upper, level)));
  }

  /**
   * Cramer and von Mises' distance between the times, as shares of their windows, and the fitted
   * law (MIL-HDBK-189, unbiased shape). At .05 the handbook rejects above about .22 for many
   * events. Not identified unless all windows start at 0 and are ended by time.
   */
  public Estimate<Double> cramerVonMises() {
    int n = Math.toIntExact(events());
    boolean fits =
        !systems.isEmpty()
            && systems.stream()
                .allMatch(s -> s.start() == 0 && s.ending() == EventTimes.Ending.TIME);
    if (!fits || n < 2) {
      return Estimate.notIdentified(
          "the distance is defined for two or more events in windows that start at 0");
    }
    double[] shares =
        systems.stream()
            .flatMapToDouble(s -> Arrays.stream(s.times()).map(t -> t / s.end()))
            .sorted()
            .toArray();
    double unbiased = shape() * (n - 1) / n;
    double sum = 1 / (12.0 * n);
    for (int i = 0; i < n; i++) {
      double off = StrictMath.pow(shares[i], unbiased) - (2 * i + 1) / (2.0 * n);
      sum += off * off;
    }
    return Estimate.of(sum);
  }
}

package sealspan.stats.rates;

import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/**
 * What is known of one unit's rate, given the prior and its tests: computed by quadrature in the
 * logarithm of the rate on a grid laid around the posterior's mode. Probabilities are good to
 * better than 1e-6. The prior is taken as known.
 */
public final class RatePosterior {
  private static final int NODES = 256;
  private static final double NEGLIGIBLE_DROP = 40;
  private static final double POWER_LAW_BELOW = 1e-6;

  private final double lowest;
  private final double step;
  private final double[] density;
  private final double[] slope;
  private final double[] cumulative;
  private final double leftSlope;
  private final double meanPerDay;

  private RatePosterior(
      double lowest,
      double step,
      double[] density,
      double[] slope,
      double[] cumulative,
      double leftSlope,
      double meanPerDay) {
    this.lowest = lowest;
    this.step = step;
    this.density = density;
    this.slope = slope;
    this.cumulative = cumulative;
    this.leftSlope = leftSlope;
    this.meanPerDay = meanPerDay;
  }

  /** The posterior of one unit; a unit without tests has the prior itself. */
  public static RatePosterior of(GammaPrior prior, HiddenFailures unit) {
    Shape f = new Shape(prior, unit);
    double mode = f.mode();
    double peak = f.log(mode);
    double highest = edge(f, mode, peak, 1);
    double powerLaw = StrictMath.log(POWER_LAW_BELOW / (prior.exposureDays() + unit.totalDays()));
    double lowest = Math.max(edge(f, mode, peak, -1), Math.min(powerLaw, mode - 1));
    double step = (highest - lowest) / (NODES - 1);
    double[] density = new double[NODES];
    double[] slope = new double[NODES];
    double rateMoment = 0;
    for (int i = 0; i < NODES; i++) {
      double u = lowest + i * step;
      density[i] = StrictMath.exp(f.log(u) - peak);
      slope[i] = density[i] * f.slope(u);
      rateMoment += density[i] * StrictMath.exp(u);
    }
    // Below the lowest node the density is all but a power of the rate: the rest has a closed form,
    // here with the first-order bend of the exponential factor.
    double leftSlope = prior.shape() + unit.failures();
    double atLowest = density[0] * StrictMath.exp(lowest);
    rateMoment = (rateMoment - atLowest / 2) * step + atLowest / (leftSlope + 1);
    double[] cumulative = new double[NODES];
    double bend = leftSlope - f.slope(lowest);
    cumulative[0] = density[0] / leftSlope * (1 + bend / (leftSlope + 1));
    for (int i = 1; i < NODES; i++) {
      cumulative[i] =
          cumulative[i - 1]
              + step / 2 * (density[i - 1] + density[i])
              + step * step / 12 * (slope[i - 1] - slope[i]);
    }
    double total = cumulative[NODES - 1];
    for (int i = 0; i < NODES; i++) {
      density[i] /= total;
      slope[i] /= total;
      cumulative[i] /= total;
    }
    return new RatePosterior(
        lowest, step, density, slope, cumulative, leftSlope, rateMoment / total);
  }

  /** Posterior mean rate per day. */
  public double meanPerDay() {
    return meanPerDay;
  }

  /** Probability of a failure in a further exposure of some days, at least 0. */
  public double probabilityWithin(double days) {
    double sum = 0;
    for (int i = 0; i < NODES; i++) {
      sum -= density[i] * StrictMath.expm1(-days * StrictMath.exp(lowest + i * step));
    }
    double atLowest = density[0] * days * StrictMath.exp(lowest);
    double within = (sum - atLowest / 2) * step + atLowest / (leftSlope + 1);
    return Math.min(1, Math.max(0, within));
  }

  /** Equal-tailed posterior interval of the rate per day. */
  public Interval interval(double level) {
    double tail = Confidence.tail(level);
    return new Interval(quantile(tail), quantile(1 - tail), level);
  }

  /** Posterior probability that the rate exceeds a limit, per day and at least 0. */
  public double probabilityAbove(double perDay) {
    if (!(perDay >= 0)) {
      throw new IllegalArgumentException("a rate is at least 0, but got " + perDay);
    }
    return perDay == 0 ? 1 : 1 - below(StrictMath.log(perDay));
  }

  /** The rate per day below which the posterior has this probability, between 0 and 1. */
  public double quantile(double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException(
          "a probability lies between 0 and 1, but got " + probability);
    }
    if (probability <= cumulative[0]) {
      return StrictMath.exp(lowest + StrictMath.log(probability / cumulative[0]) / leftSlope);
    }
    int cell = 1;
    while (cell < NODES - 1 && cumulative[cell] < probability) {
      cell++;
    }
    double u =
        RootSearch.between(
            x -> below(x) - probability,
            lowest + (cell - 1) * step,
            Math.nextUp(lowest + cell * step));
    return StrictMath.exp(u);
  }

  private double below(double u) {
    double position = (u - lowest) / step;
    if (position <= 0) {
      return cumulative[0] * StrictMath.exp(leftSlope * (u - lowest));
    }
    int cell = (int) position;
    if (cell >= NODES - 1) {
      return 1;
    }
    double t = position - cell;
    double s = 1 - t;
    // Quintic Hermite: value, density and slope of the density at both ends of the cell.
    double left =
        cumulative[cell] * (1 + 3 * t + 6 * t * t)
            + density[cell] * step * t * (1 + 3 * t)
            + slope[cell] * step * step * t * t / 2;
    double right =
        cumulative[cell + 1] * (1 + 3 * s + 6 * s * s)
            - density[cell + 1] * step * s * (1 + 3 * s)
            + slope[cell + 1] * step * step * s * s / 2;
    double value = left * s * s * s + right * t * t * t;
    return Math.min(1, Math.max(0, value));
  }

  private static double edge(Shape f, double mode, double peak, int direction) {
    double width = 1 / Math.sqrt(f.curvature(mode));
    double far = width;
    while (f.log(mode + direction * far) > peak - NEGLIGIBLE_DROP) {
      far *= 2;
    }
    double inside = mode + direction * (far > width ? far / 2 : 0);
    double outside = mode + direction * far;
    return RootSearch.between(
        u -> f.log(u) - peak + NEGLIGIBLE_DROP,
        Math.min(inside, outside),
        Math.max(inside, outside));
  }

  /** The log density of the log rate, up to a constant; concave. */
  private record Shape(GammaPrior prior, HiddenFailures unit, double exposure) {
    Shape(GammaPrior prior, HiddenFailures unit) {
      this(prior, unit, prior.exposureDays() + unit.passedTotalDays());
    }

    double log(double u) {
      double rate = StrictMath.exp(u);
      double sum = prior.shape() * u - exposure * rate;
      for (int days : unit.failedDays()) {
        sum += StrictMath.log(-StrictMath.expm1(-rate * days));
      }
      return sum;
    }

    double slope(double u) {
      double rate = StrictMath.exp(u);
      double sum = prior.shape() - exposure * rate;
      for (int days : unit.failedDays()) {
        sum += rate * days / StrictMath.expm1(rate * days);
      }
      return sum;
    }

    double curvature(double u) {
      double h = 1e-4;
      return Math.max(1e-12, (slope(u - h) - slope(u + h)) / (2 * h));
    }

    double mode() {
      double lower = StrictMath.log(prior.shape() / exposure);
      double upper = StrictMath.log((prior.shape() + unit.failures()) / exposure);
      return unit.failures() == 0
          ? lower
          : RootSearch.between(this::slope, lower - 1e-9, upper + 1e-9);
    }
  }
}

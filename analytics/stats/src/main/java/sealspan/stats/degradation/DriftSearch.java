package sealspan.stats.degradation;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Looks for the greatest likelihood: Nelder and Mead's simplex, begun again where it ended, over
 * drift, its spread and the wander in units of a first guess, the share of the gauges' variance
 * that the readings show, and the log of the rate of shocks. Spread and wander may come out as
 * zero.
 */
final class DriftSearch {
  private static final int DRIFT = 0;
  private static final int SPREAD = 1;
  private static final int WANDER = 2;
  private static final int ERROR = 3;
  private static final int SHOCKS = 4;

  /** No gauge is taken to be better than this share of its variance. */
  private static final double LEAST_ERROR_SHARE = 0.05;

  /** Readings beyond the second of their run, from which the error of gauges can be told. */
  private static final int FEWEST_THIRD_READINGS = 40;

  private static final int EVALUATIONS = 3_000;
  private static final int RESTARTS = 3;
  private static final double RELATIVE = 1e-11;
  private static final double ABSOLUTE = 1e-8;

  /** A spread or wander below this share of the first guess is taken to be zero. */
  private static final double NOUGHT = 0.02;

  private final DriftLikelihood likelihood;
  private final SharedBiases biases;
  private final FirstGuess guess;
  private final boolean shocks;
  private final boolean errorIsTold;

  private DriftSearch(List<ReadingRun> runs, double unreadableShare, SharedBiases biases) {
    this.likelihood = new DriftLikelihood(runs, unreadableShare);
    this.biases = biases;
    this.guess = FirstGuess.of(runs);
    this.shocks = guess.failures() > 0;
    long thirds = 0;
    for (GaugedReading[] run : likelihood.runs()) {
      thirds += Math.max(0, run.length - 2);
    }
    this.errorIsTold = thirds >= FEWEST_THIRD_READINGS;
  }

  /** What was found; errors are infinite where the likelihood is flat. */
  record Found(
      double driftPerDay,
      double driftSdPerDay,
      double volatilityPerRootDay,
      double shocksPerDay,
      double errorShare,
      double biasShare,
      double driftError,
      double shockError,
      double logLikelihood) {

    private double varianceOfStep(GaugedReading from, GaugedReading to) {
      double days = Math.max(1, to.day() - from.day());
      return days * volatilityPerRootDay * volatilityPerRootDay
          + days * days * driftSdPerDay * driftSdPerDay
          + from.ownVariance(errorShare)
          + to.ownVariance(errorShare);
    }

    DriftModel model(double unreadableShare) {
      return new DriftModel(
          driftPerDay,
          driftSdPerDay,
          volatilityPerRootDay,
          shocksPerDay,
          unreadableShare,
          errorShare,
          biasShare);
    }
  }

  /**
   * Searches from a first guess that the runs give. The biases of few gauges are taken out first,
   * once by the guess and once by what was found with that.
   */
  static Found of(List<ReadingRun> runs, double unreadableShare) {
    SharedBiases biases = SharedBiases.of(runs);
    if (!biases.areFew()) {
      return of(runs, unreadableShare, biases);
    }
    FirstGuess guess = FirstGuess.of(runs);
    double wander = guess.wanderPerRootDay() * guess.wanderPerRootDay();
    Found first =
        of(
            biases.takenOut(runs, (from, to) -> wander * Math.max(1, to.day() - from.day())),
            unreadableShare,
            biases);
    return of(biases.takenOut(runs, first::varianceOfStep), unreadableShare, biases);
  }

  private static Found of(List<ReadingRun> runs, double unreadableShare, SharedBiases biases) {
    DriftSearch search = new DriftSearch(runs, unreadableShare, biases);
    return search.found(search.best());
  }

  private double[] best() {
    double[] point = shocks ? new double[] {0, 0.5, 0.7, 0.5, 0} : new double[] {0, 0.5, 0.7, 0.5};
    double[] steps = new double[point.length];
    double value = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < RESTARTS; i++) {
      Arrays.fill(steps, i == 0 ? 0.5 : 0.2);
      SimplexOptimizer optimizer = new SimplexOptimizer(RELATIVE, ABSOLUTE);
      Highest highest = new Highest();
      try {
        optimizer.optimize(
            new MaxEval(EVALUATIONS),
            new ObjectiveFunction(at -> highest.see(at, value(at))),
            GoalType.MAXIMIZE,
            new InitialGuess(point),
            new NelderMeadSimplex(steps));
      } catch (MathIllegalStateException tooLong) {
        // On a flat top it never ends; the highest point that it saw is as good as any there.
      }
      boolean settled = highest.value - value < 1e-7 * Math.max(1, Math.abs(value));
      if (highest.value > value) {
        point = highest.point;
        value = highest.value;
      }
      if (settled) {
        break;
      }
    }
    return point;
  }

  /** The highest point of a search. */
  private static final class Highest {
    private double[] point;
    private double value = Double.NEGATIVE_INFINITY;

    double see(double[] at, double height) {
      if (height > value) {
        point = at.clone();
        value = height;
      }
      return height;
    }
  }

  private double value(double[] point) {
    return likelihood.at(place(point));
  }

  private DriftLikelihood.Place place(double[] point) {
    double spread = point[SPREAD] * guess.spreadPerDay();
    double wander = point[WANDER] * guess.wanderPerRootDay();
    return new DriftLikelihood.Place(
        guess.driftPerDay() + point[DRIFT] * guess.spreadPerDay(),
        spread * spread,
        wander * wander,
        shocksPerDay(point),
        errorShare(point));
  }

  /** At most 1, which is reached where the number is 0. */
  private double errorShare(double[] point) {
    return errorIsTold
        ? LEAST_ERROR_SHARE + (1 - LEAST_ERROR_SHARE) * StrictMath.exp(-point[ERROR] * point[ERROR])
        : 1;
  }

  private double biasShare(double[] point) {
    return biases.areFew() ? 1 : errorShare(point);
  }

  private double shocksPerDay(double[] point) {
    return shocks ? guess.shocksPerDay() * StrictMath.exp(point[SHOCKS]) : 0;
  }

  private Found found(double[] best) {
    double[] point = best.clone();
    for (int i : new int[] {SPREAD, WANDER, ERROR}) {
      point[i] = Math.abs(point[i]) < NOUGHT ? 0 : Math.abs(point[i]);
    }
    double[] errors = errors(point);
    double own = errors[DRIFT] * guess.spreadPerDay();
    return new Found(
        guess.driftPerDay() + point[DRIFT] * guess.spreadPerDay(),
        point[SPREAD] * guess.spreadPerDay(),
        point[WANDER] * guess.wanderPerRootDay(),
        shocksPerDay(point),
        errorShare(point),
        biasShare(point),
        Double.isFinite(own) ? Math.sqrt(own * own + sharedVariance(point, own * own)) : own,
        shocks ? errors[SHOCKS] : Double.POSITIVE_INFINITY,
        value(point));
  }

  /**
   * What the biases of gauges add to the variance of the mean drift: a gauge that reads low for a
   * year moves all units that it reads alike, so they are not independent. Each bias moves the
   * drift by the drift's variance times the mixed derivative of the likelihood. Where biases were
   * not taken out, the part that each run has by itself is in the variance already.
   */
  private double sharedVariance(double[] point, double ownVariance) {
    double moveDrift = Math.sqrt(ownVariance);
    Map<String, double[]> sums = new TreeMap<>();
    for (GaugedReading[] run : likelihood.runs()) {
      Set<String> periods = new TreeSet<>();
      for (GaugedReading reading : run) {
        periods.add(reading.gaugePeriod());
      }
      for (String period : periods) {
        double bias = biasShare(point) * biases.variance(period);
        double raise = Math.sqrt(bias);
        if (raise > 0) {
          double mixed =
              (of(run, period, raise, point, moveDrift)
                      - of(run, period, -raise, point, moveDrift)
                      - of(run, period, raise, point, -moveDrift)
                      + of(run, period, -raise, point, -moveDrift))
                  / (4 * moveDrift * raise);
          double[] sum = sums.computeIfAbsent(period, p -> new double[3]);
          sum[0] += mixed;
          sum[1] += mixed * mixed;
          sum[2] = Math.max(sum[2], bias);
        }
      }
    }
    double variance = 0;
    for (double[] sum : sums.values()) {
      double counted = biases.areFew() ? 0 : sum[1];
      variance += sum[2] * (sum[0] * sum[0] - counted) * ownVariance * ownVariance;
    }
    return Math.max(0, variance);
  }

  private double of(
      GaugedReading[] run, String period, double raise, double[] point, double moveDrift) {
    GaugedReading[] raised = run.clone();
    for (int i = 0; i < raised.length; i++) {
      if (raised[i].gaugePeriod().equals(period)) {
        raised[i] = raised[i].raised(raise);
      }
    }
    return likelihood.of(raised, place(point).moved(moveDrift));
  }

  /** By the curvature; first of all that is not zero, then, where that is no top, of less. */
  private double[] errors(double[] point) {
    boolean[] free = new boolean[point.length];
    for (int i = 0; i < free.length; i++) {
      free[i] = i == DRIFT || i == SHOCKS || point[i] > 0 && (i != ERROR || errorIsTold);
    }
    double[] errors = errors(point, free);
    if (errors == null) {
      free[SPREAD] = false;
      errors = errors(point, free);
    }
    if (errors == null) {
      errors = new double[point.length];
      Arrays.fill(errors, Double.POSITIVE_INFINITY);
    }
    return errors;
  }

  private double[] errors(double[] point, boolean[] free) {
    int n = 0;
    int[] at = new int[point.length];
    for (int i = 0; i < free.length; i++) {
      if (free[i]) {
        at[n++] = i;
      }
    }
    RealMatrix information = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double bend = -bend(point, at[i], at[j]);
        information.setEntry(i, j, bend);
        information.setEntry(j, i, bend);
      }
    }
    LUDecomposition lu = new LUDecomposition(information, 1e-12);
    if (!lu.getSolver().isNonSingular()) {
      return null;
    }
    RealMatrix covariance = lu.getSolver().getInverse();
    double[] errors = new double[point.length];
    for (int i = 0; i < n; i++) {
      if (!(covariance.getEntry(i, i) > 0)) {
        return null;
      }
      errors[at[i]] = Math.sqrt(covariance.getEntry(i, i));
    }
    return errors;
  }

  /** Second derivative by differences. */
  private double bend(double[] point, int i, int j) {
    double h = 0.01;
    if (i == j) {
      return (moved(point, i, h, i, 0) - 2 * value(point) + moved(point, i, -h, i, 0)) / (h * h);
    }
    return (moved(point, i, h, j, h)
            - moved(point, i, h, j, -h)
            - moved(point, i, -h, j, h)
            + moved(point, i, -h, j, -h))
        / (4 * h * h);
  }

  private double moved(double[] point, int i, double by, int j, double andBy) {
    double[] other = point.clone();
    other[i] += by;
    other[j] += andBy;
    return value(other);
  }
}

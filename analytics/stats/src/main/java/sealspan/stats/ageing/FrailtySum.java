package sealspan.stats.ageing;

import java.util.Arrays;

/**
 * The likelihood of one unit whose hazard carries an unknown factor with a lognormal distribution
 * of mean 1, integrated over the factor; and the sum of such likelihoods, with derivatives.
 */
final class FrailtySum {
  private static final int DIMENSION = AgeingPoint.PARAMETERS;
  private static final double CERTAIN = 700;

  private final double deviation;
  private final double[] factor = new double[FrailtyNodes.COUNT];
  private final double[] likelihood = new double[FrailtyNodes.COUNT];
  private final double[][] slope = new double[FrailtyNodes.COUNT][DIMENSION];

  /** Hazard passed, with derivatives; and what does not depend on the factor. */
  private final double[] passed = new double[AgeTrace.SIZE];

  private final double[] fixed = new double[AgeTrace.SIZE];
  private int exact;

  /** One row for each failure of the unit: its hazard gained, with derivatives. */
  private double[][] failed = new double[4][AgeTrace.SIZE];

  private int failures;

  private double value;
  private final double[] slopes = new double[DIMENSION];
  private final double[][] bends = new double[DIMENSION][DIMENSION];

  FrailtySum(double deviation) {
    this.deviation = deviation;
    for (int m = 0; m < factor.length; m++) {
      factor[m] = StrictMath.exp(deviation * FrailtyNodes.NODE[m] - deviation * deviation / 2);
    }
  }

  void startUnit() {
    Arrays.fill(passed, 0);
    Arrays.fill(fixed, 0);
    exact = 0;
    failures = 0;
  }

  /** Where to add the hazard that was passed. */
  double[] passed() {
    return passed;
  }

  /** Where to add the log hazard of a failure at an exact time. */
  double[] exactFailure() {
    exact++;
    return fixed;
  }

  /** Where to add the hazard gained in a stretch that ended in a failure. */
  double[] failure() {
    if (failures == failed.length) {
      failed = Arrays.copyOf(failed, 2 * failures);
      for (int i = failures; i < failed.length; i++) {
        failed[i] = new double[AgeTrace.SIZE];
      }
    }
    Arrays.fill(failed[failures], 0);
    return failed[failures++];
  }

  /** Adds the unit's log-likelihood. */
  void endUnit() {
    double top = Double.NEGATIVE_INFINITY;
    for (int m = 0; m < factor.length; m++) {
      likelihood[m] = FrailtyNodes.LOG_WEIGHT[m] + logLikelihood(m);
      top = Math.max(top, likelihood[m]);
    }
    double sum = 0;
    for (int m = 0; m < factor.length; m++) {
      likelihood[m] = StrictMath.exp(likelihood[m] - top);
      sum += likelihood[m];
    }
    value += top + StrictMath.log(sum) + fixed[0];
    for (int m = 0; m < factor.length; m++) {
      likelihood[m] /= sum;
    }
    addPassedAndFixed();
    addFailures();
    addSpread();
  }

  private double logLikelihood(int m) {
    double z = factor[m];
    double log = -z * passed[0];
    double[] own = slope[m];
    for (int j = 0; j < AgeTrace.SLOPES; j++) {
      own[j] = -z * passed[1 + j];
    }
    double inFactor = -passed[0];
    for (int k = 0; k < failures; k++) {
      double d = z * failed[k][0];
      if (d > CERTAIN) {
        continue;
      }
      log += StrictMath.log(-StrictMath.expm1(-d));
      double first = z / StrictMath.expm1(d);
      for (int j = 0; j < AgeTrace.SLOPES; j++) {
        own[j] += first * failed[k][1 + j];
      }
      inFactor += first / z * failed[k][0];
    }
    double logFactor = deviation * FrailtyNodes.NODE[m] - deviation * deviation / 2;
    log += exact * logFactor;
    inFactor += exact / z;
    own[AgeingPoint.FRAILTY] = inFactor * z * (FrailtyNodes.NODE[m] - deviation);
    return log;
  }

  /** What is linear in the factor, and what does not depend on it. */
  private void addPassedAndFixed() {
    double mean = 0;
    double turn = 0;
    double bend = 0;
    for (int m = 0; m < factor.length; m++) {
      double off = FrailtyNodes.NODE[m] - deviation;
      double weighted = likelihood[m] * factor[m];
      mean += weighted;
      turn += weighted * off;
      bend += weighted * (off * off - 1);
    }
    addSecond(passed, -mean);
    addSecond(fixed, 1);
    for (int j = 0; j < AgeTrace.SLOPES; j++) {
      cross(j, -turn * passed[1 + j]);
      slopes[j] += fixed[1 + j];
    }
    // each exact failure adds deviation * node - deviation^2 / 2
    bends[AgeingPoint.FRAILTY][AgeingPoint.FRAILTY] += -bend * passed[0] - exact;
  }

  private void addFailures() {
    for (int k = 0; k < failures; k++) {
      double gained = failed[k][0];
      double first = 0;
      double second = 0;
      double turn = 0;
      double bend = 0;
      for (int m = 0; m < factor.length; m++) {
        double z = factor[m];
        double d = z * gained;
        if (d > CERTAIN) {
          continue;
        }
        double odds = 1 / StrictMath.expm1(d);
        double fall = odds * (1 + odds);
        double off = FrailtyNodes.NODE[m] - deviation;
        first += likelihood[m] * z * odds;
        second -= likelihood[m] * z * z * fall;
        turn += likelihood[m] * z * off * (odds - d * fall);
        bend += likelihood[m] * (gained * odds * z * (off * off - 1) - d * d * fall * off * off);
      }
      addSecond(failed[k], first);
      for (int i = 0; i < AgeTrace.ROW.length; i++) {
        int row = AgeTrace.ROW[i];
        int column = AgeTrace.COLUMN[i];
        bends[row][column] += second * failed[k][1 + row] * failed[k][1 + column];
      }
      for (int j = 0; j < AgeTrace.SLOPES; j++) {
        cross(j, turn * failed[k][1 + j]);
      }
      bends[AgeingPoint.FRAILTY][AgeingPoint.FRAILTY] += bend;
    }
  }

  private void addSecond(double[] sum, double times) {
    for (int i = 0; i < AgeTrace.ROW.length; i++) {
      bends[AgeTrace.ROW[i]][AgeTrace.COLUMN[i]] += times * sum[5 + i];
    }
  }

  private void cross(int parameter, double amount) {
    bends[parameter][AgeingPoint.FRAILTY] += amount;
  }

  /** Mean slopes, and how they spread over the factor. */
  private void addSpread() {
    double[] mean = new double[DIMENSION];
    for (int m = 0; m < factor.length; m++) {
      for (int j = 0; j < DIMENSION; j++) {
        mean[j] += likelihood[m] * slope[m][j];
      }
    }
    for (int j = 0; j < DIMENSION; j++) {
      slopes[j] += mean[j];
      for (int k = j; k < DIMENSION; k++) {
        double spread = 0;
        for (int m = 0; m < factor.length; m++) {
          spread += likelihood[m] * (slope[m][j] - mean[j]) * (slope[m][k] - mean[k]);
        }
        bends[j][k] += spread;
      }
    }
  }

  /** The sum over all units so far. */
  AgeingPoint point(double[] parameters) {
    double[][] whole = new double[DIMENSION][DIMENSION];
    for (int j = 0; j < DIMENSION; j++) {
      for (int k = j; k < DIMENSION; k++) {
        whole[j][k] = bends[j][k];
        whole[k][j] = bends[j][k];
      }
    }
    return new AgeingPoint(parameters, value, slopes.clone(), whole);
  }
}

package sealspan.stats.exposure;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.StratifiedFit;
import sealspan.stats.regression.StratifiedRegression;

/**
 * Distributed lags: how an exposure acts on counts so many steps later, as one smooth curve over
 * lags (Gasparrini, Armstrong and Kenward 2010, Statistics in Medicine 29:2224). Counts are
 * conditioned on the totals of their strata, such as a calendar month of a zone; errors are widened
 * by the dispersion, and where counts follow one another in series also by what neighbouring ones
 * have in common: of both errors the larger is taken.
 *
 * @param byLag logarithm of the ratio for an exposure of 1, one for each lag from 0 on
 * @param total that of an exposure of 1 at all lags
 * @param dispersion squared Pearson residuals per degree of freedom
 * @param rows counts that tell something
 * @param strata their strata
 */
public record DistributedLag(
    List<PointEstimate> byLag, PointEstimate total, double dispersion, int rows, int strata) {

  /**
   * Series of counts, one row to a step.
   *
   * @param of the series of each row
   * @param step the step of each row in it
   * @param farthest counts farther apart than this are taken as independent
   */
  public record Series(int[] of, int[] step, int farthest) {}

  /** Fits counts that have nothing in common but their stratum. */
  public static Estimate<DistributedLag> fit(
      double[] counts,
      double[] logAtRisk,
      double[][] exposure,
      LagBasis basis,
      int[] stratum,
      double level) {
    return fit(counts, logAtRisk, exposure, basis, stratum, null, level);
  }

  /**
   * Fits.
   *
   * @param counts a count for each row
   * @param logAtRisk logarithm of what was at risk, such as tests made
   * @param exposure for each lag from 0 on, the exposure of each row so many steps earlier
   * @param basis curves; its last lag is that of the exposure
   * @param stratum number of each row's stratum
   * @param series series of the counts; null where they are in none
   * @param level two-sided level; intervals are normal
   */
  public static Estimate<DistributedLag> fit(
      double[] counts,
      double[] logAtRisk,
      double[][] exposure,
      LagBasis basis,
      int[] stratum,
      Series series,
      double level) {
    if (exposure.length != basis.lastLag() + 1) {
      throw new IllegalArgumentException(
          exposure.length + " lags of exposure for lags 0 to " + basis.lastLag());
    }
    Design design = Design.ofRows(counts.length);
    for (int k = 0; k < basis.columns().length; k++) {
      double[] column = new double[counts.length];
      for (int lag = 0; lag < exposure.length; lag++) {
        for (int i = 0; i < column.length; i++) {
          column[i] += basis.columns()[k][lag] * exposure[lag][i];
        }
      }
      design = design.column("curve " + (k + 1), column);
    }
    Estimate<StratifiedFit> estimate =
        StratifiedRegression.fit(
            Family.POISSON, Observations.of(design, counts).offset(logAtRisk), stratum);
    if (estimate instanceof Estimate.NotIdentified<StratifiedFit> not) {
      return Estimate.notIdentified(not.because());
    }
    StratifiedFit fit = estimate.orThrow();
    double[][] dispersed = fit.dispersedCovariance();
    double[][] serial =
        series == null
            ? dispersed
            : fit.serialCovariance(series.of(), series.step(), series.farthest());
    List<PointEstimate> byLag = new ArrayList<>();
    double[] sum = new double[basis.columns().length];
    for (int lag = 0; lag <= basis.lastLag(); lag++) {
      double[] at = new double[sum.length];
      for (int k = 0; k < sum.length; k++) {
        at[k] = basis.columns()[k][lag];
        sum[k] += at[k];
      }
      byLag.add(combined(fit, at, dispersed, serial, level));
    }
    return Estimate.of(
        new DistributedLag(
            byLag,
            combined(fit, sum, dispersed, serial, level),
            fit.dispersion(),
            fit.rows().length,
            fit.strata()));
  }

  private static PointEstimate combined(
      StratifiedFit fit, double[] factors, double[][] one, double[][] other, double level) {
    double value = 0;
    for (int j = 0; j < factors.length; j++) {
      value += factors[j] * fit.coefficients()[j];
    }
    double variance = Math.max(variance(factors, one), variance(factors, other));
    double se = Math.sqrt(Math.max(0, variance));
    double half = Confidence.z(level) * se;
    return new PointEstimate(value, se, new Interval(value - half, value + half, level));
  }

  private static double variance(double[] factors, double[][] covariance) {
    double variance = 0;
    for (int j = 0; j < factors.length; j++) {
      for (int k = 0; k < factors.length; k++) {
        variance += factors[j] * factors[k] * covariance[j][k];
      }
    }
    return variance;
  }
}

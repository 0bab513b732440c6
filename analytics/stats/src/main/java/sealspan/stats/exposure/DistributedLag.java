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
 * by the dispersion.
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
   * Fits.
   *
   * @param counts a count for each row
   * @param logAtRisk logarithm of what was at risk, such as tests made
   * @param exposure for each lag from 0 on, the exposure of each row so many steps earlier
   * @param basis curves; its last lag is that of the exposure
   * @param stratum number of each row's stratum
   * @param level two-sided level; intervals are normal
   */
  public static Estimate<DistributedLag> fit(
      double[] counts,
      double[] logAtRisk,
      double[][] exposure,
      LagBasis basis,
      int[] stratum,
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
    List<PointEstimate> byLag = new ArrayList<>();
    double[] sum = new double[basis.columns().length];
    for (int lag = 0; lag <= basis.lastLag(); lag++) {
      double[] at = new double[sum.length];
      for (int k = 0; k < sum.length; k++) {
        at[k] = basis.columns()[k][lag];
        sum[k] += at[k];
      }
      byLag.add(combined(fit, at, level));
    }
    return Estimate.of(
        new DistributedLag(
            byLag, combined(fit, sum, level), fit.dispersion(), fit.rows().length, fit.strata()));
  }

  private static PointEstimate combined(StratifiedFit fit, double[] factors, double level) {
    double[][] covariance = fit.dispersedCovariance();
    double value = 0;
    double variance = 0;
    for (int j = 0; j < factors.length; j++) {
      value += factors[j] * fit.coefficients()[j];
      for (int k = 0; k < factors.length; k++) {
        variance += factors[j] * factors[k] * covariance[j][k];
      }
    }
    double se = Math.sqrt(Math.max(0, variance));
    double half = Confidence.z(level) * se;
    return new PointEstimate(value, se, new Interval(value - half, value + half, level));
  }
}

package sealspan.study.practice;

import sealspan.event.Means;

/**
 * How readings come about: a true value that drifts (Wiener process), the error of the gauge, a
 * bias that all readings of one gauge share from one calibration to the next, rounding to 0.1 psi.
 * The values hold for a check in the direction of flow; other measures scale with their range.
 */
public record TrueReadings(
    @Means("standard deviation of the value of a new seal between seals, psi") double levelSdPsi,
    @Means("drift, psi a year") double driftPsiPerYear,
    @Means("volatility of the drift, psi a root year") double volatilityPsi,
    @Means("standard deviation of the error of one reading, psi") double gaugeSdPsi,
    @Means("standard deviation of the bias between calibrations, psi") double gaugeBiasSdPsi) {

  /** Slow drift and a gauge within its 0.2 psi nearly always. */
  public static TrueReadings usual() {
    return new TrueReadings(0.25, -0.02, 0.04, 0.06, 0.06);
  }

  /** Constant values, read without error. */
  public static TrueReadings exact() {
    return new TrueReadings(0, 0, 0, 0, 0);
  }
}

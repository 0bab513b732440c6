package sealspan.stats.degradation;

/** The probability of one reading, given those before it: by drift, or, if it fails, by a shock. */
final class Innovation {
  private Innovation() {}

  /** Log density of a reading, or log probability of one that was not read as a number. */
  static double log(
      LevelFilter filter,
      GaugedReading reading,
      double ownVariance,
      double shocks,
      double unreadableShare) {
    double byDrift = -shocks + logByDrift(filter, reading, ownVariance);
    if (!reading.fails()) {
      return Math.max(byDrift, -shocks + logFarthest(filter, ownVariance));
    }
    if (shocks == 0) {
      return byDrift;
    }
    return logSum(byDrift, logByShock(reading, shocks, unreadableShare));
  }

  /** Share of the drift in the probability of a failed reading. */
  static double gradualShare(
      LevelFilter filter,
      GaugedReading reading,
      double ownVariance,
      double shocks,
      double unreadableShare) {
    if (shocks == 0) {
      return 1;
    }
    double byDrift = -shocks + logByDrift(filter, reading, ownVariance);
    double byShock = logByShock(reading, shocks, unreadableShare);
    return 1 / (1 + StrictMath.exp(byShock - byDrift));
  }

  private static double logByDrift(LevelFilter filter, GaugedReading reading, double ownVariance) {
    double variance = filter.variance(ownVariance);
    double sd = Math.sqrt(variance);
    double z = (reading.value() - filter.mean()) / sd;
    return reading.seen() == GaugedReading.Seen.MEASURED
        ? Bell.logDensity(z) - StrictMath.log(sd)
        : Bell.logBelow(z);
  }

  /** However far a passing reading lies, it counts as no farther: one slip must not rule a fit. */
  private static double logFarthest(LevelFilter filter, double ownVariance) {
    double sd = Math.sqrt(filter.variance(ownVariance));
    return Bell.logDensity(LevelFilter.FARTHEST_SDS) - StrictMath.log(sd);
  }

  /** A shock leaves nothing to read, or a value anywhere between 0 and the limit. */
  private static double logByShock(GaugedReading reading, double shocks, double unreadableShare) {
    double shocked = StrictMath.log(-StrictMath.expm1(-shocks));
    return reading.seen() == GaugedReading.Seen.MEASURED
        ? shocked
            + StrictMath.log(1 - unreadableShare)
            - StrictMath.log(Math.max(reading.limit(), reading.step()))
        : shocked + StrictMath.log(unreadableShare);
  }

  private static double logSum(double a, double b) {
    double top = Math.max(a, b);
    return top + StrictMath.log(StrictMath.exp(a - top) + StrictMath.exp(b - top));
  }
}

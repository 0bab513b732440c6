package sealspan.stats;

import org.hipparchus.distribution.continuous.NormalDistribution;

/** What a two-sided confidence level means in numbers. */
public final class Confidence {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  private Confidence() {}

  /** Rejects a level outside (0, 1). */
  public static void requireLevel(double level) {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException(
          "a confidence level lies between 0 and 1, for example 0.95, but got " + level);
    }
  }

  /** The error allowed in each tail, for example .025 for level .95. */
  public static double tail(double level) {
    requireLevel(level);
    return (1 - level) / 2;
  }

  /** The standard normal quantile that leaves {@link #tail} above it, for example 1.96 for .95. */
  public static double z(double level) {
    return -NORMAL.inverseCumulativeProbability(tail(level));
  }
}

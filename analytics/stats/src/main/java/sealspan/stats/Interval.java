package sealspan.stats;

/**
 * A confidence or posterior interval, both ends included.
 *
 * @param lower lower limit; may be negative infinity
 * @param upper upper limit; positive infinity when the data set no upper limit
 * @param level two-sided level, between 0 and 1, ends excluded; half of the error lies in each tail
 */
public record Interval(double lower, double upper, double level) {
  public Interval {
    if (!(lower <= upper)) {
      throw new IllegalArgumentException(
          "an interval needs lower <= upper, but got " + lower + " and " + upper);
    }
    Confidence.requireLevel(level);
  }

  /** Whether the value lies between the limits, ends included. */
  public boolean contains(double value) {
    return lower <= value && value <= upper;
  }
}

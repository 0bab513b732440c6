package sealspan.stats.recurrence;

/**
 * Events of one unit that were only counted within intervals.
 *
 * @param bounds ends of the intervals, ascending: interval k is (bounds[k], bounds[k + 1]]
 * @param counts events in each; one fewer than bounds
 */
public record CountedIntervals(double[] bounds, int[] counts) {
  public CountedIntervals {
    if (bounds.length != counts.length + 1) {
      throw new IllegalArgumentException(
          counts.length + " counts need " + (counts.length + 1) + " bounds, not " + bounds.length);
    }
    for (int i = 0; i < counts.length; i++) {
      if (!(bounds[i] < bounds[i + 1]) || counts[i] < 0) {
        throw new IllegalArgumentException(
            "interval " + (i + 1) + " needs ascending bounds and a count of 0 or more");
      }
    }
  }
}

package sealspan.stats.survival;

import java.util.Arrays;
import java.util.Comparator;

/**
 * The lives that followed one another in one place, from a known start: complete gaps and the open
 * one at the end of watching. A first gap whose start is not known must be left out by the caller,
 * with all that follows it: when watching begins at an event, the gaps are not a fair sample.
 *
 * @param completeDays gaps that ended in a replacement, each at least 1 day
 * @param openDays length of the gap still open when watching ended, at least 0
 */
public record UnitGaps(int[] completeDays, int openDays) {
  static final Comparator<UnitGaps> ORDER =
      Comparator.comparing(UnitGaps::completeDays, Arrays::compare)
          .thenComparingInt(UnitGaps::openDays);

  public UnitGaps {
    for (int days : completeDays) {
      if (days < 1) {
        throw new IllegalArgumentException("a gap is at least 1 day long, but got " + days);
      }
    }
    if (openDays < 0) {
      throw new IllegalArgumentException("an open gap is at least 0 days, but got " + openDays);
    }
    // The estimator takes a unit's gaps as exchangeable, so their order is not kept.
    completeDays = completeDays.clone();
    Arrays.sort(completeDays);
  }
}

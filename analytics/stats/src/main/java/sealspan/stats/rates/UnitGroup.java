package sealspan.stats.rates;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** Units that share failures and total passed exposure, and so have equal likelihoods. */
record UnitGroup(long passedTotalDays, int[] failedDays, long count) {
  private static final Comparator<UnitGroup> ORDER =
      Comparator.comparingLong(UnitGroup::passedTotalDays)
          .thenComparing(UnitGroup::failedDays, Arrays::compare);

  /** The groups in sorted order, whatever the order of the units. */
  static List<UnitGroup> merged(Collection<HiddenFailures> units) {
    List<UnitGroup> each = new ArrayList<>(units.size());
    for (HiddenFailures unit : units) {
      each.add(new UnitGroup(unit.passedTotalDays(), unit.failedDays(), 1));
    }
    return mergedGroups(each);
  }

  /**
   * As few groups as wanted where that can be had: if need be exposures are rounded to 1 % or more
   * coarsely, which hardly moves what all units say together.
   */
  static List<UnitGroup> merged(Collection<HiddenFailures> units, int wanted) {
    List<UnitGroup> groups = merged(units);
    for (int digits = 7; digits >= 4 && groups.size() > wanted; digits--) {
      int binaryDigits = digits;
      groups = mergedGroups(groups.stream().map(group -> group.rounded(binaryDigits)).toList());
    }
    return groups;
  }

  private UnitGroup rounded(int binaryDigits) {
    int[] days = new int[failedDays.length];
    for (int k = 0; k < days.length; k++) {
      days[k] = (int) rounded(failedDays[k], binaryDigits);
    }
    Arrays.sort(days);
    return new UnitGroup(rounded(passedTotalDays, binaryDigits), days, count);
  }

  /** To so many binary digits, halves up. */
  private static long rounded(long days, int binaryDigits) {
    int shift = Math.max(0, 64 - Long.numberOfLeadingZeros(days) - binaryDigits);
    return shift == 0 ? days : (days + (1L << (shift - 1))) >> shift << shift;
  }

  private static List<UnitGroup> mergedGroups(Collection<UnitGroup> groups) {
    List<UnitGroup> sorted = new ArrayList<>(groups);
    sorted.sort(ORDER);
    List<UnitGroup> merged = new ArrayList<>();
    UnitGroup open = null;
    for (UnitGroup group : sorted) {
      if (open != null && ORDER.compare(open, group) == 0) {
        open = new UnitGroup(open.passedTotalDays, open.failedDays, open.count + group.count);
      } else {
        if (open != null) {
          merged.add(open);
        }
        open = group;
      }
    }
    if (open != null) {
      merged.add(open);
    }
    return merged;
  }
}

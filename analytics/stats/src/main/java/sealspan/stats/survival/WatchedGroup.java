package sealspan.stats.survival;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The lives that one curve can be drawn through. With late entry all lives at risk can have ended
 * before others enter, or nobody is watched for a while; what was seen before then says nothing of
 * what comes after, and the maximum of the likelihood would come to 0 in between. Lives therefore
 * fall into groups, each with somebody known to go on at every entry; the group with most ends is
 * used, the earliest of several.
 *
 * @param lives its lives, sorted, none of them empty of information
 * @param ends those among them that ended
 * @param all lives given
 * @param first whether no group came before it
 */
record WatchedGroup(List<Lifetime> lives, long ends, long all, boolean first) {

  /** The group to use; empty when no life carries information. */
  static WatchedGroup of(Collection<Lifetime> lifetimes) {
    List<Lifetime> sorted = new ArrayList<>(lifetimes.size());
    long all = 0;
    for (Lifetime life : lifetimes) {
      all += life.count();
      int lower = Math.max(life.lowerDay(), life.entryDay());
      boolean silent = life.open() ? lower == life.entryDay() : life.upperDay() <= life.entryDay();
      if (!silent) {
        sorted.add(
            lower == life.lowerDay()
                ? life
                : new Lifetime(life.entryDay(), lower, life.upperDay(), life.count()));
      }
    }
    sorted.sort(Lifetime.ORDER);
    WatchedGroup best = new WatchedGroup(List.of(), -1, all, true);
    int start = 0;
    long farthest = Long.MIN_VALUE;
    long ends = 0;
    for (int i = 0; i <= sorted.size(); i++) {
      boolean over = i == sorted.size() || farthest <= 2L * sorted.get(i).entryDay();
      if (i > start && over) {
        if (ends > best.ends) {
          best = new WatchedGroup(sorted.subList(start, i), ends, all, start == 0);
        }
        start = i;
        ends = 0;
      }
      if (i < sorted.size()) {
        Lifetime life = sorted.get(i);
        farthest = Math.max(farthest, TurnbullCells.left(life));
        ends += life.open() ? 0 : life.count();
      }
    }
    return best;
  }

  /** Lives used. */
  long used() {
    return lives.stream().mapToLong(Lifetime::count).sum();
  }

  /** The day from which the curve is known, before the restart rule. */
  int fromDay() {
    return lives.get(0).entryDay();
  }

  /**
   * The first entry day on which enough lives are watched to begin a curve: {@link
   * RiskTable#FEWEST_AT_RESTART}, or as many as ever are; the first group begins with its first.
   */
  int beginning() {
    if (first) {
      return fromDay();
    }
    TreeMap<Integer, Long> atRisk = atRiskAtEntries();
    long most = Collections.max(atRisk.values());
    long needed = Math.min(RiskTable.FEWEST_AT_RESTART, most);
    for (Map.Entry<Integer, Long> day : atRisk.entrySet()) {
      if (day.getValue() >= needed) {
        return day.getKey();
      }
    }
    return fromDay();
  }

  /** By entry day, the lives that have entered by then and are known to go on after it. */
  private TreeMap<Integer, Long> atRiskAtEntries() {
    List<Lifetime> leaving = new ArrayList<>(lives);
    leaving.sort(Comparator.comparingInt(Lifetime::lowerDay));
    TreeMap<Integer, Long> byDay = new TreeMap<>();
    long entered = 0;
    long left = 0;
    int out = 0;
    for (int i = 0; i < lives.size(); i++) {
      int day = lives.get(i).entryDay();
      entered += lives.get(i).count();
      while (out < leaving.size() && leaving.get(out).lowerDay() <= day) {
        left += leaving.get(out++).count();
      }
      // The last life of the day has the final word.
      byDay.put(day, entered - left);
    }
    return byDay;
  }
}

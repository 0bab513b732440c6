package sealspan.stats.recurrence;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.recurrence.MeanCumulativeFunction.Mark;

/**
 * Two independent groups of units compared by their mean cumulative functions over the stretch in
 * which both are known. Variances are robust and add, because no unit is in both groups. The order
 * of the input is of no account, to the last bit.
 */
public final class MeanComparison {
  private final MeanCumulativeFunction first;
  private final MeanCumulativeFunction second;
  private final Estimate<Equality> equality;

  /**
   * Whether the groups go alike over the whole stretch.
   *
   * @param statistic standard normal when they do; positive when the first group has more
   * @param twoSidedP its two-sided p
   */
  public record Equality(double statistic, double twoSidedP) {}

  private MeanComparison(
      MeanCumulativeFunction first, MeanCumulativeFunction second, Estimate<Equality> equality) {
    this.first = first;
    this.second = second;
    this.equality = equality;
  }

  /** Compares two groups; not identified where they share no day on which both are watched. */
  public static Estimate<MeanComparison> of(
      Collection<EventHistory> first, Collection<EventHistory> second, Mark mark) {
    Estimate<MeanCumulativeFunction> one = MeanCumulativeFunction.of(first, mark);
    Estimate<MeanCumulativeFunction> two = MeanCumulativeFunction.of(second, mark);
    if (!(one instanceof Estimate.Identified<MeanCumulativeFunction> a)
        || !(two instanceof Estimate.Identified<MeanCumulativeFunction> b)) {
      return Estimate.notIdentified("in one of the groups no unit was watched");
    }
    int from = Math.max(a.value().fromDay(), b.value().fromDay());
    int to = Math.min(a.value().toDay(), b.value().toDay());
    if (from >= to) {
      return Estimate.notIdentified("there is no day on which units of both groups were watched");
    }
    List<EventHistory> firstCut = cut(first, from, to);
    List<EventHistory> secondCut = cut(second, from, to);
    MeanCumulativeFunction curveOfFirst = MeanCumulativeFunction.of(firstCut, mark).orThrow();
    MeanCumulativeFunction curveOfSecond = MeanCumulativeFunction.of(secondCut, mark).orThrow();
    return Estimate.of(
        new MeanComparison(curveOfFirst, curveOfSecond, equality(firstCut, secondCut, mark)));
  }

  /** The stretch's first group. */
  public MeanCumulativeFunction first() {
    return first;
  }

  /** The stretch's second group. */
  public MeanCumulativeFunction second() {
    return second;
  }

  /** Both curves count from here. */
  public int fromDay() {
    return first.fromDay();
  }

  /** The last day that both curves are known on. */
  public int toDay() {
    return Math.min(first.toDay(), second.toDay());
  }

  /** Mean of the first group less that of the second in (fromDay, day], with a normal interval. */
  public Estimate<PointEstimate> differenceAt(int day, double level) {
    if (!(first.at(day, level) instanceof Estimate.Identified<PointEstimate> a)) {
      return first.at(day, level);
    }
    if (!(second.at(day, level) instanceof Estimate.Identified<PointEstimate> b)) {
      return second.at(day, level);
    }
    if (first.units() < 2 || second.units() < 2) {
      return Estimate.notIdentified("a group of one unit does not show how units differ");
    }
    double error = StrictMath.hypot(a.value().standardError(), b.value().standardError());
    if (error == 0) {
      return Estimate.notIdentified(
          "no two units of a group differ up to day " + day + ", so there is no scale to judge by");
    }
    double difference = a.value().value() - b.value().value();
    double margin = Confidence.z(level) * error;
    return Estimate.of(
        new PointEstimate(
            difference, error, new Interval(difference - margin, difference + margin, level)));
  }

  /**
   * The test that both means grow alike: their increments' differences, weighted by the harmonic
   * sum of the units watched, against the spread of the units' own shares in it (Cook, Lawless and
   * Nadeau 1996, from memory).
   */
  public Estimate<Equality> equality() {
    return equality;
  }

  private static Estimate<Equality> equality(
      List<EventHistory> first, List<EventHistory> second, Mark mark) {
    int[] days = eventDays(first, second);
    long[] inFirst = watched(first, days);
    long[] inSecond = watched(second, days);
    double[] weight = new double[days.length];
    for (int j = 0; j < days.length; j++) {
      double all = inFirst[j] + inSecond[j];
      weight[j] = all == 0 ? 0 : inFirst[j] * (inSecond[j] / all);
    }
    double[] a = shares(first, days, inFirst, weight, mark);
    double[] b = shares(second, days, inSecond, weight, mark);
    double variance = a[1] + b[1];
    if (!(variance > 0)) {
      return Estimate.notIdentified("no two units of a group differ, so there is no scale");
    }
    double statistic = (a[0] - b[0]) / Math.sqrt(variance);
    double tail = new NormalDistribution().cumulativeProbability(-Math.abs(statistic));
    return Estimate.of(new Equality(statistic, 2 * tail));
  }

  /** The weighted sum of a group's mean increments, and the sum of its units' squared shares. */
  private static double[] shares(
      List<EventHistory> units, int[] days, long[] watched, double[] weight, Mark mark) {
    double[] increment = new double[days.length];
    for (EventHistory unit : units) {
      for (int e = 0; e < unit.eventDays().length; e++) {
        increment[Arrays.binarySearch(days, unit.eventDays()[e])] += amount(unit, e, mark);
      }
    }
    double[] before = new double[days.length + 1];
    double sum = 0;
    for (int j = 0; j < days.length; j++) {
      double perUnit = watched[j] == 0 ? 0 : weight[j] / watched[j];
      sum += perUnit * increment[j];
      before[j + 1] = before[j] + (watched[j] == 0 ? 0 : perUnit * increment[j] / watched[j]);
    }
    double squares = 0;
    for (EventHistory unit : units) {
      double share = 0;
      for (int e = 0; e < unit.eventDays().length; e++) {
        int j = Arrays.binarySearch(days, unit.eventDays()[e]);
        share += watched[j] == 0 ? 0 : weight[j] / watched[j] * amount(unit, e, mark);
      }
      for (int s = 0; s < unit.entryDays().length; s++) {
        share -= before[upTo(days, unit.exitDays()[s])] - before[upTo(days, unit.entryDays()[s])];
      }
      squares += share * share;
    }
    return new double[] {sum, squares};
  }

  private static double amount(EventHistory unit, int event, Mark mark) {
    return mark == Mark.COUNT ? 1 : unit.marks()[event];
  }

  private static int[] eventDays(List<EventHistory> first, List<EventHistory> second) {
    return java.util.stream.Stream.concat(first.stream(), second.stream())
        .flatMapToInt(unit -> Arrays.stream(unit.eventDays()))
        .sorted()
        .distinct()
        .toArray();
  }

  /** Units watched on each of the days. */
  private static long[] watched(List<EventHistory> units, int[] days) {
    long[] change = new long[days.length + 1];
    for (EventHistory unit : units) {
      for (int s = 0; s < unit.entryDays().length; s++) {
        change[upTo(days, unit.entryDays()[s])]++;
        change[upTo(days, unit.exitDays()[s])]--;
      }
    }
    long[] watched = new long[days.length];
    long now = 0;
    for (int j = 0; j < days.length; j++) {
      now += change[j];
      watched[j] = now;
    }
    return watched;
  }

  /** How many of the ascending days are at most the day. */
  private static int upTo(int[] days, int day) {
    int at = Arrays.binarySearch(days, day);
    return at >= 0 ? at + 1 : -at - 1;
  }

  /** The units within a stretch, in an order that depends on content alone. */
  private static List<EventHistory> cut(Collection<EventHistory> units, int from, int to) {
    return units.stream()
        .map(unit -> unit.within(from, to))
        .filter(unit -> unit.entryDays().length > 0)
        .sorted(EventHistory.ORDER)
        .toList();
  }
}

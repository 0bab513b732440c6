package sealspan.stats.survival;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.InfluenceSum;
import sealspan.stats.PointEstimate;

/**
 * The curve of repeated gaps (Wang and Chang 1999, Journal of the American Statistical Association
 * 94). Units that fail often bring many short gaps, and the last gap of a unit is open because it
 * is long; pooling all gaps therefore bends the curve down. Here each unit weighs the same: its
 * complete gaps share the weight and its open gap is left out, unless it has no other. The variance
 * is that of the influences of units (infinitesimal jackknife), so gaps of one unit may depend on
 * each other. A unit's gaps are taken to have one distribution given the unit.
 */
public final class WangChang {
  private final List<UnitGaps> units;
  private final Gaps gaps;
  private final SurvivalCurve curve;
  private final double[] atRisk;
  private final double[] ended;

  private WangChang(List<UnitGaps> units) {
    this.units = units;
    gaps = new Gaps(units);
    atRisk = new double[gaps.stepDays.length];
    ended = new double[atRisk.length];
    double fewest = weighSteps();
    double[] ones = new double[atRisk.length];
    Arrays.fill(ones, 1);
    curve =
        new SurvivalCurve(0, gaps.longest, fewest, gaps.stepDays, atRisk, ended, influences(ones));
  }

  /** The curve; not identified when no unit was watched for a day. */
  public static Estimate<WangChang> of(Collection<UnitGaps> units) {
    List<UnitGaps> watched =
        units.stream()
            .filter(unit -> unit.completeDays().length > 0 || unit.openDays() > 0)
            .sorted(UnitGaps.ORDER)
            .toList();
    return watched.isEmpty()
        ? Estimate.notIdentified("no unit was watched for a day")
        : Estimate.of(new WangChang(watched));
  }

  /** The curve; weights of all gaps of a unit sum to 1. */
  public SurvivalCurve curve() {
    return curve;
  }

  /** Units used. */
  public int units() {
    return units.size();
  }

  /** Gaps used. */
  public int gaps() {
    return gaps.keys.length;
  }

  /** Complete gaps used. */
  public int completeGaps() {
    return gaps.complete;
  }

  /**
   * Mean gap restricted to (0, day], in days: the area under the curve, with a variance that takes
   * the unit as the sample. Not identified beyond the known days.
   */
  public Estimate<PointEstimate> restrictedMean(int day, double level) {
    String unknown = curve.areaUnknown(day);
    if (unknown != null) {
      return Estimate.notIdentified(unknown);
    }
    double[] sums = influences(curve.areasFromSteps(day));
    double variance = sums.length == 0 ? 0 : sums[sums.length - 1];
    return Estimate.of(RestrictedMeans.estimate(curve.areaTo(day), variance, day, level));
  }

  /**
   * Weighted counts at each step, summed from the longest gap down so that nothing is subtracted.
   */
  private double weighSteps() {
    double sum = 0;
    int step = atRisk.length - 1;
    int left = 0;
    double beforeFirst = Double.POSITIVE_INFINITY;
    for (int i = gaps.keys.length - 1; i >= 0; i--) {
      int gap = (int) gaps.keys[i];
      int day = (int) (gaps.keys[i] >> 32);
      sum += gaps.weight(gap);
      left++;
      boolean lastOfDay = i == 0 || (int) (gaps.keys[i - 1] >> 32) != day;
      if (lastOfDay && step >= 0 && gaps.stepDays[step] == day) {
        atRisk[step] = sum;
        ended[step] = gaps.endsOn(day, i, sum, left);
        step--;
      }
      if (lastOfDay && step < 0) {
        beforeFirst = Math.min(beforeFirst, sum);
      }
    }
    return beforeFirst;
  }

  /**
   * For each step, the sum over units of squared influences on the sum up to it of factor x log(1 -
   * ended / at risk).
   */
  private double[] influences(double[] factor) {
    InfluenceSum sum = new InfluenceSum(units.size());
    int[] left = new int[units.size()];
    for (int u = 0; u < left.length; u++) {
      left[u] = gaps.perUnit[u];
      sum.weigh(u, 1);
    }
    double[] squares = new double[atRisk.length];
    int next = 0;
    for (int j = 0; j < squares.length; j++) {
      next = retire(next, gaps.stepDays[j], left, sum);
      double stay = atRisk[j] - ended[j];
      if (stay > 0) {
        for (int i = next; i < gaps.keys.length && gaps.day(i) == gaps.stepDays[j]; i++) {
          int gap = (int) gaps.keys[i];
          if (gaps.complete(gap)) {
            sum.raise(gaps.unit[gap], factor[j] * gaps.weight(gap) / stay);
          }
        }
        sum.lowerAll(factor[j] * ended[j] / atRisk[j] / stay);
      }
      squares[j] = sum.sumOfSquares();
    }
    return squares;
  }

  /** Takes gaps shorter than the day out of the units' weights. */
  private int retire(int from, int day, int[] left, InfluenceSum sum) {
    int next = from;
    while (next < gaps.keys.length && gaps.day(next) < day) {
      int unit = gaps.unit[(int) gaps.keys[next]];
      left[unit]--;
      sum.weigh(unit, (double) left[unit] / gaps.perUnit[unit]);
      next++;
    }
    return next;
  }

  /** The gaps in use as flat arrays, in an order that depends on content alone. */
  private static final class Gaps {
    private final int[] perUnit;
    private final int[] unit;
    private final boolean[] ends;
    private final long[] keys;
    private final int[] stepDays;
    private final int complete;
    private final int longest;

    Gaps(List<UnitGaps> units) {
      perUnit = new int[units.size()];
      int total = 0;
      int completeCount = 0;
      for (int u = 0; u < perUnit.length; u++) {
        int own = units.get(u).completeDays().length;
        completeCount += own;
        perUnit[u] = Math.max(1, own);
        total += perUnit[u];
      }
      complete = completeCount;
      unit = new int[total];
      ends = new boolean[total];
      keys = new long[total];
      int gap = 0;
      for (int u = 0; u < perUnit.length; u++) {
        int[] days = units.get(u).completeDays();
        for (int k = 0; k < perUnit[u]; k++) {
          unit[gap] = u;
          ends[gap] = days.length > 0;
          int day = ends[gap] ? days[k] : units.get(u).openDays();
          keys[gap] = (long) day << 32 | gap;
          gap++;
        }
      }
      Arrays.sort(keys);
      longest = day(total - 1);
      stepDays =
          Arrays.stream(keys)
              .filter(key -> ends[(int) key])
              .mapToInt(key -> (int) (key >> 32))
              .distinct()
              .toArray();
    }

    private int day(int position) {
      return (int) (keys[position] >> 32);
    }

    private boolean complete(int gap) {
      return ends[gap];
    }

    private double weight(int gap) {
      return 1.0 / perUnit[unit[gap]];
    }

    /**
     * Weight of the gaps that end on a day, or all of the weight at risk when every gap left does.
     */
    private double endsOn(int day, int first, double allWeight, int allGaps) {
      double sum = 0;
      int count = 0;
      for (int i = first; i < keys.length && day(i) == day; i++) {
        int gap = (int) keys[i];
        sum += ends[gap] ? weight(gap) : 0;
        count += ends[gap] ? 1 : 0;
      }
      return count == allGaps ? allWeight : sum;
    }
  }
}

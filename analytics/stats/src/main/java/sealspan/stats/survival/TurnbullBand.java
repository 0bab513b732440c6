package sealspan.stats.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.SplittableRandom;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;

/**
 * Pointwise intervals around a {@link Turnbull} curve, by drawing lives anew with replacement and
 * fitting again (percentiles). On each day the lower limit rests on what surely lasts and the upper
 * on what may last, so the room that the data leave open is part of the interval. Where no life was
 * seen to end by a day, the lower limit is at most tail^(1/n), n the lives known to go on to it.
 *
 * <p>The curve converges at the rate n^(1/3) or, where tests fall on few days, n^(1/2). Of more
 * than {@value #MOST_DRAWN} lives so many are drawn each time, and the deviations are shrunk by
 * (drawn / n)^(1/3), which is right at the slower rate and too wide at the faster one. Draws depend
 * on the lives alone, not on their order. Lives of one unit are not independent: use first lives
 * only.
 */
public final class TurnbullBand {
  static final int MOST_DRAWN = 1_000;
  private static final int DRAWS = 200;
  private static final long SEED = 20_260_103L;

  private final int[] days;
  private final Interval[] intervals;

  private TurnbullBand(int[] days, Interval[] intervals) {
    this.days = days;
    this.intervals = intervals;
  }

  /**
   * The intervals on some days; not identified when the curve is not.
   *
   * @param days days on which they are wanted, ascending
   */
  public static Estimate<TurnbullBand> of(
      Collection<Lifetime> lifetimes, int[] days, double level) {
    double tail = Confidence.tail(level);
    Estimate<Turnbull> curve = Turnbull.of(lifetimes);
    if (!(curve instanceof Estimate.Identified<Turnbull> whole)) {
      return Estimate.notIdentified(((Estimate.NotIdentified<Turnbull>) curve).because());
    }
    List<Lifetime> lives = WatchedGroup.of(lifetimes).lives();
    Draws draws = new Draws(lives, days, whole.value().fromDay());
    double shrink = Math.cbrt((double) draws.drawn / draws.all);
    Interval[] intervals = new Interval[days.length];
    double before = 1;
    double mostBefore = 1;
    for (int i = 0; i < days.length; i++) {
      Estimate<Turnbull.Known> here = whole.value().at(days[i]);
      if (!(here instanceof Estimate.Identified<Turnbull.Known> known)) {
        intervals[i] = new Interval(0, 1, level);
        continue;
      }
      double least = known.value().atLeast();
      double most = known.value().atMost();
      double lower = least + shrink * (percentile(draws.least[i], tail) - least);
      double upper = most + shrink * (percentile(draws.most[i], 1 - tail) - most);
      if (least == 1) {
        lower = Math.min(lower, StrictMath.pow(tail, 1.0 / goingOn(lives, days[i])));
      }
      before = Math.max(0, Math.min(before, Math.min(lower, least)));
      mostBefore = Math.min(mostBefore, Math.max(upper, most));
      intervals[i] = new Interval(before, Math.max(mostBefore, before), level);
    }
    return Estimate.of(new TurnbullBand(days.clone(), intervals));
  }

  /** Lives known to go on to a day; at least 1, because the curve is known only so far. */
  private static long goingOn(List<Lifetime> lives, int day) {
    long sum = 0;
    for (Lifetime life : lives) {
      sum += life.lowerDay() >= day ? life.count() : 0;
    }
    return Math.max(1, sum);
  }

  private static double percentile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double place = share * (sorted.length + 1) - 1;
    int below = (int) Math.max(0, Math.min(sorted.length - 2, Math.floor(place)));
    double part = Math.max(0, Math.min(1, place - below));
    return sorted[below] + part * (sorted[below + 1] - sorted[below]);
  }

  /** The days. */
  public int[] days() {
    return days.clone();
  }

  /** The interval of the share that lasts beyond a day. */
  public Interval at(int index) {
    return intervals[index];
  }

  /** Shares on the days, from every draw. */
  private static final class Draws {
    private final long all;
    private final int drawn;
    private final double[][] least;
    private final double[][] most;

    Draws(List<Lifetime> lives, int[] days, int fromDay) {
      long[] upTo = new long[lives.size()];
      long sum = 0;
      for (int i = 0; i < upTo.length; i++) {
        sum += lives.get(i).count();
        upTo[i] = sum;
      }
      all = sum;
      drawn = (int) Math.min(sum, MOST_DRAWN);
      least = new double[days.length][DRAWS];
      most = new double[days.length][DRAWS];
      SplittableRandom random = new SplittableRandom(SEED);
      for (int d = 0; d < DRAWS; d++) {
        Estimate<Turnbull> again = Turnbull.of(draw(lives, upTo, random));
        for (int i = 0; i < days.length; i++) {
          boolean seen = days[i] >= fromDay && again instanceof Estimate.Identified<Turnbull>;
          // A draw that says nothing of a day leaves everything open there.
          Estimate<Turnbull.Known> known =
              seen ? again.orThrow().at(days[i]) : Estimate.notIdentified("not drawn");
          least[i][d] =
              known instanceof Estimate.Identified<Turnbull.Known> k ? k.value().atLeast() : 0;
          most[i][d] =
              known instanceof Estimate.Identified<Turnbull.Known> k ? k.value().atMost() : 1;
        }
      }
    }

    private List<Lifetime> draw(List<Lifetime> lives, long[] upTo, SplittableRandom random) {
      int[] picked = new int[drawn];
      for (int k = 0; k < drawn; k++) {
        int at = Arrays.binarySearch(upTo, random.nextLong(all) + 1);
        picked[k] = at >= 0 ? first(upTo, at) : -at - 1;
      }
      Arrays.sort(picked);
      List<Lifetime> again = new ArrayList<>();
      int start = 0;
      for (int k = 1; k <= drawn; k++) {
        if (k == drawn || picked[k] != picked[start]) {
          again.add(lives.get(picked[start]).times(k - start));
          start = k;
        }
      }
      return again;
    }

    private static int first(long[] upTo, int at) {
      int i = at;
      while (i > 0 && upTo[i - 1] == upTo[at]) {
        i--;
      }
      return i;
    }
  }
}

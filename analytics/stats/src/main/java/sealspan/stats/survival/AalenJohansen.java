package sealspan.stats.survival;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * The share of independent lives that have ended for each of several reasons by a day, where each
 * reason ends a life once and for all (Aalen and Johansen 1978). The shares of all reasons and the
 * share that goes on, which is that of {@link KaplanMeier}, sum to 1. One minus a Kaplan-Meier
 * curve of one reason alone would be larger: it imagines that the other reasons did not exist.
 *
 * <p>Lives are at risk over (entry, day]. With late entry the curve covers the stretch that {@link
 * KaplanMeier} covers and is conditional on lasting to its start.
 */
public final class AalenJohansen {
  private final KaplanMeier any;
  private final int[] days;
  private final double[][] ended;
  private final double[][] incidence;
  private final double[][] variance;
  private final long[] total;

  private AalenJohansen(KaplanMeier any, Collection<EndedLife> lives, int reasons) {
    this.any = any;
    days = any.curve().days();
    ended = new double[reasons][days.length];
    total = new long[reasons];
    for (EndedLife life : lives) {
      int step = Arrays.binarySearch(days, life.day());
      if (life.reason() >= 0
          && life.day() > life.entryDay()
          && step >= 0
          && life.entryDay() < any.curve().toDay()) {
        ended[life.reason()][step] += life.count();
        total[life.reason()] += life.count();
      }
    }
    incidence = new double[reasons][days.length];
    variance = new double[reasons][days.length];
    for (int k = 0; k < reasons; k++) {
      sweep(k);
    }
  }

  /**
   * The curves; not identified when no life was at risk for a day.
   *
   * @param reasons number of reasons; those of the lives are below it
   */
  public static Estimate<AalenJohansen> of(Collection<EndedLife> lives, int reasons) {
    for (EndedLife life : lives) {
      if (life.reason() >= reasons) {
        throw new IllegalArgumentException(
            "there are " + reasons + " reasons, but a life has reason " + life.reason());
      }
    }
    List<Lifetime> any = lives.stream().map(EndedLife::lifetime).toList();
    Estimate<KaplanMeier> curve = KaplanMeier.of(any);
    return curve instanceof Estimate.Identified<KaplanMeier> found
        ? Estimate.of(new AalenJohansen(found.value(), lives, reasons))
        : Estimate.notIdentified(((Estimate.NotIdentified<KaplanMeier>) curve).because());
  }

  /**
   * One pass. A chance more at step s for reason k adds to the share of k by S(s-), and the chance
   * that all ends take away there, d / r, lowers what follows by (C(t) - C(s)) / (1 - d / r); the
   * increments of one day are multinomial. The variance is quadratic in C(t), so three sums do.
   */
  private void sweep(int k) {
    double[] atRisk = any.curve().atRisk();
    double[] allEnded = any.curve().ended();
    double[] survival = any.curve().survival();
    double before = 1;
    double share = 0;
    double own = 0;
    double[] cross = new double[2];
    double[] after = new double[3];
    for (int j = 0; j < days.length; j++) {
      double r = atRisk[j];
      double d = allEnded[j];
      double dk = ended[k][j];
      share += before * dk / r;
      incidence[k][j] = share;
      own += before * before * dk * (r - dk) / r / r / r;
      double tie = before * dk / r / r;
      cross[0] += tie;
      cross[1] += tie * share;
      if (d < r) {
        double spread = d / r / (r - d);
        after[0] += spread;
        after[1] += spread * share;
        after[2] += spread * share * share;
      }
      double sum =
          own
              - 2 * (share * cross[0] - cross[1])
              + share * share * after[0]
              - 2 * share * after[1]
              + after[2];
      variance[k][j] = Math.max(0, sum);
      before = survival[j];
    }
  }

  /** The curve of lives that go on, whatever the reason. */
  public KaplanMeier any() {
    return any;
  }

  /** The days on which lives ended, ascending. */
  public int[] days() {
    return days.clone();
  }

  /** Lives that ended for a reason, on those days. */
  public double[] ended(int reason) {
    return ended[reason].clone();
  }

  /** Lives that ended for a reason in the stretch of the curve. */
  public long total(int reason) {
    return total[reason];
  }

  /** The share that has ended for a reason, on those days. */
  public double[] incidence(int reason) {
    return incidence[reason].clone();
  }

  /** Variance of that share, on those days. */
  public double[] variance(int reason) {
    return variance[reason].clone();
  }

  /**
   * The share that has ended for a reason by a day, with an interval on the log-minus-log scale of
   * one minus it. Before the first such end the upper limit is that of any reason: a share for one
   * reason cannot be larger. Not identified outside the known days, unless all have ended.
   */
  public Estimate<PointEstimate> incidence(int reason, int day, double level) {
    Estimate<PointEstimate> going = any.curve().at(day, level);
    if (!(going instanceof Estimate.Identified<PointEstimate> on)) {
      return going;
    }
    int index = Arrays.binarySearch(days, day);
    int step = index >= 0 ? index : -index - 2;
    double share = step < 0 ? 0 : incidence[reason][step];
    double error = step < 0 ? 0 : Math.sqrt(variance[reason][step]);
    double most = 1 - on.value().interval().lower();
    if (share == 0 || share >= 1 || error == 0) {
      return Estimate.of(
          new PointEstimate(
              share,
              error,
              new Interval(
                  share == 0 ? 0 : Math.min(share, 1 - on.value().interval().upper()),
                  Math.max(share, most),
                  level)));
    }
    double log = StrictMath.log1p(-share);
    double width = Confidence.z(level) * error / ((1 - share) * -log);
    return Estimate.of(
        new PointEstimate(
            share,
            error,
            new Interval(
                -StrictMath.expm1(log * StrictMath.exp(-width)),
                -StrictMath.expm1(log * StrictMath.exp(width)),
                level)));
  }
}

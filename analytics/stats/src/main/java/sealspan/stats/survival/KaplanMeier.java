package sealspan.stats.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * The product-limit curve (Kaplan and Meier 1958) of independent lives with known ends or open ones
 * and late entry, with Greenwood's variance, and the cumulative hazard of Nelson and Aalen. A life
 * is at risk over (entry, exit]; on one day ends come before open exits. Repeated lives of one unit
 * are not independent: see {@link WangChang}.
 *
 * <p>With late entry the first lives at risk can all end while others are still to come, and the
 * curve would stick at 0; or nobody is at risk for a while. Then the curve covers the stretch with
 * most ends and, unless that is the first, begins on its first day with {@value
 * RiskTable#FEWEST_AT_RESTART} lives at risk, conditional on lasting to that day; {@link #caution}
 * says so.
 */
public final class KaplanMeier {
  private final SurvivalCurve curve;
  private final RiskTable.Stretch stretch;
  private final long lives;
  private final long used;
  private final double[] hazard;
  private final double[] hazardVariance;
  private final double[] greenwood;

  private KaplanMeier(Collection<Lifetime> lifetimes, RiskTable.Stretch stretch, Sweep sweep) {
    this.stretch = stretch;
    long all = 0;
    long inside = 0;
    for (Lifetime life : lifetimes) {
      all += life.count();
      boolean seen =
          life.lowerDay() > life.entryDay()
              && life.lowerDay() > stretch.fromDay()
              && life.entryDay() < stretch.toDay();
      inside += seen ? life.count() : 0;
    }
    lives = all;
    used = inside;
    hazard = sweep.hazard;
    hazardVariance = sweep.hazardVariance;
    greenwood = sweep.greenwood;
    curve =
        new SurvivalCurve(
            stretch.fromDay(),
            stretch.toDay(),
            sweep.fewest,
            sweep.days,
            sweep.atRisk,
            sweep.ended,
            sweep.greenwood);
  }

  /** The curve of these lives; not identified when no life was at risk for a day. */
  public static Estimate<KaplanMeier> of(Collection<Lifetime> lifetimes) {
    for (Lifetime life : lifetimes) {
      if (!life.exact() && !life.open()) {
        throw new IllegalArgumentException(
            "this curve needs known or open ends, but one life ended between day "
                + life.lowerDay()
                + " and day "
                + life.upperDay()
                + "; fit a Weibull curve instead");
      }
    }
    RiskTable table = new RiskTable(lifetimes);
    if (table.empty()) {
      return Estimate.notIdentified("no life was at risk for a day");
    }
    RiskTable.Stretch stretch = table.stretch();
    return Estimate.of(new KaplanMeier(lifetimes, stretch, new Sweep(table.steps(stretch))));
  }

  /** The curve of the lives that lasted to a day, from that day on. */
  public static Estimate<KaplanMeier> conditionalOn(int day, Collection<Lifetime> lifetimes) {
    List<Lifetime> later = new ArrayList<>();
    for (Lifetime life : lifetimes) {
      if (life.lowerDay() > day) {
        later.add(
            new Lifetime(
                Math.max(day, life.entryDay()), life.lowerDay(), life.upperDay(), life.count()));
      }
    }
    return of(later);
  }

  /** The curve. */
  public SurvivalCurve curve() {
    return curve;
  }

  /** Lives given. */
  public long lives() {
    return lives;
  }

  /** Lives given but never at risk in the stretch of the curve. */
  public long leftOut() {
    return lives - used;
  }

  /** What the reader must know before using the curve; empty when nothing. */
  public String caution() {
    if (curve.fromDay() == 0) {
      return "";
    }
    String condition = "conditional on lasting to day " + curve.fromDay();
    return stretch.restarted()
        ? condition + ", because too few lives were at risk before it"
        : condition + ", because nobody was watched before it";
  }

  /**
   * The cumulative hazard up to a day (Nelson 1972, Aalen 1978; variance sum of ended / at risk
   * squared), with an interval on the logarithmic scale; without ends, from 0 to -ln(tail) / n, n
   * the fewest lives at risk.
   */
  public Estimate<PointEstimate> cumulativeHazard(int day, double level) {
    if (!(curve.at(day, level) instanceof Estimate.Identified<PointEstimate> share)) {
      return curve.at(day, level);
    }
    int index = Arrays.binarySearch(curve.days(), day);
    int step = index >= 0 ? index : -index - 2;
    if (step < 0) {
      double upper = -StrictMath.log(share.value().interval().lower());
      return Estimate.of(new PointEstimate(0, 0, new Interval(0, upper, level)));
    }
    double error = Math.sqrt(hazardVariance[step]);
    double factor = StrictMath.exp(Confidence.z(level) * error / hazard[step]);
    return Estimate.of(
        new PointEstimate(
            hazard[step],
            error,
            new Interval(hazard[step] / factor, hazard[step] * factor, level)));
  }

  /**
   * Mean life restricted to (fromDay, day], in days: the area under the curve, with the variance
   * sum of A squared x ended / (at risk x (at risk - ended)), A the area beyond each step; interval
   * value +- z se, kept within the stretch. Not identified beyond the known days.
   */
  public Estimate<PointEstimate> restrictedMean(int day, double level) {
    String unknown = curve.areaUnknown(day);
    if (unknown != null) {
      return Estimate.notIdentified(unknown);
    }
    double[] areas = curve.areasFromSteps(day);
    double variance = 0;
    for (int j = 0; j < areas.length; j++) {
      // Beyond a step that takes the curve to 0 there is no area, so its infinite term is 0.
      if (areas[j] > 0) {
        variance += areas[j] * areas[j] * (greenwood[j] - (j == 0 ? 0 : greenwood[j - 1]));
      }
    }
    return Estimate.of(
        RestrictedMeans.estimate(
            curve.areaTo(day), variance, (double) day - curve.fromDay(), level));
  }

  /** One pass over the days of the stretch. */
  private static final class Sweep {
    private final int[] days;
    private final double[] atRisk;
    private final double[] ended;
    private final double[] greenwood;
    private final double[] hazard;
    private final double[] hazardVariance;
    private final double fewest;

    Sweep(RiskTable.Steps steps) {
      days = steps.days();
      fewest = steps.fewestBeforeFirstEnd();
      int n = days.length;
      atRisk = new double[n];
      ended = new double[n];
      greenwood = new double[n];
      hazard = new double[n];
      hazardVariance = new double[n];
      double g = 0;
      double h = 0;
      double v = 0;
      for (int j = 0; j < n; j++) {
        double r = steps.atRisk()[j];
        double d = steps.ended()[j];
        atRisk[j] = r;
        ended[j] = d;
        g += d < r ? d / r / (r - d) : 0;
        h += d / r;
        v += d / r / r;
        greenwood[j] = g;
        hazard[j] = h;
        hazardVariance[j] = v;
      }
    }
  }
}

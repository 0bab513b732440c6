package sealspan.stats.watch;

import java.util.Arrays;
import java.util.Optional;

/**
 * A mixture of Shiryaev-Roberts sums over pairs of a zone and a multiplier of the probability:
 * {1.5, 2.5, 4}. A test with probability p of a case counts in each zone that it lies in by the
 * likelihood ratio of q = min(multiplier p, .9) to p, and by 1 elsewhere; the sum of a pair becomes
 * (1 + sum) times that ratio. An alarm is raised when the mean of the sums, weighted, reaches the
 * threshold.
 *
 * <p>If every probability is right given what was known before its test, or too high, the mean
 * grows by 1 a test at most, so the mean number of tests to a false alarm is at least the threshold
 * (Shin, Ramdas and Rinaldo, E-detectors, New England Journal of Statistics in Data Science 2023;
 * for zones Assuncao and Correa 2009, Computational Statistics and Data Analysis 53:2817; both from
 * memory). Where probabilities are too low the promise does not hold.
 *
 * <p>After an alarm all evidence starts anew from nothing, so the same holds for the number of
 * tests from one alarm to the next, and what goes on is said again.
 *
 * <p>A zone costs nothing while no test lies in it: its sum is brought up to date by the count of
 * tests when one does. Only products, quotients and sums in a fixed order are used, so a run over
 * the same tests gives the same bits everywhere.
 */
public final class MixtureWatch {
  private static final double[] MULTIPLIERS = {1.5, 2.5, 4};
  private static final double LARGEST = 0.9;

  /** Pairs of a zone. */
  private static final int PAIRS = MULTIPLIERS.length;

  private final double[] weight;
  private final double totalWeight;
  private final double threshold;

  /** Sum of each pair when its zone was last touched, and after how many tests that was. */
  private final double[] sum;

  private final long[] touched;

  /** Largest likelihood ratio over all starts of each pair, and what was seen since the best. */
  private final double[] best;

  private final long[] since;
  private final int[] inZone;
  private final int[] cases;
  private final double[] expected;

  private double evidence;
  private long tests;
  private long testsBefore;

  /**
   * A watch that has seen nothing.
   *
   * @param weight weight of each zone, not negative; together 1, or 0 where there is no zone
   * @param threshold mean number of tests to a false alarm that is promised, at least 1
   */
  public MixtureWatch(double[] weight, double threshold) {
    double total = 0;
    for (double w : weight) {
      if (!(w >= 0)) {
        throw new IllegalArgumentException("the weight of a zone is " + w);
      }
      total += w;
    }
    if (weight.length > 0 && Math.abs(total - 1) > 1e-9 || !(threshold >= 1)) {
      throw new IllegalArgumentException("weights of " + total + ", threshold " + threshold);
    }
    this.weight = weight.clone();
    this.totalWeight = total;
    this.threshold = threshold;
    int pairs = PAIRS * weight.length;
    this.sum = new double[pairs];
    this.touched = new long[weight.length];
    this.best = new double[pairs];
    this.since = new long[pairs];
    this.inZone = new int[pairs];
    this.cases = new int[pairs];
    this.expected = new double[pairs];
  }

  /** A watch that stands where this one does and goes its own way from there. */
  public MixtureWatch copy() {
    MixtureWatch copy = new MixtureWatch(weight, threshold);
    for (int zone = 0; zone < weight.length; zone++) {
      copy.take(this, zone, zone, 1);
    }
    copy.evidence = evidence;
    copy.tests = tests;
    copy.testsBefore = testsBefore;
    return copy;
  }

  /**
   * The same watch over other zones, which were chosen by what was known so far. A zone that was
   * watched before keeps its evidence, weighed as it was; that of zones given up is lost. So the
   * evidence does not grow, and the promise holds on.
   *
   * @param weight weight of each zone, as in the constructor
   * @param before number of each zone until now; -1 for a new one
   * @param threshold the threshold from now on
   */
  public MixtureWatch over(double[] weight, int[] before, double threshold) {
    MixtureWatch next = new MixtureWatch(weight, threshold);
    next.tests = tests;
    next.testsBefore = testsBefore;
    for (int zone = 0; zone < weight.length; zone++) {
      if (before[zone] >= 0 && weight[zone] > 0) {
        next.take(this, zone, before[zone], this.weight[before[zone]] / weight[zone]);
      } else {
        next.touched[zone] = tests;
      }
      next.evidence += weight[zone] / PAIRS * next.sumOf(zone);
    }
    return next;
  }

  private void take(MixtureWatch from, int zone, int fromZone, double scale) {
    boolean same = scale == 1;
    touched[zone] = same ? from.touched[fromZone] : from.tests;
    for (int k = 0; k < PAIRS; k++) {
      int to = PAIRS * zone + k;
      int at = PAIRS * fromZone + k;
      sum[to] = same ? from.sum[at] : scale * (from.sum[at] + from.tests - from.touched[fromZone]);
      best[to] = from.best[at];
      since[to] = from.since[at];
      inZone[to] = from.inZone[at];
      cases[to] = from.cases[at];
      expected[to] = from.expected[at];
    }
  }

  /**
   * Takes in a test.
   *
   * @param zones the zones that it lies in, each once; none where it lies outside all
   * @param probability probability of a case, fixed before the outcome was known, between 0 and 1,
   *     ends excluded
   * @param found whether a case was found
   * @return the alarm, if it raises one
   */
  public Optional<Raised> observe(int[] zones, double probability, boolean found) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException("a case with probability " + probability);
    }
    tests++;
    evidence += totalWeight;
    for (int zone : zones) {
      double more = 0;
      for (int k = 0; k < PAIRS; k++) {
        more += touch(zone, k, ratio(MULTIPLIERS[k], probability, found), probability, found);
      }
      touched[zone] = tests;
      evidence += weight[zone] / PAIRS * more;
    }
    if (!(evidence >= threshold)) {
      return Optional.empty();
    }
    Raised raised = raised();
    restart();
    return Optional.of(raised);
  }

  /** Brings a pair up to date; returns by how much its sum is more than 1 + the one before. */
  private double touch(int zone, int k, double ratio, double probability, boolean found) {
    int pair = PAIRS * zone + k;
    double before = sum[pair] + (tests - 1 - touched[zone]) + 1;
    sum[pair] = before * ratio;
    if (!(best[pair] > 1)) {
      best[pair] = 1;
      since[pair] = tests;
      inZone[pair] = 0;
      cases[pair] = 0;
      expected[pair] = 0;
    }
    best[pair] *= ratio;
    inZone[pair]++;
    cases[pair] += found ? 1 : 0;
    expected[pair] += probability;
    return sum[pair] - before;
  }

  /** The bet on a case; 1 where p is so high already that there is nothing to bet on. */
  private static double ratio(double multiplier, double p, boolean found) {
    double q = Math.max(p, Math.min(multiplier * p, LARGEST));
    return found ? q / p : (1 - q) / (1 - p);
  }

  private Raised raised() {
    int zone = 0;
    double most = -1;
    for (int z = 0; z < weight.length; z++) {
      double carried = weight[z] / PAIRS * sumOf(z);
      if (carried > most) {
        most = carried;
        zone = z;
      }
    }
    int pair = PAIRS * zone;
    for (int k = 1; k < PAIRS; k++) {
      if (sum[PAIRS * zone + k] > sum[pair]) {
        pair = PAIRS * zone + k;
      }
    }
    boolean seen = best[pair] > 0; // A zone taken over was brought up to date, not tested.
    return new Raised(
        tests,
        tests - testsBefore,
        evidence,
        zone,
        MULTIPLIERS[pair - PAIRS * zone],
        most / evidence,
        seen ? since[pair] : tests,
        seen ? inZone[pair] : 0,
        seen ? cases[pair] : 0,
        seen ? expected[pair] : 0);
  }

  private double sumOf(int zone) {
    double all = PAIRS * (double) (tests - touched[zone]);
    for (int k = 0; k < PAIRS; k++) {
      all += sum[PAIRS * zone + k];
    }
    return all;
  }

  private void restart() {
    evidence = 0;
    testsBefore = tests;
    for (int zone = 0; zone < weight.length; zone++) {
      touched[zone] = tests;
    }
    Arrays.fill(sum, 0);
    Arrays.fill(best, 0);
  }

  /** The evidence so far, below the threshold; after n quiet tests it is expected to be n. */
  public double evidence() {
    return evidence;
  }

  /** Tests since the watch began. */
  public long tests() {
    return tests;
  }

  /** Tests since the watch began or since the last alarm. */
  public long testsSinceAlarm() {
    return tests - testsBefore;
  }

  /** Mean number of tests to a false alarm that is promised. */
  public double threshold() {
    return threshold;
  }
}

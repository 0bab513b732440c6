package sealspan.stats.survival;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;

/**
 * The curve of lives whose ends are known only to lie between two days (Turnbull 1976), without any
 * shape taken for granted: the non-parametric maximum of the likelihood for known, open, enclosed
 * and early ends and late entry. A life is at risk over (entry, exit]; an end on day R belongs to
 * (L, R].
 *
 * <p>The data fix only how much mass lies in each of a few {@link Box boxes}, not where in the box:
 * inside a box the curve is somewhere between its two edges, and beyond the last day on which
 * anybody was known to go on nothing is known. Seen from the start alone and without enclosed ends
 * it is the curve of {@link KaplanMeier}.
 *
 * <p>With late entry see {@link WatchedGroup}: when the first lives all end before others enter,
 * the curve is conditional on lasting to a later day; {@link #caution} says so. A sample that holds
 * only lives that ended before some day (right truncation) cannot be expressed by {@link Lifetime}
 * and gives too short lives here. Lives of one unit are not independent: use first lives only.
 */
public final class Turnbull {
  private static final double SPURIOUS = 1e-10;
  private static final double CONVERGED = 1e-8;

  private final WatchedGroup group;
  private final List<Box> boxes;
  private final int fromDay;
  private final int toDay;
  private final double logLikelihood;
  private final double gap;
  private final int rounds;
  private final KaplanMeier known;

  /**
   * A stretch of days in which mass lies, nobody knows where.
   *
   * @param afterDay the ends come after this day; the day of the ends where it is known
   * @param notAfterDay and not after this one, or {@link Lifetime#NEVER}
   * @param share share of all lives that lasted to the start of the curve
   */
  public record Box(int afterDay, int notAfterDay, double share) {
    /** The day of the ends is known. */
    public boolean exact() {
      return afterDay == notAfterDay;
    }

    /** The ends were not seen. */
    public boolean open() {
      return notAfterDay == Lifetime.NEVER;
    }
  }

  /** What is known of the share that lasts beyond a day: both limits belong to it. */
  public record Known(double atLeast, double atMost) {}

  /** The largest distance of another curve from this one, and the day where it is. */
  public record Distance(int day, double share) {}

  private Turnbull(WatchedGroup group, KaplanMeier known) {
    this.group = group;
    this.known = known;
    SurvivalCurve curve = known.curve();
    List<Box> found = new ArrayList<>();
    double before = 1;
    double value = 0;
    for (int j = 0; j < curve.days().length; j++) {
      double after = curve.survival()[j];
      double ended = curve.ended()[j];
      double stay = curve.atRisk()[j] - ended;
      found.add(new Box(curve.days()[j], curve.days()[j], before - after));
      value += ended * StrictMath.log(ended / curve.atRisk()[j]);
      value += stay > 0 ? stay * StrictMath.log(stay / curve.atRisk()[j]) : 0;
      before = after;
    }
    if (before > 0) {
      found.add(new Box(curve.toDay(), Lifetime.NEVER, before));
    }
    boxes = List.copyOf(found);
    fromDay = curve.fromDay();
    toDay = curve.toDay();
    logLikelihood = value;
    gap = 0;
    rounds = 0;
  }

  private Turnbull(WatchedGroup group, TurnbullCells cells, TurnbullAscent top) {
    this.group = group;
    known = null;
    logLikelihood = top.value();
    gap = top.gap();
    rounds = top.rounds();
    int beginning = group.beginning();
    int first = 1;
    while (!group.first() && first < cells.size() && cells.from(first) / 2 < beginning) {
      first++;
    }
    fromDay = first == 1 ? beginning : Math.max(beginning, day(cells.to(first - 1)));
    boxes = boxes(cells, top.share(), first);
    Box last = boxes.get(boxes.size() - 1);
    toDay = last.open() ? last.afterDay : last.notAfterDay;
  }

  private static List<Box> boxes(TurnbullCells cells, double[] share, int first) {
    List<Box> found = new ArrayList<>();
    double whole = 0;
    for (int j = first; j <= cells.size(); j++) {
      double mass = share[j - 1] - share[j];
      if (mass > SPURIOUS * share[j - 1]) {
        found.add(new Box(day(cells.from(j)), day(cells.to(j)), mass));
        whole += mass;
      }
    }
    List<Box> scaled = new ArrayList<>(found.size());
    for (Box box : found) {
      scaled.add(new Box(box.afterDay, box.notAfterDay, box.share / whole));
    }
    return List.copyOf(scaled);
  }

  private static int day(long key) {
    return key == TurnbullCells.NEVER ? Lifetime.NEVER : Math.toIntExact(key / 2);
  }

  /** Fits the curve, or says why these lives do not fix one. */
  public static Estimate<Turnbull> of(Collection<Lifetime> lifetimes) {
    WatchedGroup group = WatchedGroup.of(lifetimes);
    if (group.lives().isEmpty()) {
      return Estimate.notIdentified("no life was watched for a day");
    }
    if (lifetimes.stream().allMatch(life -> life.exact() || life.open())) {
      return Estimate.of(new Turnbull(group, KaplanMeier.of(lifetimes).orThrow()));
    }
    TurnbullCells cells = new TurnbullCells(group.lives());
    TurnbullAscent top = new TurnbullAscent(new TurnbullLikelihood(cells));
    return Estimate.of(new Turnbull(group, cells, top));
  }

  /** The boxes that hold mass, in order of time; their shares sum to 1. */
  public List<Box> boxes() {
    return boxes;
  }

  /** The curve is conditional on lasting to this day. */
  public int fromDay() {
    return fromDay;
  }

  /** The last day on which the curve is known; beyond it only that it does not rise. */
  public int toDay() {
    return toDay;
  }

  /** The share that lasts beyond a day; not identified before the start of the curve. */
  public Estimate<Known> at(int day) {
    if (day < fromDay) {
      return Estimate.notIdentified(
          "the curve is known only from day " + fromDay + " on, and day " + day + " lies before");
    }
    double atLeast = 0;
    double atMost = 0;
    for (Box box : boxes) {
      boolean surely = box.exact() ? box.afterDay > day : box.afterDay >= day;
      atLeast += surely ? box.share : 0;
      atMost += box.notAfterDay > day ? box.share : 0;
    }
    return Estimate.of(new Known(Math.min(1, atLeast), Math.min(1, atMost)));
  }

  /**
   * The curve on a day with Greenwood's variance, where all ends are known or open; else not
   * identified, and {@link TurnbullBand} gives an interval.
   */
  public Estimate<PointEstimate> at(int day, double level) {
    return known != null
        ? known.curve().at(day, level)
        : Estimate.notIdentified("ends lie between two days; no variance follows from a formula");
  }

  /**
   * By which days half have ended: after the first and not after the second, which is {@link
   * Lifetime#NEVER} while the data leave that open. Where the curve is one half over a flat step
   * the step begins there.
   */
  public Box median() {
    double left = 1;
    for (Box box : boxes) {
      left -= box.share;
      if (left <= 0.5 + 1e-9) {
        return new Box(box.afterDay, box.notAfterDay, 0.5);
      }
    }
    throw new IllegalStateException("the shares of all boxes sum to 1");
  }

  /**
   * How far another curve lies from this one at most, over the edges of boxes, where this one is
   * known; not identified when there is no such edge.
   *
   * @param survival share that lasts beyond a day, of the other curve
   */
  public Estimate<Distance> distance(IntToDoubleFunction survival) {
    double start = survival.applyAsDouble(fromDay);
    Distance farthest = null;
    double left = 1;
    for (Box box : boxes) {
      if (!box.exact()) {
        farthest =
            farther(farthest, box.afterDay, left, survival.applyAsDouble(box.afterDay) / start);
      }
      left = Math.max(0, left - box.share);
      if (!box.open()) {
        farthest =
            farther(
                farthest, box.notAfterDay, left, survival.applyAsDouble(box.notAfterDay) / start);
      }
    }
    return farthest == null
        ? Estimate.notIdentified("the curve is nowhere known but at its start")
        : Estimate.of(farthest);
  }

  private Distance farther(Distance best, int day, double here, double other) {
    double share = Math.abs(here - other);
    boolean beats = day > fromDay && Double.isFinite(share) && (best == null || share > best.share);
    return beats ? new Distance(day, share) : best;
  }

  /** Log-likelihood at the maximum, of the lives used. */
  public double logLikelihood() {
    return logLikelihood;
  }

  /**
   * The gap of the optimality conditions, per life: the log-likelihood lies at most this far times
   * the lives used below its maximum.
   */
  public double gap() {
    return gap;
  }

  /** Whether the gap came below 1e-8. */
  public boolean converged() {
    return gap < CONVERGED;
  }

  /** Rounds of the search. */
  public int rounds() {
    return rounds;
  }

  /** Lives given. */
  public long lives() {
    return group.all();
  }

  /** Lives given that carry no information or belong to another stretch of time. */
  public long leftOut() {
    return known != null ? known.leftOut() : group.all() - group.used();
  }

  /** Lives used that ended. */
  public long ended() {
    return group.ends();
  }

  /** What the reader must know before using the curve; empty when nothing. */
  public String caution() {
    List<String> cautions = new ArrayList<>();
    if (fromDay > 0) {
      cautions.add(
          "conditional on lasting to day "
              + fromDay
              + (group.first()
                  ? ", because nobody was watched before it"
                  : ", because lives before it ended before others were watched"));
    }
    if (!converged()) {
      cautions.add("the search stopped before its end");
    }
    return String.join("; ", cautions);
  }
}

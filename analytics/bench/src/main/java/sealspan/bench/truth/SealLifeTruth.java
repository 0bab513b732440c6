package sealspan.bench.truth;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.GammaDistribution;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.survival.AalenJohansen;
import sealspan.stats.survival.EndedLife;
import sealspan.stats.survival.KaplanMeier;
import sealspan.stats.survival.Lifetime;
import sealspan.stats.survival.LognormalFit;
import sealspan.stats.survival.TurnbullBand;
import sealspan.stats.survival.UnitGaps;
import sealspan.stats.survival.WangChang;
import sealspan.stats.survival.WeibullFit;

/**
 * Whether intervals of seal life hold the truth: invented lives of known distribution, watched as
 * seals are, with open ends, late entry, yearly tests, and repeated gaps of positions that differ.
 *
 * <p>Run {@code java -cp ... sealspan.bench.truth.SealLifeTruth RUNS}; the seeds are 1 to RUNS. It
 * prints the table of TRUTH.md. The curve without a shape takes a quarter of the runs.
 */
public final class SealLifeTruth {
  private static final double LEVEL = 0.95;
  private static final double SHAPE = 1.8;
  private static final double SCALE_DAYS = 2_200;
  private static final int UNITS = 100;

  /** Five years, where shares are compared. */
  private static final int MARK = 1_826;

  private static final double SHARE = Math.exp(-Math.pow(MARK / SCALE_DAYS, SHAPE));

  /** Variance of the factor by which the hazards of positions differ. */
  private static final double FRAILTY = 0.5;

  private SealLifeTruth() {}

  /** Prints the table. */
  public static void main(String[] args) {
    int runs = Integer.parseInt(args[0]);
    System.out.println("| interval of | runs | not identified | held the truth | asked for |");
    System.out.println("|---|---|---|---|---|");
    study(runs).forEach(coverage -> System.out.println(coverage.row()));
  }

  /** The study with seeds 1 to runs. */
  public static List<Coverage> study(int runs) {
    List<Coverage> all = new ArrayList<>();
    all.add(
        count(
            "share in place at 5 years, Kaplan-Meier, 100 seals, half entered late",
            runs,
            SHARE,
            Coverage.Side.BOTH,
            random -> KaplanMeier.of(known(random, true)).orThrow().curve().at(MARK, LEVEL)));
    all.add(
        count(
            "mean of the first 5 years, Kaplan-Meier, 100 seals",
            runs,
            area(),
            Coverage.Side.BOTH,
            random -> KaplanMeier.of(known(random, false)).orThrow().restrictedMean(MARK, LEVEL)));
    all.add(
        count(
            "share replaced within 5 years for one of two reasons, Aalen-Johansen, 100 seals",
            runs,
            0.6 * (1 - SHARE),
            Coverage.Side.BOTH,
            random -> AalenJohansen.of(reasons(random), 2).orThrow().incidence(0, MARK, LEVEL)));
    all.add(
        count(
            "share in place at 5 years, Wang-Chang, 100 positions that differ (variance .5), 15 years",
            runs,
            Math.pow(1 + FRAILTY * Math.pow(MARK / SCALE_DAYS, SHAPE), -1 / FRAILTY),
            Coverage.Side.BOTH,
            random -> WangChang.of(gaps(random)).orThrow().curve().at(MARK, LEVEL)));
    all.add(
        count(
            "shape, Weibull, 100 seals tested yearly, half entered late",
            runs,
            SHAPE,
            Coverage.Side.BOTH,
            random -> weibull(tested(random, true), fit -> fit.shape(LEVEL))));
    all.add(
        count(
            "share not failed at 5 years, Weibull, 100 seals tested yearly, half entered late",
            runs,
            SHARE,
            Coverage.Side.BOTH,
            random -> weibull(tested(random, true), fit -> fit.survival(MARK, LEVEL))));
    all.add(
        count(
            "median, lognormal, 100 seals tested yearly",
            runs,
            SCALE_DAYS,
            Coverage.Side.BOTH,
            SealLifeTruth::lognormalMedian));
    all.add(
        count(
            "share not failed at 5 years, no shape, 100 seals tested yearly",
            Math.max(1, runs / 4),
            SHARE,
            Coverage.Side.LOWER,
            random -> shapeless(tested(random, false))));
    return all;
  }

  private static Coverage count(
      String what,
      int runs,
      double truth,
      Coverage.Side side,
      Function<SplittableRandom, Estimate<PointEstimate>> estimate) {
    int covered = 0;
    int none = 0;
    for (int seed : IntStream.rangeClosed(1, runs).toArray()) {
      if (estimate.apply(new SplittableRandom(seed))
          instanceof Estimate.Identified<PointEstimate> found) {
        covered += found.value().interval().contains(truth) ? 1 : 0;
      } else {
        none++;
      }
    }
    return new Coverage(what, runs - none, none, covered, side);
  }

  private static Estimate<PointEstimate> weibull(
      List<Lifetime> lives, Function<WeibullFit, PointEstimate> figure) {
    return WeibullFit.of(lives) instanceof Estimate.Identified<WeibullFit> found
        ? Estimate.of(figure.apply(found.value()))
        : Estimate.notIdentified("no shape");
  }

  private static Estimate<PointEstimate> lognormalMedian(SplittableRandom random) {
    List<Lifetime> lives = new ArrayList<>();
    for (int i = 0; i < UNITS; i++) {
      int end = 1 + (int) (SCALE_DAYS * Math.exp(0.7 * random.nextGaussian()));
      lives.add(looked(random, 0, end));
    }
    return LognormalFit.of(lives) instanceof Estimate.Identified<LognormalFit> found
        ? Estimate.of(found.value().medianDays(LEVEL))
        : Estimate.notIdentified("no spread");
  }

  private static Estimate<PointEstimate> shapeless(List<Lifetime> lives) {
    Interval interval = TurnbullBand.of(lives, new int[] {MARK}, LEVEL).orThrow().at(0);
    return Estimate.of(new PointEstimate(interval.lower(), 0, interval));
  }

  /** Mean life within the first five years, by the trapezium rule in half days. */
  private static double area() {
    double sum = 0;
    for (int half = 0; half < 2 * MARK; half++) {
      sum += Math.exp(-Math.pow((half + 0.5) / 2 / SCALE_DAYS, SHAPE)) / 2;
    }
    return sum;
  }

  private static int life(SplittableRandom random, double hazardFactor) {
    double log = -Math.log(1 - random.nextDouble()) / hazardFactor;
    return 1 + (int) (SCALE_DAYS * Math.pow(log, 1 / SHAPE));
  }

  /**
   * Lives with exact ends, seen for 6 to 12 years; half of them entered within two years of age.
   */
  private static List<Lifetime> known(SplittableRandom random, boolean late) {
    List<Lifetime> lives = new ArrayList<>();
    while (lives.size() < UNITS) {
      int end = life(random, 1);
      int entry = late && lives.size() % 2 == 1 ? random.nextInt(730) : 0;
      int seen = entry + 2_190 + random.nextInt(2_190);
      if (end > entry) {
        lives.add(end <= seen ? Lifetime.ended(entry, end) : Lifetime.goingOn(entry, seen));
      }
    }
    return lives;
  }

  private static List<EndedLife> reasons(SplittableRandom random) {
    List<EndedLife> lives = new ArrayList<>();
    for (Lifetime life : known(random, false)) {
      int reason = life.open() ? EndedLife.GOING_ON : random.nextDouble() < 0.6 ? 0 : 1;
      lives.add(new EndedLife(0, life.lowerDay(), reason, 1));
    }
    return lives;
  }

  private static List<UnitGaps> gaps(SplittableRandom random) {
    GammaDistribution differ = new GammaDistribution(1 / FRAILTY, FRAILTY);
    List<UnitGaps> units = new ArrayList<>();
    for (int i = 0; i < UNITS; i++) {
      double factor = differ.inverseCumulativeProbability(random.nextDouble());
      List<Integer> complete = new ArrayList<>();
      int left = 5_479;
      for (int gap = life(random, factor); gap <= left; gap = life(random, factor)) {
        complete.add(gap);
        left -= gap;
      }
      units.add(new UnitGaps(complete.stream().mapToInt(Integer::intValue).toArray(), left));
    }
    return units;
  }

  /** Lives looked at about once a year for 6 to 15 years. */
  private static List<Lifetime> tested(SplittableRandom random, boolean late) {
    List<Lifetime> lives = new ArrayList<>();
    while (lives.size() < UNITS) {
      int end = life(random, 1);
      int entry = late && lives.size() % 2 == 1 ? random.nextInt(730) : 0;
      if (end > entry) {
        lives.add(looked(random, entry, end));
      }
    }
    return lives;
  }

  private static Lifetime looked(SplittableRandom random, int entry, int end) {
    int held = entry;
    int looks = 6 + random.nextInt(10);
    for (int k = 0; k < looks; k++) {
      int day = held + (k == 0 ? 1 + random.nextInt(365) : 335 + random.nextInt(60));
      if (end <= day) {
        return Lifetime.endedWithin(entry, held, day);
      }
      held = day;
    }
    return Lifetime.goingOn(entry, held);
  }
}

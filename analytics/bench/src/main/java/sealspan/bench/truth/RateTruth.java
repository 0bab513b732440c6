package sealspan.bench.truth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.rates.FalseDiscovery;
import sealspan.stats.rates.FleetRanks;
import sealspan.stats.rates.FleetSums;
import sealspan.stats.rates.GridPosterior;
import sealspan.stats.rates.GridPrior;
import sealspan.stats.rates.GridScores;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.PriorFit;
import sealspan.stats.rates.RateShrinkage;
import sealspan.stats.rates.SplinePrior;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.ProfiledCoefficient;
import sealspan.stats.regression.Regression;
import sealspan.stats.regression.RegressionFit;

/**
 * Whether intervals of failure rates cover the truth, claims are as seldom wrong as they say, and
 * the worst units are found. Run {@code java -cp ... sealspan.bench.truth.RateTruth RUNS FLEETS};
 * seeds are 1 to RUNS or FLEETS.
 */
public final class RateTruth {
  private static final double LEVEL = .95;
  private static final double WRONG_CLAIMS = .1;

  private RateTruth() {}

  /**
   * How often intervals covered.
   *
   * @param covered intervals that hold the truth
   * @param runs runs with an interval
   * @param notIdentified runs without
   */
  public record Coverage(int covered, int runs, int notIdentified) {
    double share() {
      return (double) covered / runs;
    }
  }

  /**
   * What a kind of fleet showed, averaged over fleets.
   *
   * @param coverage per fleet the share of units whose interval holds their true rate
   * @param wrong per fleet the share of claims that were wrong; 0 for a fleet without claims
   * @param claims claims made in all
   * @param found units of the worst twentieth that are among the best-ranked twentieth, in all
   * @param foundRaw the same by raw rates
   * @param notIdentified fleets in which units were not seen to differ; they are left out
   */
  public record Fleets(
      double[] coverage,
      double[] wrong,
      long claims,
      long found,
      long foundRaw,
      int notIdentified) {}

  /** Exact interval of one unit with some tests. */
  public static Coverage exact(double perYear, int tests, int runs) {
    double perDay = perYear / 365.25;
    int covered = 0;
    for (int run = 1; run <= runs; run++) {
      HiddenFailures unit = DrawnFleet.unit(perDay, tests, new Random(run));
      covered += HiddenFailureRate.exactInterval(unit, LEVEL).contains(perDay) ? 1 : 0;
    }
    return new Coverage(covered, runs, 0);
  }

  /** Likelihood-ratio interval of pooled tests. */
  public static Coverage profile(double perYear, int tests, int runs) {
    double perDay = perYear / 365.25;
    int covered = 0;
    for (int run = 1; run <= runs; run++) {
      HiddenFailures unit = DrawnFleet.unit(perDay, tests, new Random(run));
      covered += HiddenFailureRate.likelihoodRatioInterval(unit, LEVEL).contains(perDay) ? 1 : 0;
    }
    return new Coverage(covered, runs, 0);
  }

  /** Whether the tests of a unit are independent. */
  public enum Tests {
    /** They are: the interval by profile. */
    INDEPENDENT,

    /** Three units in ten have the same luck at all their tests: the clustered interval. */
    ALIKE_WITHIN_UNITS
  }

  /**
   * Intervals of the logarithm of a ratio of rates, 60 units with 5 tests each, half of them with
   * twice the rate.
   */
  public static Coverage ratio(Tests tests, int runs) {
    int covered = 0;
    int without = 0;
    for (int run = 1; run <= runs; run++) {
      Observations data = twoGroups(tests, new Random(run));
      Estimate<RegressionFit> fit = Regression.fit(Family.CLOGLOG, data);
      Interval interval = null;
      if (tests == Tests.INDEPENDENT) {
        interval = ProfiledCoefficient.interval(Family.CLOGLOG, data, "group", LEVEL);
      } else if (fit instanceof Estimate.Identified<RegressionFit> f
          && f.value().clustered("group", LEVEL) instanceof Estimate.Identified<PointEstimate> e) {
        interval = e.value().interval();
      }
      without += interval == null ? 1 : 0;
      covered += interval != null && interval.contains(Math.log(2)) ? 1 : 0;
    }
    return new Coverage(covered, runs - without, without);
  }

  private static Observations twoGroups(Tests dependence, Random random) {
    int units = 60;
    int tests = 5;
    double[] failed = new double[units * tests];
    double[] group = new double[failed.length];
    double[] offset = new double[failed.length];
    int[] cluster = new int[failed.length];
    for (int unit = 0; unit < units; unit++) {
      // A shared draw makes tests of a unit alike without any effect on the share that fails.
      boolean shared = dependence == Tests.ALIKE_WITHIN_UNITS && random.nextDouble() < .3;
      double common = random.nextDouble();
      for (int k = 0; k < tests; k++) {
        int i = unit * tests + k;
        group[i] = unit % 2;
        double years = .9 + .2 * random.nextDouble();
        offset[i] = Math.log(years);
        cluster[i] = unit;
        double hazard = .25 * (1 + group[i]) * years;
        double draw = shared ? common : random.nextDouble();
        failed[i] = draw < -Math.expm1(-hazard) ? 1 : 0;
      }
    }
    return Observations.of(Design.ofRows(failed.length).constant().column("group", group), failed)
        .offset(offset)
        .cluster(cluster);
  }

  /** Scores fleets with the smooth prior. */
  public static Fleets fleets(DrawnFleet.Kind kind, int size, int fleets) {
    List<double[]> results = new ArrayList<>();
    int notIdentified = 0;
    for (int seed = 1; seed <= fleets; seed++) {
      DrawnFleet fleet = DrawnFleet.of(kind, size, seed);
      if (RateShrinkage.fitHidden(fleet.units()) instanceof Estimate.NotIdentified<PriorFit>) {
        notIdentified++;
      } else {
        results.add(one(fleet));
      }
    }
    return new Fleets(
        results.stream().mapToDouble(r -> r[0]).toArray(),
        results.stream().mapToDouble(r -> r[1]).toArray(),
        (long) results.stream().mapToDouble(r -> r[2]).sum(),
        (long) results.stream().mapToDouble(r -> r[3]).sum(),
        (long) results.stream().mapToDouble(r -> r[4]).sum(),
        notIdentified);
  }

  private static double[] one(DrawnFleet fleet) {
    GridPrior prior = SplinePrior.fit(DrawnFleet.LATTICE, fleet.units()).orThrow().prior();
    GridScores scores = new GridScores(prior);
    FleetSums sums = new FleetSums(scores.lattice());
    List<GridPosterior> posteriors = new ArrayList<>();
    int n = fleet.perDay().length;
    double covered = 0;
    double limit = 2 * prior.meanPerDay();
    double[] wrong = new double[n];
    for (int i = 0; i < n; i++) {
      GridPosterior posterior = scores.posterior(fleet.units().get(i), 0);
      posteriors.add(posterior);
      sums.add(posterior);
      covered += posterior.interval(LEVEL).contains(fleet.perDay()[i]) ? 1 : 0;
      wrong[i] = 1 - posterior.probabilityAbove(limit);
    }
    FalseDiscovery claims = FalseDiscovery.of(wrong, WRONG_CLAIMS);
    int mistakes = 0;
    for (int i = 0; i < n; i++) {
      mistakes += claims.lists(wrong[i]) && fleet.perDay()[i] <= limit ? 1 : 0;
    }
    FleetRanks ranks = new FleetRanks(sums);
    double[] byRank = posteriors.stream().mapToDouble(ranks::expected).toArray();
    double[] byRaw =
        fleet.units().stream().mapToDouble(u -> -HiddenFailureRate.maximumLikelihood(u)).toArray();
    double[] byTruth = Arrays.stream(fleet.perDay()).map(rate -> -rate).toArray();
    return new double[] {
      covered / n,
      claims.listed() == 0 ? 0 : (double) mistakes / claims.listed(),
      claims.listed(),
      inCommon(byTruth, byRank, n / 20),
      inCommon(byTruth, byRaw, n / 20)
    };
  }

  private static int inCommon(double[] truth, double[] score, int k) {
    boolean[] worst = new boolean[truth.length];
    Arrays.stream(first(truth, k)).forEach(i -> worst[i] = true);
    return (int) Arrays.stream(first(score, k)).filter(i -> worst[i]).count();
  }

  private static int[] first(double[] values, int k) {
    Integer[] order = new Integer[values.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
    return Arrays.stream(order).limit(k).mapToInt(Integer::intValue).toArray();
  }

  /** Prints the tables of TRUTH.md. */
  public static void main(String[] arguments) {
    int runs = Integer.parseInt(arguments[0]);
    int fleets = Integer.parseInt(arguments[1]);
    System.out.println("| interval | setting | covers | runs | not identified |");
    System.out.println("|---|---|---:|---:|---:|");
    for (double perYear : new double[] {.05, .2, .8}) {
      print("exact", "10 tests, " + perYear + " a year", exact(perYear, 10, runs));
    }
    for (double perYear : new double[] {.05, .2, .8}) {
      print("likelihood ratio", "500 tests, " + perYear + " a year", profile(perYear, 500, runs));
    }
    print("profile of a ratio", "60 units x 5 tests", ratio(Tests.INDEPENDENT, runs));
    print("clustered ratio", "60 units x 5 dependent tests", ratio(Tests.ALIKE_WITHIN_UNITS, runs));
    System.out.println();
    System.out.println(
        "| true rates | units | covers, mean over units | wrong claims | claims a fleet "
            + "| worst twentieth found | by raw rates | fleets | not identified |");
    System.out.println("|---|---:|---:|---:|---:|---:|---:|---:|---:|");
    for (DrawnFleet.Kind kind : DrawnFleet.Kind.values()) {
      for (int size : new int[] {120, 1_000}) {
        print(kind, size, fleets(kind, size, fleets));
      }
    }
  }

  private static void print(String interval, String setting, Coverage coverage) {
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %.3f | %d | %d |%n",
        interval,
        setting,
        coverage.share(),
        coverage.runs(),
        coverage.notIdentified());
  }

  private static void print(DrawnFleet.Kind kind, int size, Fleets result) {
    int n = result.coverage().length;
    double each = (double) n * (size / 20);
    System.out.printf(
        Locale.ROOT,
        "| %s | %d | %.3f | %.3f | %.1f | %.3f | %.3f | %d | %d |%n",
        kind.name().toLowerCase(Locale.ROOT).replace('_', ' '),
        size,
        Arrays.stream(result.coverage()).average().orElse(0),
        Arrays.stream(result.wrong()).average().orElse(0),
        (double) result.claims() / n,
        result.found() / each,
        result.foundRaw() / each,
        n,
        result.notIdentified());
  }
}

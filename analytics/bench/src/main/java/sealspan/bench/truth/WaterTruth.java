package sealspan.bench.truth;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.study.Members;
import sealspan.study.fouling.WaterEffects;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.PracticeTown;
import sealspan.study.practice.TrueFouling;
import sealspan.study.practice.TrueRepairs;
import sealspan.study.practice.TrueWear;
import sealspan.table.WaterEffectRow;

/**
 * Whether the link of fouling to main breaks finds what practice fleets were given: double checks
 * in town zones that foul at a rate which each break of the zone multiplies for 90 days, tested
 * every year zone by zone. The controls should show 1, and where breaks do nothing, claims should
 * be rare.
 *
 * <p>Run {@code java -cp ... sealspan.bench.truth.WaterTruth RUNS [SETTING]}; the seeds are 1 to
 * RUNS.
 */
public final class WaterTruth {
  private WaterTruth() {}

  /**
   * A setting.
   *
   * @param name its name
   * @param positions assemblies
   * @param zones water zones
   * @param breakRatio what a break multiplies the rate by, for 90 days
   * @param perYear foulings of one check a year without a break
   */
  public record Setting(String name, int positions, int zones, double breakRatio, double perYear) {
    PracticeParameters fleet(long seed) {
      PracticeTown usual = PracticeTown.usual();
      PracticeTown town =
          new PracticeTown(
              usual.source(),
              usual.latitude(),
              usual.longitude(),
              usual.timeZone(),
              usual.jurisdiction(),
              zones,
              usual.zoneSideM(),
              usual.positionsPerTester(),
              List.of());
      double everywhere = 10 * usual.zoneSideM();
      return PracticeParameters.plain(
              seed, positions, TrueWear.plain(1, 1e6), TrueRepairs.plain(0, 0))
          .overYears(8)
          .with(town)
          .with(new TrueFouling(perYear, 0.3, 0, 0.7, breakRatio, 90, everywhere, 0, 1, 0));
    }
  }

  /** The settings of the study. */
  public static final Setting[] SETTINGS = {
    new Setting("12 zones, breaks x 6", 480, 12, 6, 0.02),
    new Setting("12 zones, breaks do nothing", 480, 12, 1, 0.03),
    new Setting("4 zones, breaks x 6", 480, 4, 6, 0.02),
    new Setting("40 zones, breaks x 3", 960, 40, 3, 0.02)
  };

  /**
   * What came of a setting.
   *
   * @param effect intervals of the effect that held the truth
   * @param future intervals of the control after the test that held 1
   * @param otherZone intervals of the control in another zone that held 1
   * @param claims runs in which any question about breaks was answered beyond chance
   * @param tests mean number of tests
   * @param fouled mean number of fouled tests
   * @param trueRatio geometric mean of the true ratios
   * @param meanRatio geometric mean of the estimates
   */
  public record Result(
      Coverage effect,
      Coverage future,
      Coverage otherZone,
      int claims,
      double tests,
      double fouled,
      double trueRatio,
      double meanRatio) {}

  private record Run(WaterFleet fleet, List<WaterEffectRow> breaks) {}

  /** Runs a setting with the seeds from 1. */
  public static Result run(Setting setting, int runs) {
    AcceptanceCriteria criteria = AcceptanceCriteria.shipped();
    List<Run> all =
        IntStream.rangeClosed(1, runs)
            .parallel()
            .mapToObj(seed -> run(setting, seed, criteria))
            .toList();
    int[] known = new int[3];
    int[] covered = new int[3];
    double[] sums = new double[4];
    int claims = 0;
    for (Run one : all) {
      WaterEffectRow row = one.breaks().get(0);
      double truth = one.fleet().trueRatio();
      count(known, covered, 0, row.lower(), row.upper(), truth);
      count(known, covered, 1, row.futureLower(), row.futureUpper(), 1);
      count(known, covered, 2, row.otherZoneLower(), row.otherZoneUpper(), 1);
      claims +=
          one.breaks().stream().anyMatch(b -> b.adjustedP() != null && b.adjustedP() <= 0.05)
              ? 1
              : 0;
      sums[0] += one.fleet().tests() / (double) runs;
      sums[1] += one.fleet().fouled() / (double) runs;
      if (row.ratio() != null) {
        sums[2] += Math.log(truth);
        sums[3] += Math.log(row.ratio());
      }
    }
    List<Coverage> coverage = new ArrayList<>();
    String[] what = {"effect", "control after the test", "control in another zone"};
    for (int k = 0; k < 3; k++) {
      coverage.add(
          new Coverage(
              setting.name() + " | " + what[k],
              known[k],
              runs - known[k],
              covered[k],
              Coverage.Side.LOWER));
    }
    return new Result(
        coverage.get(0),
        coverage.get(1),
        coverage.get(2),
        claims,
        sums[0],
        sums[1],
        Math.exp(sums[2] / known[0]),
        Math.exp(sums[3] / known[0]));
  }

  private static void count(
      int[] known, int[] covered, int at, Double lower, Double upper, double truth) {
    if (lower != null && upper != null) {
      known[at]++;
      covered[at] += lower <= truth && truth <= upper ? 1 : 0;
    }
  }

  /** Of a fleet only the rows about breaks are kept. */
  private static Run run(Setting setting, long seed, AcceptanceCriteria criteria) {
    WaterFleet fleet = WaterFleet.of(setting.fleet(seed), criteria);
    List<WaterEffectRow> breaks =
        WaterEffects.of(Members.of(fleet.assemblies()), fleet.zones()).stream()
            .filter(row -> row.exposure().equals("MAIN_BREAK"))
            .filter(row -> row.method().equals("INTERVAL_EXPOSURE"))
            .toList();
    return new Run(
        new WaterFleet(List.of(), List.of(), fleet.tests(), fleet.fouled(), fleet.trueRatio()),
        breaks);
  }

  /** Prints the table of the study. */
  public static void main(String[] arguments) {
    int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 500;
    System.out.println(
        "| setting | figure | runs | not identified | coverage | asked for | tests | fouled | true"
            + " ratio | mean estimate | runs with a claim |");
    System.out.println("|---|---|---:|---:|---:|---|---:|---:|---:|---:|---:|");
    for (Setting setting : SETTINGS) {
      if (arguments.length > 1 && !setting.name().equals(arguments[1])) {
        continue;
      }
      Result result = run(setting, runs);
      for (Coverage one : List.of(result.effect(), result.future(), result.otherZone())) {
        boolean first = one == result.effect();
        System.out.printf(
            Locale.ROOT,
            "%s %.0f | %.0f | %s | %s | %s |%n",
            one.row(),
            result.tests(),
            result.fouled(),
            first ? String.format(Locale.ROOT, "%.3f", result.trueRatio()) : "1",
            first ? String.format(Locale.ROOT, "%.3f", result.meanRatio()) : "",
            first ? String.format(Locale.ROOT, "%.3f", result.claims() / (double) runs) : "");
      }
    }
  }
}

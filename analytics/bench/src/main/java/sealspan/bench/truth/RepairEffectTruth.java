package sealspan.bench.truth;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.IntStream;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.effect.ActionEffect;
import sealspan.study.RepairEffect;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.TrueRepairs;
import sealspan.study.practice.TrueWear;

/**
 * Whether the comparison of cleaning with a new seal finds the truth where the choice follows the
 * age of the seal: fleets of double checks that fail by wear alone, where a repair leaves .8 of the
 * age after cleaning and .5 after a new seal, and older seals are renewed more often.
 *
 * <p>Run {@code java -cp ... sealspan.bench.truth.RepairEffectTruth RUNS [SETTING]}; the seeds are
 * 1 to RUNS.
 */
public final class RepairEffectTruth {
  private RepairEffectTruth() {}

  /**
   * A setting.
   *
   * @param name its name
   * @param positions assemblies of the fleet
   * @param logit logit of renewing a seal whose age is one scale
   * @param perLogAge how much that logit grows with the log of the age
   * @param frailtyCv coefficient of variation of the frailty
   */
  public record Setting(
      String name, int positions, double logit, double perLogAge, double frailtyCv) {
    PracticeParameters fleet(long seed) {
      return PracticeParameters.plain(
          seed,
          positions,
          TrueWear.plain(3, 6).withFrailtyCv(frailtyCv),
          TrueRepairs.plain(0.8, 0.5).withIndication(logit, perLogAge, 0));
    }
  }

  /** The settings of the study. */
  public static final Setting[] SETTINGS = {
    new Setting("chosen by age", 250, 2, 4, 0.5),
    new Setting("chosen by age, few cases", 100, 2, 4, 0.5),
    new Setting("chosen by age, many cases", 1_000, 2, 4, 0.5),
    new Setting("by the toss of a coin", 250, 0, 0, 0.5)
  };

  /** One of the six figures that are followed, in the order of {@link #QUANTITIES}. */
  private static PointEstimate figure(ActionEffect effect, int of) {
    ActionEffect.Risks risks = of < 3 ? effect.comparable() : effect.all();
    return switch (of % 3) {
      case 0 -> risks.first();
      case 1 -> risks.second();
      default -> risks.difference();
    };
  }

  /**
   * The result of a setting.
   *
   * @param runs runs in which the effect was identified
   * @param notIdentified runs in which it was not
   * @param truth true values: if cleaned, if renewed, difference; comparable cases, then all
   * @param mean means of the estimates
   * @param deviation standard deviations of the estimates
   * @param meanStandardError means of the standard errors
   * @param covered intervals that hold the truth
   * @param rawDifference mean of the difference of the shares as they happened
   * @param cases mean number of cases
   */
  public record Result(
      int runs,
      int notIdentified,
      double[] truth,
      double[] mean,
      double[] deviation,
      double[] meanStandardError,
      int[] covered,
      double rawDifference,
      double cases) {}

  /** Runs a setting with the seeds from 1. */
  public static Result run(Setting setting, int runs) {
    AcceptanceCriteria criteria = AcceptanceCriteria.shipped();
    double[][] truths = new double[runs][];
    ActionEffect[] effects = new ActionEffect[runs];
    IntStream.range(0, runs)
        .parallel()
        .forEach(
            run -> {
              RepairFleet fleet = RepairFleet.of(setting.fleet(run + 1L), criteria);
              truths[run] = sums(fleet);
              Estimate<ActionEffect> effect = RepairEffect.of(fleet.episodes());
              effects[run] =
                  effect instanceof Estimate.Identified<ActionEffect> found ? found.value() : null;
            });
    return result(truths, effects);
  }

  /** Sums whose ratios are the truth: overlap, its risks; cases, their risks; raw counts. */
  private static double[] sums(RepairFleet fleet) {
    double[] sums = new double[10];
    for (RepairFleet.TrueCase one : fleet.cases()) {
      double overlap = one.chance() * (1 - one.chance());
      sums[0] += overlap;
      sums[1] += overlap * one.ifCleaned();
      sums[2] += overlap * one.ifRenewed();
      sums[3]++;
      sums[4] += one.ifCleaned();
      sums[5] += one.ifRenewed();
      sums[one.renewed() ? 8 : 6]++;
      sums[one.renewed() ? 9 : 7] += one.failed() ? 1 : 0;
    }
    return sums;
  }

  private static Result result(double[][] truths, ActionEffect[] effects) {
    double[] sums = new double[10];
    for (double[] one : truths) {
      for (int j = 0; j < sums.length; j++) {
        sums[j] += one[j];
      }
    }
    double[] truth = {
      sums[1] / sums[0], sums[2] / sums[0], (sums[1] - sums[2]) / sums[0],
      sums[4] / sums[3], sums[5] / sums[3], (sums[4] - sums[5]) / sums[3]
    };
    List<ActionEffect> found = Arrays.stream(effects).filter(Objects::nonNull).toList();
    double[] mean = new double[6];
    double[] deviation = new double[6];
    double[] error = new double[6];
    int[] covered = new int[6];
    for (int of = 0; of < 6; of++) {
      for (ActionEffect effect : found) {
        PointEstimate one = figure(effect, of);
        mean[of] += one.value() / found.size();
        error[of] += one.standardError() / found.size();
        covered[of] += one.interval().contains(truth[of]) ? 1 : 0;
      }
      for (ActionEffect effect : found) {
        double off = figure(effect, of).value() - mean[of];
        deviation[of] += off * off / (found.size() - 1);
      }
      deviation[of] = Math.sqrt(deviation[of]);
    }
    return new Result(
        found.size(),
        effects.length - found.size(),
        truth,
        mean,
        deviation,
        error,
        covered,
        sums[7] / sums[6] - sums[9] / sums[8],
        sums[3] / effects.length);
  }

  private static final String[] QUANTITIES = {
    "risk if cleaned", "risk if renewed", "difference",
    "all: risk if cleaned", "all: risk if renewed", "all: difference"
  };

  /** Prints the table of the study. */
  public static void main(String[] arguments) {
    int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1_000;
    System.out.println(
        "| setting | cases a run | quantity | truth | mean | sd | mean se | covered | runs |"
            + " not identified | raw difference |");
    System.out.println("|---|--:|---|--:|--:|--:|--:|--:|--:|--:|--:|");
    for (Setting setting : SETTINGS) {
      if (arguments.length > 1 && !setting.name().equals(arguments[1])) {
        continue;
      }
      Result result = run(setting, runs);
      for (int of = 0; of < 6; of++) {
        System.out.printf(
            Locale.ROOT,
            "| %s | %.0f | %s | %.4f | %.4f | %.4f | %.4f | %.4f | %d | %d | %s |%n",
            setting.name(),
            result.cases(),
            QUANTITIES[of],
            result.truth()[of],
            result.mean()[of],
            result.deviation()[of],
            result.meanStandardError()[of],
            result.covered()[of] / (double) result.runs(),
            result.runs(),
            result.notIdentified(),
            of % 3 == 2 ? String.format(Locale.ROOT, "%.4f", result.rawDifference()) : "");
      }
    }
  }
}

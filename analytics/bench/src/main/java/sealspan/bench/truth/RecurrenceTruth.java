package sealspan.bench.truth;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.ageing.AgeingFit;
import sealspan.stats.ageing.AgeingFit.Frailty;
import sealspan.stats.ageing.AgeingFit.Limits;
import sealspan.stats.ageing.AgeingFit.Prior;
import sealspan.stats.ageing.RepairedLife;
import sealspan.stats.ageing.VirtualAge;
import sealspan.stats.rates.Share;
import sealspan.stats.recurrence.EventTimes;
import sealspan.stats.recurrence.MeanCumulativeFunction;
import sealspan.stats.recurrence.MeanCumulativeFunction.Mark;
import sealspan.stats.recurrence.PowerLawProcess;

/**
 * How often 95 % intervals hold the truth: means of repeated events, powers of time, and virtual
 * age with the shares that repairs leave. Runs that end in "not identified" are counted apart.
 *
 * <p>Run {@code java -cp ... sealspan.bench.truth.RecurrenceTruth RUNS SLOW_RUNS}; every run has
 * its own seed, so the table is the same however many threads there are.
 */
public final class RecurrenceTruth {
  private static final double LEVEL = .95;

  private RecurrenceTruth() {}

  /** One interval that is followed through all runs. */
  public static final class Coverage {
    private final String setting;
    private final String figure;
    private final double truth;
    private int runs;
    private int covered;
    private int notIdentified;
    private double sum;

    Coverage(String setting, String figure, double truth) {
      this.setting = setting;
      this.figure = figure;
      this.truth = truth;
    }

    void add(Estimate<PointEstimate> estimate) {
      if (estimate instanceof Estimate.Identified<PointEstimate> identified) {
        runs++;
        sum += identified.value().value();
        covered += identified.value().interval().contains(truth) ? 1 : 0;
      } else {
        notIdentified++;
      }
    }

    /** Whether a binomial test at p < .001 lets the coverage lie in .93 to .97. */
    public boolean withinBounds() {
      Interval coverage = Share.clopperPearson(covered, runs, .998);
      return coverage.lower() <= .97 && coverage.upper() >= .93;
    }

    /** A row of the table. */
    @Override
    public String toString() {
      Interval limits = Share.clopperPearson(covered, runs, LEVEL);
      return String.format(
          Locale.ROOT,
          "| %s | %s | %.3g | %.3f | %d | %d | %.3f (%.3f to %.3f) |",
          setting,
          figure,
          truth,
          sum / runs,
          runs,
          notIdentified,
          (double) covered / runs,
          limits.lower(),
          limits.upper());
    }
  }

  /** Mean cumulative functions of 100 units that differ in rate and enter late. */
  public static List<Coverage> means(int runs) {
    Coverage mean = new Coverage("100 units that differ, late entries", "mean to day 2,000", 2);
    Coverage half = new Coverage("100 units that differ, late entries", "mean to day 1,000", 1);
    for (int run = 0; run < runs; run++) {
      MeanCumulativeFunction curve =
          MeanCumulativeFunction.of(
                  RecurrenceFleet.counted(new Random(1_000_003L * run), 100, .001, 2_000),
                  Mark.COUNT)
              .orThrow();
      mean.add(curve.at(2_000, LEVEL));
      half.add(curve.at(1_000, LEVEL));
    }
    return List.of(half, mean);
  }

  /** Power laws: one window with its exact interval, windows that differ, systems that differ. */
  public static List<Coverage> powers(int runs) {
    Coverage one = new Coverage("1 system to time 12, about 11 events", "shape, exact", 1.6);
    Coverage many = new Coverage("40 systems, windows differ", "shape, profile", 1.6);
    Coverage rate =
        new Coverage(
            "40 systems, windows differ", "rate at time 4, profile", .32 * Math.pow(4, .6));
    Coverage differ = new Coverage("100 systems that differ in rate", "shape, by system", 1.6);
    for (int run = 0; run < runs; run++) {
      Random random = new Random(1_000_003L * run + 1);
      one.add(shape(PowerLawProcess.of(List.of(single(random)))));
      Estimate<PowerLawProcess> alike =
          PowerLawProcess.of(RecurrenceFleet.power(random, 40, 1.6, 0));
      many.add(shape(alike));
      rate.add(Estimate.of(alike.orThrow().rateAt(4, LEVEL)));
      differ.add(
          PowerLawProcess.of(RecurrenceFleet.power(random, 100, 1.6, 1))
              .orThrow()
              .shapeByUnit(LEVEL));
    }
    return List.of(one, many, rate, differ);
  }

  private static EventTimes single(Random random) {
    List<Double> times = new ArrayList<>();
    double sum = -Math.log(1 - random.nextDouble());
    for (double t = time(sum); t <= 12; t = time(sum)) {
      times.add(t);
      sum -= Math.log(1 - random.nextDouble());
    }
    return EventTimes.watched(0, 12, times.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private static double time(double sum) {
    return Math.pow(sum / .2, 1 / 1.6);
  }

  private static Estimate<PointEstimate> shape(Estimate<PowerLawProcess> fit) {
    return fit instanceof Estimate.Identified<PowerLawProcess> identified
        ? Estimate.of(identified.value().shape(LEVEL))
        : Estimate.notIdentified(((Estimate.NotIdentified<PowerLawProcess>) fit).because());
  }

  /** A truth of ageing, and how it is fitted. */
  public record Setting(String name, RecurrenceFleet.Ageing truth, int units, Frailty frailty) {}

  /** The settings of ageing; 12 tests each. */
  public static final List<Setting> AGEING =
      List.of(
          setting("II, left .6 and .05", VirtualAge.KIJIMA_II, .6, .05, 0),
          setting("II, left .3 and .05", VirtualAge.KIJIMA_II, .3, .05, 0),
          setting("II, left .9 and .2", VirtualAge.KIJIMA_II, .9, .2, 0),
          setting("I, left .6 and .05", VirtualAge.KIJIMA_I, .6, .05, 0),
          setting("II, left .6 and .2, units differ", VirtualAge.KIJIMA_II, .6, .2, .5));

  private static Setting setting(
      String name, VirtualAge model, double kept, double renewed, double deviation) {
    return new Setting(
        "400 units x 12 tests, " + name,
        new RecurrenceFleet.Ageing(model, 1.8, 8, kept, renewed, deviation),
        400,
        deviation > 0 ? Frailty.LOGNORMAL : Frailty.NONE);
  }

  /** Coverage of the shape and of both shares, with the weak priors, by profile. */
  public static List<Coverage> ageing(Setting setting, int runs) {
    Coverage shape = new Coverage(setting.name(), "shape", setting.truth().shape());
    Coverage kept = new Coverage(setting.name(), "left by cleaning", setting.truth().keptSeal());
    Coverage renewed =
        new Coverage(setting.name(), "left by a new seal", setting.truth().newSeal());
    for (int run = 0; run < runs; run++) {
      List<RepairedLife> lives =
          setting.truth().lives(new Random(1_000_003L * run + 2), setting.units(), 12);
      Estimate<AgeingFit> fit =
          AgeingFit.of(lives, setting.truth().model(), setting.frailty(), Prior.WEAK);
      if (fit instanceof Estimate.Identified<AgeingFit> identified) {
        shape.add(Estimate.of(identified.value().shape(LEVEL, Limits.PROFILE)));
        kept.add(identified.value().shareLeft(0, LEVEL, Limits.PROFILE));
        renewed.add(identified.value().shareLeft(1, LEVEL, Limits.PROFILE));
      } else {
        String because = ((Estimate.NotIdentified<AgeingFit>) fit).because();
        for (Coverage each : List.of(shape, kept, renewed)) {
          each.add(Estimate.notIdentified(because));
        }
      }
    }
    return List.of(shape, kept, renewed);
  }

  /** Prints the table. */
  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 4_000;
    int slowRuns = args.length > 1 ? Integer.parseInt(args[1]) : 1_000;
    System.out.println(
        "| setting | figure | truth | mean estimate | runs | not identified | coverage |");
    System.out.println("|---|---|---|---|---|---|---|");
    means(runs).forEach(System.out::println);
    powers(runs).forEach(System.out::println);
    for (Setting setting : AGEING) {
      ageing(setting, slowRuns).forEach(System.out::println);
    }
  }
}

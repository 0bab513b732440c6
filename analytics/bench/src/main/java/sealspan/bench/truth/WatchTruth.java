package sealspan.bench.truth;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import sealspan.stats.rates.CountedRate;
import sealspan.stats.scan.CounterRandom;
import sealspan.stats.watch.MixtureWatch;
import sealspan.study.fouling.FoulingModel;
import sealspan.study.watch.HighSide;
import sealspan.table.FoulingCoefficientRow;

/**
 * How many tests the watch makes until a false alarm, beside what it promises, and until a true
 * one; one argument: runs of each setting. Thirty places on a ring, tested in random order; the
 * zones are the 3 and the 6 neighbours from each place on. Prints the table of TRUTH.md. Where
 * probabilities are fitted, the last column is the share of all fits with which the mean number of
 * tests is as promised.
 */
public final class WatchTruth {
  private static final int PLACES = 30;
  private static final int[] SIZES = {3, 6};
  private static final double THRESHOLD = 1_000;
  private static final double STATED = .08;
  private static final int CHANGE = 300;
  private static final long SEED = 20_261_130L;

  /** A run ends here without an alarm. */
  private static final long MOST_TESTS = 100_000;

  private WatchTruth() {}

  /** Runs the study. */
  public static void main(String... args) {
    int runs = Integer.parseInt(args[0]);
    System.out.println(
        "| setting | runs | mean tests | standard error | median | fits that keep the promise |");
    System.out.println("|---|---:|---:|---:|---:|---:|");
    for (double truth : new double[] {.08, .072, .088, .096}) {
      print("stated .08, true " + truth, falseAlarms(runs, truth, 0, false), "");
    }
    double least = leastThatKeeps(runs);
    for (int known : new int[] {300, 1_000, 5_000}) {
      for (boolean high : new boolean[] {false, true}) {
        print(
            "true .08, stated as fitted to "
                + known
                + " tests"
                + (high ? ", on the high side" : ""),
            falseAlarms(runs, STATED, known, high),
            String.format(Locale.ROOT, "%.3f", shareOfFits(least, known, high)));
      }
    }
    for (double risk : new double[] {2, 3, 4}) {
      delays(runs, risk, 0);
      delays(runs, risk, 1_000);
    }
  }

  private static double[] falseAlarms(int runs, double truth, int known, boolean high) {
    return IntStream.range(0, runs)
        .parallel()
        .mapToDouble(
            run -> run(run, truth, known == 0 ? STATED : fitted(run, truth, known, high), 1, 0))
        .toArray();
  }

  private static void delays(int runs, double risk, int known) {
    double[] tests =
        IntStream.range(0, runs)
            .parallel()
            .mapToDouble(
                run ->
                    run(
                        run,
                        STATED,
                        known == 0 ? STATED : fitted(run, STATED, known, true),
                        risk,
                        CHANGE))
            .filter(until -> until > CHANGE)
            .map(until -> until - CHANGE)
            .toArray();
    print(
        "delay, risk times "
            + risk
            + " in 6 of 30 places"
            + (known == 0 ? "" : ", fitted to " + known + " tests, on the high side"),
        tests,
        "");
  }

  /** The least probability to state at which the mean is as promised, by halving. */
  private static double leastThatKeeps(int runs) {
    double broken = .06;
    double kept = .09;
    for (int i = 0; i < 12; i++) {
      double stated = (broken + kept) / 2;
      double mean =
          IntStream.range(0, runs)
              .parallel()
              .mapToLong(run -> run(run, STATED, stated, 1, 0))
              .average()
              .orElseThrow();
      if (mean >= THRESHOLD) {
        kept = stated;
      } else {
        broken = stated;
      }
    }
    return kept;
  }

  private static double shareOfFits(double least, int known, boolean high) {
    BinomialDistribution cases = new BinomialDistribution(known, STATED);
    return IntStream.rangeClosed(0, known)
        .filter(n -> fit(n, known, high) >= least)
        .mapToDouble(cases::probability)
        .sum();
  }

  /** One rate for all, with half a case added. */
  private static double fitted(int run, double truth, int known, boolean high) {
    CounterRandom random = CounterRandom.of(SEED + 1, run);
    int cases = 0;
    for (int i = 0; i < known; i++) {
      cases += random.uniform(i) < truth ? 1 : 0;
    }
    return fit(cases, known, high);
  }

  /** The rate, if wanted raised as a frozen model's is. */
  private static double fit(int cases, int known, boolean high) {
    double rate = (cases + .5) / known;
    if (!high) {
      return rate;
    }
    double upper = CountedRate.garwood(cases, known, .95).upper();
    FoulingCoefficientRow fitted =
        new FoulingCoefficientRow(FoulingModel.CONSTANT, Math.log(rate), null, Math.log(upper));
    return Math.exp(HighSide.of(List.of(fitted)).get(0).value());
  }

  private static long run(int run, double truth, double stated, double risk, long from) {
    CounterRandom random = CounterRandom.of(SEED, run);
    double[] weights = new double[PLACES * SIZES.length];
    Arrays.fill(weights, 1.0 / weights.length);
    MixtureWatch watch = new MixtureWatch(weights, THRESHOLD);
    for (long test = 0; test < MOST_TESTS; test++) {
      int place = (int) (PLACES * random.uniform(2 * test));
      double p = truth * (place < 6 && test >= from ? risk : 1);
      if (watch.observe(zonesOf(place), stated, random.uniform(2 * test + 1) < p).isPresent()) {
        return test + 1;
      }
    }
    return MOST_TESTS;
  }

  private static int[] zonesOf(int place) {
    int[] zones = new int[SIZES[0] + SIZES[1]];
    int n = 0;
    for (int i = 0; i < SIZES.length; i++) {
      for (int back = 0; back < SIZES[i]; back++) {
        zones[n++] = Math.floorMod(place - back, PLACES) * SIZES.length + i;
      }
    }
    return zones;
  }

  private static void print(String words, double[] tests, String share) {
    double mean = Arrays.stream(tests).average().orElse(0);
    double square = Arrays.stream(tests).map(t -> (t - mean) * (t - mean)).sum();
    double error = Math.sqrt(square / (tests.length - 1) / tests.length);
    double[] sorted = tests.clone();
    Arrays.sort(sorted);
    System.out.println(
        String.format(
            Locale.ROOT,
            "| %s | %d | %s%.0f | %.0f | %.0f | %s |",
            words,
            tests.length,
            sorted[tests.length - 1] >= MOST_TESTS ? "over " : "",
            mean,
            error,
            sorted[tests.length / 2],
            share));
  }
}

package sealspan.bench.truth;

import java.util.Arrays;
import java.util.Locale;
import sealspan.stats.scan.CounterRandom;
import sealspan.stats.watch.MixtureWatch;

/**
 * How many tests the watch makes until a false alarm, beside what it promises, and until a true
 * one; one argument: runs of each setting. Thirty places on a ring, tested in random order; the
 * zones are the 3 and the 6 neighbours from each place on. Prints the table of TRUTH.md.
 */
public final class WatchTruth {
  private static final int PLACES = 30;
  private static final int[] SIZES = {3, 6};
  private static final double THRESHOLD = 1_000;
  private static final double STATED = .08;
  private static final int CHANGE = 300;
  private static final long SEED = 20_261_130L;

  private WatchTruth() {}

  /** Runs the study. */
  public static void main(String... args) {
    int runs = Integer.parseInt(args[0]);
    System.out.println("| setting | runs | mean tests | standard error | median |");
    System.out.println("|---|---:|---:|---:|---:|");
    for (double truth : new double[] {.08, .072, .088, .096}) {
      falseAlarms("stated .08, true " + truth, runs, truth, 0);
    }
    for (int known : new int[] {300, 1_000, 5_000}) {
      falseAlarms("true .08, stated as fitted to " + known + " tests", runs, STATED, known);
    }
    for (double risk : new double[] {2, 3, 4}) {
      delays(runs, risk);
    }
  }

  private static void falseAlarms(String words, int runs, double truth, int known) {
    double[] tests = new double[runs];
    for (int run = 0; run < runs; run++) {
      tests[run] = run(run, truth, known == 0 ? STATED : fitted(run, truth, known), 1, 0);
    }
    print(words, tests);
  }

  private static void delays(int runs, double risk) {
    double[] tests = new double[runs];
    int kept = 0;
    for (int run = 0; run < runs; run++) {
      double until = run(run, STATED, STATED, risk, CHANGE);
      if (until > CHANGE) {
        tests[kept++] = until - CHANGE;
      }
    }
    print("delay, risk times " + risk + " in 6 of 30 places", Arrays.copyOf(tests, kept));
  }

  /** One rate for all, with half a case added. */
  private static double fitted(int run, double truth, int known) {
    CounterRandom random = CounterRandom.of(SEED + 1, run);
    int cases = 0;
    for (int i = 0; i < known; i++) {
      cases += random.uniform(i) < truth ? 1 : 0;
    }
    return (cases + .5) / known;
  }

  private static long run(int run, double truth, double stated, double risk, long from) {
    CounterRandom random = CounterRandom.of(SEED, run);
    double[] weights = new double[PLACES * SIZES.length];
    Arrays.fill(weights, 1.0 / weights.length);
    MixtureWatch watch = new MixtureWatch(weights, THRESHOLD);
    for (long test = 0; ; test++) {
      int place = (int) (PLACES * random.uniform(2 * test));
      double p = truth * (place < 6 && test >= from ? risk : 1);
      if (watch.observe(zonesOf(place), stated, random.uniform(2 * test + 1) < p).isPresent()) {
        return test + 1;
      }
    }
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

  private static void print(String words, double[] tests) {
    double mean = Arrays.stream(tests).average().orElse(0);
    double square = Arrays.stream(tests).map(t -> (t - mean) * (t - mean)).sum();
    double error = Math.sqrt(square / (tests.length - 1) / tests.length);
    double[] sorted = tests.clone();
    Arrays.sort(sorted);
    System.out.println(
        String.format(
            Locale.ROOT,
            "| %s | %d | %.0f | %.0f | %.0f |",
            words,
            tests.length,
            mean,
            error,
            sorted[tests.length / 2]));
  }
}

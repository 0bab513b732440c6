package sealspan.stats.ageing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A life written down step by step, and its likelihood by plain recursion: slow and independent.
 */
final class NaiveLife {
  enum Kind {
    UNSEEN,
    PASSED,
    FAILED,
    FAILED_AT_END,
    REPAIRED_0,
    REPAIRED_1,
    REPLACED
  }

  record Step(Kind kind, double time) {}

  final List<Step> steps = new ArrayList<>();

  NaiveLife add(Kind kind, double time) {
    steps.add(new Step(kind, time));
    return this;
  }

  RepairedLife built() {
    RepairedLife.Builder life = RepairedLife.sinceNew();
    for (Step step : steps) {
      switch (step.kind()) {
        case UNSEEN -> life.unseen(step.time());
        case PASSED -> life.passed(step.time());
        case FAILED -> life.failed(step.time());
        case FAILED_AT_END -> life.failedAtEnd(step.time());
        case REPAIRED_0 -> life.repaired(0);
        case REPAIRED_1 -> life.repaired(1);
        case REPLACED -> life.replaced();
      }
    }
    return life.build();
  }

  /** Likelihood of the life when its hazard carries a factor. */
  double likelihood(VirtualAge model, double shape, double scale, double[] share, double factor) {
    double atRepair = 0;
    double age = 0;
    double log = 0;
    for (Step step : steps) {
      double before = age;
      switch (step.kind()) {
        case UNSEEN -> age += step.time();
        case PASSED -> {
          age += step.time();
          log -= factor * gained(before, age, shape, scale);
        }
        case FAILED -> {
          age += step.time();
          log += Math.log(1 - Math.exp(-factor * gained(before, age, shape, scale)));
        }
        case FAILED_AT_END -> {
          age += step.time();
          log -= factor * gained(before, age, shape, scale);
          log += Math.log(factor * shape / scale * Math.pow(age / scale, shape - 1));
        }
        case REPLACED -> {
          age = 0;
          atRepair = 0;
        }
        default -> {
          double q = share[step.kind() == Kind.REPAIRED_0 ? 0 : 1];
          age = model == VirtualAge.KIJIMA_II ? q * age : atRepair + q * (age - atRepair);
          atRepair = age;
        }
      }
    }
    return Math.exp(log);
  }

  private static double gained(double from, double to, double shape, double scale) {
    return Math.pow(to / scale, shape) - Math.pow(from / scale, shape);
  }

  /** Log-likelihood of many lives; the lognormal factor is integrated by a fine trapezoid rule. */
  static double logLikelihood(List<NaiveLife> lives, VirtualAge model, double[] p) {
    double[] share = {1 / (1 + Math.exp(-p[2])), 1 / (1 + Math.exp(-p[3]))};
    double sum = 0;
    for (NaiveLife life : lives) {
      double likelihood = 0;
      if (p[4] == 0) {
        likelihood = life.likelihood(model, Math.exp(p[0]), Math.exp(p[1]), share, 1);
      } else {
        double width = 16.0 / 800;
        for (int i = 0; i <= 800; i++) {
          double u = -8 + i * width;
          double density = Math.exp(-u * u / 2) / Math.sqrt(2 * Math.PI) * width;
          double factor = Math.exp(p[4] * u - p[4] * p[4] / 2);
          likelihood +=
              density * life.likelihood(model, Math.exp(p[0]), Math.exp(p[1]), share, factor);
        }
      }
      sum += Math.log(likelihood);
    }
    return sum;
  }

  /** Lives of every kind of step, made up. */
  static List<NaiveLife> invented(Random random, int count) {
    List<NaiveLife> lives = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      NaiveLife life = new NaiveLife();
      int steps = 3 + random.nextInt(8);
      for (int s = 0; s < steps; s++) {
        double time = .1 + 2 * random.nextDouble();
        switch (random.nextInt(9)) {
          case 0 -> life.add(Kind.UNSEEN, time);
          case 1, 2, 3 -> life.add(Kind.PASSED, time);
          case 4 -> life.add(Kind.FAILED, time).add(Kind.REPAIRED_0, 0);
          case 5 -> life.add(Kind.FAILED, time).add(Kind.REPAIRED_1, 0);
          case 6 -> life.add(Kind.FAILED_AT_END, time).add(Kind.REPAIRED_0, 0);
          case 7 -> life.add(random.nextBoolean() ? Kind.REPAIRED_0 : Kind.REPAIRED_1, 0);
          default -> life.add(Kind.REPLACED, 0);
        }
      }
      lives.add(life);
    }
    return lives;
  }

  /**
   * Tests of a unit under a true model: as many tests, about a year apart; a failure is cleaned
   * (kind 0) or gets a new seal (kind 1), the latter oftener with age.
   */
  static RepairedLife simulated(
      Random random,
      VirtualAge model,
      double shape,
      double scale,
      double[] share,
      int tests,
      double factor) {
    RepairedLife.Builder life = RepairedLife.sinceNew();
    double age = 0;
    double atRepair = 0;
    for (int t = 0; t < tests; t++) {
      double time = .8 + .4 * random.nextDouble();
      double d = factor * gained(age, age + time, shape, scale);
      age += time;
      if (random.nextDouble() < Math.exp(-d)) {
        life.passed(time);
        continue;
      }
      life.failed(time);
      int kind = random.nextDouble() < .25 + .5 * Math.min(1, age / 10) ? 1 : 0;
      life.repaired(kind);
      age =
          model == VirtualAge.KIJIMA_II
              ? share[kind] * age
              : atRepair + share[kind] * (age - atRepair);
      atRepair = age;
    }
    return life.build();
  }
}

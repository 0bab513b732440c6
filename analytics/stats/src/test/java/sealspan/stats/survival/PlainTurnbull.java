package sealspan.stats.survival;

import java.util.List;
import java.util.TreeSet;

/**
 * The textbook way, slow: mass on every elementary stretch between all times that occur, raised by
 * self-consistency (Turnbull 1976), with unseen lives for late entry, until nothing moves.
 */
final class PlainTurnbull {
  private final long[] keys;
  private final double[] mass;
  private double logLikelihood;

  PlainTurnbull(List<Lifetime> lives) {
    TreeSet<Long> all = new TreeSet<>();
    for (Lifetime life : lives) {
      for (long day : new long[] {life.entryDay(), life.lowerDay(), life.upperDay()}) {
        all.add(2 * day);
        all.add(2 * day + 1);
      }
    }
    keys = all.stream().mapToLong(Long::longValue).filter(key -> key > 0).toArray();
    mass = new double[keys.length];
    java.util.Arrays.fill(mass, 1.0 / keys.length);
    double moved = 1;
    for (int round = 0; round < 100_000 && moved > 1e-13; round++) {
      moved = round(lives);
    }
  }

  private double round(List<Lifetime> lives) {
    double[] expected = new double[mass.length];
    logLikelihood = 0;
    for (Lifetime life : lives) {
      long from = life.exact() ? 2L * life.lowerDay() : 2L * life.lowerDay() + 1;
      double own = sum(from, 2L * life.upperDay());
      double watched = sum(2L * life.entryDay() + 1, Long.MAX_VALUE);
      logLikelihood += Math.log(own) - Math.log(watched);
      for (int j = 0; j < keys.length; j++) {
        boolean covers = keys[j] >= from && keys[j] <= 2L * life.upperDay() + (life.open() ? 1 : 0);
        expected[j] += covers ? mass[j] / own : 0;
        expected[j] += keys[j] <= 2L * life.entryDay() ? mass[j] / watched : 0;
      }
    }
    double total = java.util.Arrays.stream(expected).sum();
    double moved = 0;
    for (int j = 0; j < mass.length; j++) {
      double next = expected[j] / total;
      moved = Math.max(moved, Math.abs(next - mass[j]));
      mass[j] = next;
    }
    return moved;
  }

  private double sum(long from, long to) {
    double sum = 0;
    for (int j = 0; j < keys.length; j++) {
      boolean never = to == 2L * Lifetime.NEVER;
      sum += keys[j] >= from && (keys[j] <= to || never) ? mass[j] : 0;
    }
    return sum;
  }

  double logLikelihood() {
    return logLikelihood;
  }

  /** Share beyond a day. */
  double beyond(int day) {
    return sum(2L * day + 1, Long.MAX_VALUE);
  }
}

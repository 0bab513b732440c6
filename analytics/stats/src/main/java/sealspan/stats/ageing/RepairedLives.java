package sealspan.stats.ageing;

import java.util.Collection;
import java.util.List;

/** The lives of many units as flat arrays, in an order that depends on content alone. */
final class RepairedLives {
  final int units;

  /** First step of each unit, and the number of all steps at the end. */
  final int[] first;

  final byte[] steps;
  final double[] from;
  final double[] to;
  final double[] logFrom;
  final double[] logTo;
  final int failures;

  /** Whether some stretch tells more than that a unit failed somewhere in it. */
  final boolean bounded;

  /** Whether a repair of each kind was followed by a stretch that tells of it. */
  final boolean[] seenAfter = new boolean[RepairedLife.KINDS];

  private final List<RepairedLife> lives;

  private RepairedLives(List<RepairedLife> lives) {
    this.lives = lives;
    units = lives.size();
    first = new int[units + 1];
    int all = 0;
    for (int u = 0; u < units; u++) {
      first[u] = all;
      all += lives.get(u).steps.length;
    }
    first[units] = all;
    steps = new byte[all];
    from = new double[all];
    to = new double[all];
    logFrom = new double[all];
    logTo = new double[all];
    int failed = 0;
    boolean told = false;
    for (int u = 0; u < units; u++) {
      RepairedLife life = lives.get(u);
      System.arraycopy(life.steps, 0, steps, first[u], life.steps.length);
      System.arraycopy(life.from, 0, from, first[u], life.steps.length);
      System.arraycopy(life.to, 0, to, first[u], life.steps.length);
      failed += life.failures();
      told |= look(first[u], first[u + 1]);
    }
    failures = failed;
    bounded = told;
  }

  static RepairedLives of(Collection<RepairedLife> lives) {
    return new RepairedLives(
        lives.stream().filter(l -> l.steps.length > 0).sorted(RepairedLife.ORDER).toList());
  }

  /** An even part of the units: every so-manieth, so that at most as many remain as asked for. */
  RepairedLives atMost(int most) {
    int every = (units + most - 1) / most;
    if (every <= 1) {
      return this;
    }
    List<RepairedLife> part = new java.util.ArrayList<>(units / every + 1);
    for (int u = every / 2; u < units; u += every) {
      part.add(lives.get(u));
    }
    return new RepairedLives(part);
  }

  /** Whether the same kinds of repair are followed by something here. */
  boolean tellsAsMuchAs(RepairedLives other) {
    return java.util.Arrays.equals(seenAfter, other.seenAfter) && bounded == other.bounded;
  }

  /** Takes logarithms and notes which repairs are followed by something; whether it is bounded. */
  private boolean look(int start, int end) {
    boolean told = false;
    boolean[] open = new boolean[RepairedLife.KINDS];
    for (int i = start; i < end; i++) {
      if (steps[i] >= RepairedLife.REPAIRED) {
        open[steps[i] - RepairedLife.REPAIRED] = true;
      } else if (steps[i] == RepairedLife.REPLACED) {
        open = new boolean[RepairedLife.KINDS];
      } else {
        told |= steps[i] != RepairedLife.FAILED;
        logFrom[i] = from[i] > 0 ? StrictMath.log(from[i]) : 0;
        logTo[i] = StrictMath.log(to[i]);
        for (int k = 0; k < open.length; k++) {
          seenAfter[k] |= open[k];
        }
      }
    }
    return told;
  }
}

package sealspan.stats.survival;

import sealspan.stats.Isotonic;

/**
 * Climbs to the maximum of a {@link TurnbullLikelihood}. Each round takes a step of expectation and
 * maximisation, a step of the iterative convex minorant (Groeneboom and Wellner 1992; with step
 * halving, Jongbloed 1998), which opens and closes cells, and Newton steps on the cells that are
 * open. It stops on the gap of the optimality conditions.
 */
final class TurnbullAscent {
  /** The largest gain per life that a unit of mass put anywhere still promises. */
  static final double GAP = 1e-9;

  private static final int MOST_ROUNDS = 2_000;
  private static final int MOST_NEWTON_STEPS = 30;

  private final TurnbullLikelihood likelihood;
  private final int cells;
  private final double[] hazard;
  private final double[] share;
  private final double[] gradient;
  private final double[] curvature;
  private final double[] trial;
  private final double[] trialShare;
  private final double[] pull;
  private double value;
  private double gap;
  private int rounds;

  TurnbullAscent(TurnbullLikelihood likelihood) {
    this.likelihood = likelihood;
    cells = likelihood.cells();
    hazard = new double[cells + 1];
    share = new double[cells + 1];
    gradient = new double[cells + 1];
    curvature = new double[cells + 1];
    trial = new double[cells + 1];
    trialShare = new double[cells + 1];
    pull = new double[cells + 1];
    for (int k = 1; k <= cells; k++) {
      share[k] = 1 - (double) k / cells;
      hazard[k] = -StrictMath.log(share[k]);
    }
    share[0] = 1;
    climb();
  }

  private void climb() {
    settle();
    while (rounds < MOST_ROUNDS) {
      rounds++;
      likelihood.expectAndMaximise(hazard, share, pull);
      settle();
      bend();
      measure();
      for (int i = 0; i < MOST_NEWTON_STEPS && gap > GAP; i++) {
        double gain = newton();
        measure();
        if (gain < 1e-3 * gap) {
          break; // what is left to gain lies in closed cells
        }
      }
      if (gap <= GAP) {
        return;
      }
    }
  }

  private void settle() {
    hazard[cells] = Double.POSITIVE_INFINITY;
    likelihood.curve(hazard, share);
    value = likelihood.value(hazard, share);
  }

  private void measure() {
    likelihood.pull(share, pull);
    gap = 0;
    for (int j = 1; j <= cells; j++) {
      gap = Math.max(gap, pull[j]);
    }
  }

  /** A step of the convex minorant. */
  private void bend() {
    likelihood.slopes(share, gradient, curvature);
    for (int k = 1; k < cells; k++) {
      double weight = Math.max(curvature[k], 1e-3 * Math.abs(gradient[k]) + 1e-9);
      curvature[k] = weight;
      trial[k] = hazard[k] + gradient[k] / weight;
    }
    Isotonic.regress(trial, curvature, 1, cells);
    for (int k = 1; k < cells && trial[k] < 0; k++) {
      trial[k] = 0;
    }
    accept();
  }

  /** Moves towards the trial as far as it climbs; the gain per life that was in sight. */
  private double accept() {
    double slope = 0;
    for (int k = 1; k < cells; k++) {
      trial[k] -= hazard[k];
      slope += gradient[k] * trial[k];
    }
    double[] direction = trial.clone();
    double fraction = 1;
    for (int halvings = 0; halvings < 40 && slope > 0; halvings++) {
      for (int k = 1; k < cells; k++) {
        // Equal hazards stay equal to the last digit: that is how closed cells are known.
        trial[k] =
            direction[k] == direction[k - 1] && hazard[k] == hazard[k - 1] && k > 1
                ? trial[k - 1]
                : Math.max(k > 1 ? trial[k - 1] : 0, hazard[k] + fraction * direction[k]);
      }
      trial[cells] = Double.POSITIVE_INFINITY;
      likelihood.curve(trial, trialShare);
      double reached = likelihood.value(trial, trialShare);
      boolean noise = fraction * slope < 1e-11 * Math.abs(value);
      if (reached >= value + 0.1 * fraction * slope
          || noise && reached > value - 1e-11 * Math.abs(value)) {
        System.arraycopy(trial, 0, hazard, 0, cells + 1);
        System.arraycopy(trialShare, 0, share, 0, cells + 1);
        value = reached;
        return slope / likelihood.all();
      }
      fraction /= 2;
    }
    return 0;
  }

  /** A Newton step on the open cells; the gain per life that was in sight, 0 where none is left. */
  private double newton() {
    int[] block = new int[cells];
    int blocks = 0;
    for (int k = 1; k < cells; k++) {
      blocks += hazard[k] > hazard[k - 1] ? 1 : 0;
      block[k] = blocks;
    }
    if (blocks == 0 || blocks > TurnbullNewton.MOST_BLOCKS) {
      return 0;
    }
    likelihood.slopes(share, gradient, curvature);
    double[] step = TurnbullNewton.step(likelihood, share, gradient, block, blocks);
    if (step == null) {
      return 0;
    }
    for (int k = 1; k < cells; k++) {
      trial[k] = hazard[k] + step[block[k]];
      curvature[k] = Math.max(curvature[k], 1e-9);
    }
    Isotonic.regress(trial, curvature, 1, cells);
    for (int k = 1; k < cells && trial[k] < 0; k++) {
      trial[k] = 0;
    }
    return accept();
  }

  /** The curve after each cell. */
  double[] share() {
    return share;
  }

  double value() {
    return value;
  }

  double gap() {
    return gap;
  }

  boolean converged() {
    return gap <= GAP;
  }

  int rounds() {
    return rounds;
  }
}

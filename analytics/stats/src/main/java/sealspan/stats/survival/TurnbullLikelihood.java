package sealspan.stats.survival;

/**
 * The log-likelihood of a curve that falls in cells, as a function of its cumulative hazard after
 * each cell. In that form it is concave, also with late entry: a life adds -(H(before) - H(entry))
 * + log(1 - exp(-(H(last) - H(before)))). The curve is 1 after cell 0 and 0 after the last cell.
 */
final class TurnbullLikelihood {
  private final int cells;
  private final int[] before;
  private final int[] last;
  private final double[] lives;
  private final double[] entering;
  private final double all;

  TurnbullLikelihood(TurnbullCells source) {
    cells = source.size();
    before = source.kinds().first();
    last = source.kinds().second();
    lives = source.kinds().count();
    entering = new double[cells + 1];
    for (int k = 0; k <= cells; k++) {
      entering[k] = source.entering(k);
    }
    all = source.all();
  }

  int cells() {
    return cells;
  }

  double all() {
    return all;
  }

  /** The curve of a cumulative hazard; hazard[cells] counts as infinite. */
  void curve(double[] hazard, double[] share) {
    for (int k = 0; k < cells; k++) {
      share[k] = k > 0 && hazard[k] == hazard[k - 1] ? share[k - 1] : StrictMath.exp(-hazard[k]);
    }
    share[cells] = 0;
  }

  /** The log-likelihood; negative infinite where a life could not have ended as it did. */
  double value(double[] hazard, double[] share) {
    double sum = 0;
    for (int k = 1; k < cells; k++) {
      sum += entering[k] * hazard[k];
    }
    LogProduct product = new LogProduct();
    for (int i = 0; i < lives.length; i++) {
      double mass = share[before[i]] - share[last[i]];
      if (!(mass > 0)) {
        return Double.NEGATIVE_INFINITY;
      }
      product.add(lives[i], mass);
    }
    return sum + product.value();
  }

  /**
   * Gradient by the cumulative hazard after each cell, and the negative diagonal of the Hessian.
   */
  void slopes(double[] share, double[] gradient, double[] curvature) {
    System.arraycopy(entering, 0, gradient, 0, cells + 1);
    java.util.Arrays.fill(curvature, 0);
    for (int i = 0; i < lives.length; i++) {
      int a = before[i];
      int b = last[i];
      double inverse = 1 / (share[a] - share[b]);
      double per = lives[i] * inverse;
      gradient[a] -= per * share[a];
      gradient[b] += per * share[b];
      double bend = per * inverse * share[a] * share[b];
      curvature[a] += bend;
      curvature[b] += bend;
    }
  }

  /**
   * For each cell, how fast the log-likelihood grows with mass put there, per life: at the maximum
   * at most 0, and 0 where there is mass. The mass-weighted sum is always 0.
   */
  void pull(double[] share, double[] pull) {
    cover(share, pull);
    double running = 0;
    double watched = 0;
    for (int j = 1; j <= cells; j++) {
      watched += entering[j - 1] == 0 ? 0 : entering[j - 1] / share[j - 1];
      running += pull[j];
      pull[j] = (running - watched) / all;
    }
  }

  /** Changes, from cell to cell, of the sum of lives / mass over the lives that cover the cell. */
  private void cover(double[] share, double[] change) {
    java.util.Arrays.fill(change, 0);
    for (int i = 0; i < lives.length; i++) {
      double per = lives[i] / (share[before[i]] - share[last[i]]);
      change[before[i] + 1] += per;
      if (last[i] < cells) {
        change[last[i] + 1] -= per;
      }
    }
  }

  /**
   * One step of expectation and maximisation: expected ends in each cell over expected lives at
   * risk there; never lowers the likelihood.
   */
  void expectAndMaximise(double[] hazard, double[] share, double[] ends) {
    cover(share, ends);
    double running = 0;
    for (int j = 1; j <= cells; j++) {
      running += ends[j];
      ends[j] = running * (share[j - 1] - share[j]);
    }
    double left = all;
    double notYet = all;
    for (int j = 1; j < cells; j++) {
      notYet -= entering[j - 1];
      double atRisk = left - Math.max(0, notYet);
      double part = ends[j] > 0 ? Math.min(ends[j] / atRisk, 1 - 1e-12) : 0;
      hazard[j] = hazard[j - 1] - (part > 0 ? StrictMath.log1p(-part) : 0);
      left -= ends[j];
    }
  }

  /** Calls for every kind of life that has a known last cell; see {@link TurnbullNewton}. */
  void eachEnclosed(double[] share, Edge edge) {
    for (int i = 0; i < lives.length; i++) {
      if (last[i] < cells) {
        double mass = share[before[i]] - share[last[i]];
        edge.between(
            before[i], last[i], lives[i] * share[before[i]] * share[last[i]] / mass / mass);
      }
    }
  }

  /** What ties the hazards after two cells together. */
  interface Edge {
    void between(int before, int last, double stiffness);
  }
}

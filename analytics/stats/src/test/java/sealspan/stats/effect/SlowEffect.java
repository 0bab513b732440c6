package sealspan.stats.effect;

/**
 * The risks among comparable cases, written a second time: gradient ascent with a fixed small step
 * instead of Newton's method, bisection for the shift.
 */
final class SlowEffect {
  private SlowEffect() {}

  static double[] risks(ComparedCases cases) {
    int n = cases.size();
    double[] choice = ascend(cases, true, null);
    double[] e = new double[n];
    for (int i = 0; i < n; i++) {
      e[i] = 1 / (1 + Math.exp(-predictor(cases, choice, i)));
    }
    double[] risks = new double[2];
    for (int arm = 0; arm < 2; arm++) {
      double[] outcome = ascend(cases, false, arm == 1);
      double low = -5;
      double high = 5;
      while (high - low > 1e-12) {
        double middle = (low + high) / 2;
        double unmet = 0;
        for (int i = 0; i < n; i++) {
          if (cases.second()[i] == (arm == 1)) {
            double p = risk(predictor(cases, outcome, i) + middle, cases.exposure()[i]);
            unmet += (arm == 1 ? 1 - e[i] : e[i]) * ((cases.failed()[i] ? 1 : 0) - p);
          }
        }
        if (unmet > 0) {
          low = middle;
        } else {
          high = middle;
        }
      }
      double total = 0;
      for (int i = 0; i < n; i++) {
        risks[arm] += e[i] * (1 - e[i]) * risk(predictor(cases, outcome, i) + low, 1);
        total += e[i] * (1 - e[i]);
      }
      risks[arm] /= total;
    }
    return risks;
  }

  private static double risk(double logHazard, double exposure) {
    return 1 - Math.exp(-Math.exp(logHazard) * exposure);
  }

  private static double predictor(ComparedCases cases, double[] at, int i) {
    double sum = at[0];
    for (int j = 1; j < at.length; j++) {
      sum += at[j] * cases.scaled()[j - 1][i];
    }
    return sum;
  }

  /** Of the choice, or of what followed one action; normal priors of variance 1. */
  private static double[] ascend(ComparedCases cases, boolean ofChoice, Boolean second) {
    double[] at = new double[cases.scaled().length + 1];
    for (int step = 0; step < 20_000; step++) {
      double[] gradient = new double[at.length];
      for (int i = 0; i < cases.size(); i++) {
        if (ofChoice || cases.second()[i] == second) {
          double x = predictor(cases, at, i);
          double score;
          if (ofChoice) {
            score = (cases.second()[i] ? 1 : 0) - 1 / (1 + Math.exp(-x));
          } else {
            double c = Math.exp(x) * cases.exposure()[i];
            score = cases.failed()[i] ? c * Math.exp(-c) / (1 - Math.exp(-c)) : -c;
          }
          gradient[0] += score;
          for (int j = 1; j < at.length; j++) {
            gradient[j] += score * cases.scaled()[j - 1][i];
          }
        }
      }
      double longest = 0;
      for (int j = 0; j < at.length; j++) {
        gradient[j] -= j == 0 ? 0 : at[j];
        at[j] += gradient[j] / cases.size();
        longest = Math.max(longest, Math.abs(gradient[j]));
      }
      if (longest < 1e-9) {
        return at;
      }
    }
    throw new IllegalStateException("the slow algorithm did not arrive");
  }
}

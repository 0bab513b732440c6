package sealspan.stats.effect;

import java.util.ArrayList;
import java.util.List;

/**
 * How alike the two groups were before, in one respect, as they came and after weighting.
 *
 * @param covariate in which respect
 * @param firstMean mean of the cases with the first action
 * @param secondMean mean of those with the second
 * @param deviation root of the mean of the two variances; 0 where neither group varies
 * @param firstWeightedMean weighted mean of the first
 * @param secondWeightedMean weighted mean of the second
 */
public record Balance(
    String covariate,
    double firstMean,
    double secondMean,
    double deviation,
    double firstWeightedMean,
    double secondWeightedMean) {

  /** Second less first in standard deviations, as they came; 0 where nothing varies. */
  public double before() {
    return deviation == 0 ? 0 : (secondMean - firstMean) / deviation;
  }

  /** The same after weighting, in the same standard deviations. */
  public double after() {
    return deviation == 0 ? 0 : (secondWeightedMean - firstWeightedMean) / deviation;
  }

  /** The balance of every covariate, for weights of the cases. */
  static List<Balance> of(ComparedCases cases, double[] weight) {
    List<Balance> balances = new ArrayList<>();
    for (int j = 0; j < cases.names().size(); j++) {
      double[] column = cases.scaled()[j];
      double[] n = new double[2];
      double[] weights = new double[2];
      double[] sum = new double[2];
      double[] squares = new double[2];
      double[] weighted = new double[2];
      for (int i = 0; i < column.length; i++) {
        int arm = cases.second()[i] ? 1 : 0;
        n[arm]++;
        weights[arm] += weight[i];
        sum[arm] += column[i];
        squares[arm] += column[i] * column[i];
        weighted[arm] += weight[i] * column[i];
      }
      double variances = 0;
      for (int arm = 0; arm < 2; arm++) {
        sum[arm] /= n[arm];
        weighted[arm] /= weights[arm];
        variances += Math.max(0, squares[arm] / n[arm] - sum[arm] * sum[arm]);
      }
      double unit = cases.asGiven(j, 1) - cases.asGiven(j, 0);
      balances.add(
          new Balance(
              cases.names().get(j),
              cases.asGiven(j, sum[0]),
              cases.asGiven(j, sum[1]),
              variances < 1e-18 ? 0 : unit * Math.sqrt(variances / 2),
              cases.asGiven(j, weighted[0]),
              cases.asGiven(j, weighted[1])));
    }
    return balances;
  }
}

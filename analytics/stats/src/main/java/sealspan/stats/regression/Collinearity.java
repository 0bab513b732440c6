package sealspan.stats.regression;

import java.util.ArrayList;
import java.util.List;

/** Finds columns that add nothing to the columns before them. */
final class Collinearity {
  private static final double NOTHING_LEFT = 1e-10;

  private Collinearity() {}

  /** Columns without a ridge whose weighted residual on the earlier ones is nil. */
  static List<String> dependentColumns(Observations data, double[] penalties) {
    int p = penalties.length;
    double[][] products = new double[p][p];
    for (int j = 0; j < p; j++) {
      for (int k = 0; k <= j; k++) {
        products[j][k] = product(data, j, k);
      }
    }
    List<String> dependent = new ArrayList<>();
    double[] whole = new double[p];
    for (int j = 0; j < p; j++) {
      whole[j] = products[j][j];
    }
    boolean[] kept = new boolean[p];
    for (int j = 0; j < p; j++) {
      kept[j] = products[j][j] > NOTHING_LEFT * whole[j];
      if (!kept[j]) {
        if (penalties[j] == 0) {
          dependent.add(data.design().names().get(j));
        }
        continue;
      }
      for (int i = j + 1; i < p; i++) {
        double share = products[i][j] / products[j][j];
        for (int k = j + 1; k <= i; k++) {
          products[i][k] -= share * products[k][j];
        }
      }
    }
    return dependent;
  }

  private static double product(Observations data, int j, int k) {
    double[] a = data.design().values(j);
    double[] b = data.design().values(k);
    double[] weight = data.weight();
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += weight[i] * a[i] * b[i];
    }
    return sum;
  }
}

package sealspan.stats.watch;

import java.util.ArrayList;
import java.util.List;

/**
 * The sums from their definition, independently: of every pair the product of ratios from each
 * start to now, added up over the starts; nothing is carried from test to test.
 */
final class SlowWatch {
  private static final double[] RHO = {1.5, 2.5, 4};

  private final double[] weight;
  private final List<double[][]> ratios = new ArrayList<>();

  SlowWatch(double[] weight) {
    this.weight = weight;
  }

  /** Takes in a test; {@code in} says for every zone whether it lies there. */
  double observe(boolean[] in, double p, boolean found) {
    double[][] ratio = new double[weight.length][RHO.length];
    for (int z = 0; z < weight.length; z++) {
      for (int k = 0; k < RHO.length; k++) {
        double q = Math.min(RHO[k] * p, .9);
        ratio[z][k] = !in[z] ? 1 : found ? q / p : (1 - q) / (1 - p);
      }
    }
    ratios.add(ratio);
    double all = 0;
    for (int z = 0; z < weight.length; z++) {
      for (int k = 0; k < RHO.length; k++) {
        all += weight[z] / RHO.length * sum(z, k);
      }
    }
    return all;
  }

  double sum(int zone, int k) {
    double sum = 0;
    for (int start = 0; start < ratios.size(); start++) {
      double product = 1;
      for (int j = start; j < ratios.size(); j++) {
        product *= ratios.get(j)[zone][k];
      }
      sum += product;
    }
    return sum;
  }

  void restart() {
    ratios.clear();
  }
}

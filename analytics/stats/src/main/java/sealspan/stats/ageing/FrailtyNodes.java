package sealspan.stats.ageing;

import java.util.Arrays;
import org.hipparchus.analysis.integration.gauss.HermiteRuleFactory;
import org.hipparchus.util.Pair;

/** Gauss-Hermite nodes and weights for a standard normal variable. */
final class FrailtyNodes {
  /** Number of nodes. */
  static final int COUNT = 15;

  /** The nodes, ascending. */
  static final double[] NODE = new double[COUNT];

  /** Their logarithmic weights; the weights add up to 1. */
  static final double[] LOG_WEIGHT = new double[COUNT];

  static {
    Pair<double[], double[]> rule = new HermiteRuleFactory().getRule(COUNT);
    double sum = Arrays.stream(rule.getSecond()).sum();
    for (int m = 0; m < COUNT; m++) {
      NODE[m] = Math.sqrt(2) * rule.getFirst()[m];
      LOG_WEIGHT[m] = StrictMath.log(rule.getSecond()[m] / sum);
    }
  }

  private FrailtyNodes() {}
}

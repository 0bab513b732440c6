package sealspan.stats.rates;

import org.hipparchus.special.Gamma;

/**
 * A gamma prior on the nodes of a grid, multiplied by the powers of log(rate / mean) and rate /
 * mean whose posterior moments the fit needs.
 */
final class PriorNodes {
  private final double[] mass;
  private final double[] v;
  private final double[] r;
  private final double[] vv;
  private final double[] vr;
  private final double[] rr;

  PriorNodes(LikelihoodRows rows, double logShape, double logMean) {
    int nodes = rows.nodes();
    mass = new double[nodes];
    v = new double[nodes];
    r = new double[nodes];
    vv = new double[nodes];
    vr = new double[nodes];
    rr = new double[nodes];
    double shape = StrictMath.exp(logShape);
    double constant = shape * logShape - Gamma.logGamma(shape) + StrictMath.log(rows.step());
    for (int g = 0; g < nodes; g++) {
      double logRatio = rows.logRate(g) - logMean;
      double ratio = StrictMath.exp(logRatio);
      double p = StrictMath.exp(constant + shape * (logRatio - ratio));
      mass[g] = p;
      v[g] = p * logRatio;
      r[g] = p * ratio;
      vv[g] = v[g] * logRatio;
      vr[g] = v[g] * ratio;
      rr[g] = r[g] * ratio;
    }
  }

  /** Adds units with this likelihood row (up to a factor exp(offset)) to the surface. */
  void add(GammaSurface surface, long count, double offset, double[] row) {
    double total = 0;
    double sumV = 0;
    double sumR = 0;
    double sumVv = 0;
    double sumVr = 0;
    double sumRr = 0;
    for (int g = 0; g < row.length; g++) {
      double likelihood = row[g];
      total += likelihood * mass[g];
      sumV += likelihood * v[g];
      sumR += likelihood * r[g];
      sumVv += likelihood * vv[g];
      sumVr += likelihood * vr[g];
      sumRr += likelihood * rr[g];
    }
    double meanV = sumV / total;
    double meanR = sumR / total;
    surface.add(
        count,
        offset + StrictMath.log(total),
        meanV,
        meanR,
        sumVv / total - meanV * meanV,
        sumVr / total - meanV * meanR,
        sumRr / total - meanR * meanR);
  }
}

package sealspan.stats.ageing;

/**
 * The virtual age of one unit as it goes through its life, with first and second derivatives in the
 * logits of the shares that repairs leave; and the cumulative hazard that goes with an age, with
 * derivatives in all four parameters.
 *
 * <p>Derivatives lie in arrays of 15: the value; the slopes in log shape, log scale and the two
 * logits; the ten second derivatives, row by row of the upper half.
 */
final class AgeTrace {
  static final int SLOPES = 4;
  static final int SIZE = 15;
  static final int[] ROW = {0, 0, 0, 0, 1, 1, 1, 2, 2, 3};
  static final int[] COLUMN = {0, 1, 2, 3, 1, 2, 3, 2, 3, 3};

  private final VirtualAge model;
  private final double shape;
  private final double logScale;
  private final double[] share = new double[2];

  /** Age just after the last repair. */
  private double base;

  private double base0;
  private double base1;
  private double base00;
  private double base01;
  private double base11;

  AgeTrace(VirtualAge model, double[] parameters) {
    this.model = model;
    shape = StrictMath.exp(parameters[0]);
    logScale = parameters[1];
    for (int k = 0; k < 2; k++) {
      share[k] = 1 / (1 + StrictMath.exp(-parameters[2 + k]));
    }
  }

  void startNew() {
    base = 0;
    base0 = 0;
    base1 = 0;
    base00 = 0;
    base01 = 0;
    base11 = 0;
  }

  /** A repair of a kind, a time after the last. */
  void repair(int kind, double since) {
    double q = share[kind];
    double slope = q * (1 - q);
    double bend = slope * (1 - 2 * q);
    double reached;
    double kept;
    if (model == VirtualAge.KIJIMA_I) {
      reached = since;
      kept = 1;
      base += q * since;
    } else {
      reached = base + since;
      kept = q;
      base = q * reached;
      if (kind == 0) {
        base00 = kept * base00 + 2 * slope * base0;
        base01 = kept * base01 + slope * base1;
        base11 = kept * base11;
      } else {
        base00 = kept * base00;
        base01 = kept * base01 + slope * base0;
        base11 = kept * base11 + 2 * slope * base1;
      }
      base0 = kept * base0;
      base1 = kept * base1;
    }
    if (kind == 0) {
      base0 += slope * reached;
      base00 += bend * reached;
    } else {
      base1 += slope * reached;
      base11 += bend * reached;
    }
  }

  /** Adds the sign times the cumulative hazard at a time since the last repair. */
  void addHazard(double sign, double since, double logSince, double[] sum) {
    double age = base + since;
    if (age <= 0) {
      return;
    }
    double log = (base == 0 ? logSince : StrictMath.log(age)) - logScale;
    double hazard = sign * StrictMath.exp(shape * log);
    double u = shape * hazard;
    double once = 1 + shape * log;
    sum[0] += hazard;
    sum[1] += u * log;
    sum[2] -= u;
    sum[5] += u * log * once;
    sum[6] -= u * once;
    sum[9] += shape * u;
    if (base == 0) {
      return;
    }
    double r0 = base0 / age;
    double r1 = base1 / age;
    sum[3] += u * r0;
    sum[4] += u * r1;
    sum[7] += u * once * r0;
    sum[8] += u * once * r1;
    sum[10] -= u * shape * r0;
    sum[11] -= u * shape * r1;
    sum[12] += u * ((shape - 1) * r0 * r0 + base00 / age);
    sum[13] += u * ((shape - 1) * r0 * r1 + base01 / age);
    sum[14] += u * ((shape - 1) * r1 * r1 + base11 / age);
  }

  /** Adds the logarithm of the hazard at a time since the last repair. */
  void addLogHazard(double since, double[] sum) {
    double age = base + since;
    double log = StrictMath.log(age) - logScale;
    double r0 = base0 / age;
    double r1 = base1 / age;
    sum[0] += StrictMath.log(shape / age) + shape * log;
    sum[1] += 1 + shape * log;
    sum[2] -= shape;
    sum[3] += (shape - 1) * r0;
    sum[4] += (shape - 1) * r1;
    sum[5] += shape * log;
    sum[6] -= shape;
    sum[7] += shape * r0;
    sum[8] += shape * r1;
    sum[12] += (shape - 1) * (base00 / age - r0 * r0);
    sum[13] += (shape - 1) * (base01 / age - r0 * r1);
    sum[14] += (shape - 1) * (base11 / age - r1 * r1);
  }
}

package sealspan.stats.ageing;

/**
 * A log-likelihood with its derivatives. Parameters are log shape, log scale, the logits of the two
 * shares that repairs leave, and the standard deviation of the log frailty.
 */
record AgeingPoint(double[] at, double value, double[] slope, double[][] bend) {
  static final int SHAPE = 0;
  static final int SCALE = 1;
  static final int SHARE = 2;
  static final int FRAILTY = 4;
  static final int PARAMETERS = 5;

  /** From a sum of 15 without frailty. */
  static AgeingPoint of(double[] at, double[] sum) {
    double[] slope = new double[PARAMETERS];
    double[][] bend = new double[PARAMETERS][PARAMETERS];
    System.arraycopy(sum, 1, slope, 0, AgeTrace.SLOPES);
    for (int k = 0; k < AgeTrace.ROW.length; k++) {
      bend[AgeTrace.ROW[k]][AgeTrace.COLUMN[k]] = sum[5 + k];
      bend[AgeTrace.COLUMN[k]][AgeTrace.ROW[k]] = sum[5 + k];
    }
    return new AgeingPoint(at, sum[0], slope, bend);
  }

  /** With a normal prior of one parameter added. */
  AgeingPoint plusNormal(int parameter, double mean, double deviation) {
    double off = (at[parameter] - mean) / deviation;
    double[] newSlope = slope.clone();
    double[][] newBend = bend.clone();
    newBend[parameter] = bend[parameter].clone();
    newSlope[parameter] -= off / deviation;
    newBend[parameter][parameter] -= 1 / (deviation * deviation);
    return new AgeingPoint(at, value - off * off / 2, newSlope, newBend);
  }
}

package sealspan.stats.degradation;

/**
 * The Kalman filter of one run. What is unknown are the level, the drift of the unit and the bias
 * of the gauge; before the first number was read, nothing is known of the level.
 */
final class LevelFilter {
  /** Guards against an exact gauge: no difference of readings tells more than this. */
  private static final double LEAST_VARIANCE = 1e-12;

  /** A reading farther from the others than this many standard deviations begins a level anew. */
  static final double FARTHEST_SDS = 6;

  private double level;
  private double drift;
  private double bias;
  private double levelVariance;
  private double driftVariance;
  private double biasVariance;
  private double levelDrift;
  private double levelBias;
  private double driftBias;
  private boolean known;

  /** Begins with a level of which nothing is known. */
  void begin(double driftMean, double varianceOfDrift) {
    begin(0, 0, driftMean, varianceOfDrift, 0);
    known = false;
  }

  /** Begins with a level and drift drawn from a normal distribution. */
  void begin(
      double levelMean,
      double varianceOfLevel,
      double driftMean,
      double varianceOfDrift,
      double covariance) {
    level = levelMean;
    drift = driftMean;
    levelVariance = varianceOfLevel;
    driftVariance = varianceOfDrift;
    levelDrift = covariance;
    newGauge(0);
    known = true;
  }

  /** Whether anything is known of the level. */
  boolean known() {
    return known;
  }

  /** The gauge was calibrated or is another one: nothing is known of its bias. */
  void newGauge(double varianceOfBias) {
    bias = 0;
    biasVariance = varianceOfBias;
    levelBias = 0;
    driftBias = 0;
  }

  /** Lets days go by. */
  void advance(double days, double volatilitySquared) {
    level += drift * days;
    levelVariance += days * (2 * levelDrift + days * driftVariance + volatilitySquared);
    levelDrift += days * driftVariance;
    levelBias += days * driftBias;
  }

  /** Mean of the next reading. */
  double mean() {
    return level + bias;
  }

  /** Variance of the next reading. */
  double variance(double ownVariance) {
    double variance = levelVariance + 2 * levelBias + biasVariance + ownVariance;
    return Math.max(variance, LEAST_VARIANCE);
  }

  /**
   * Takes in a number. One that lies much too far from what those before it say is a slip in
   * writing, or somebody acted on the component and did not record it: then the level begins anew
   * with it, and what is known of the drift stays.
   */
  void take(double value, double ownVariance) {
    known &= Math.abs(value - mean()) <= FARTHEST_SDS * Math.sqrt(variance(ownVariance));
    if (known) {
      double variance = variance(ownVariance);
      correct((value - mean()) / variance, 1 / variance);
    } else {
      known = true;
      level = value - bias;
      levelVariance = biasVariance + ownVariance;
      levelBias = -biasVariance;
      levelDrift = -driftBias;
    }
  }

  /**
   * Takes in that the reading was at most a value, by the first two moments of what is left
   * (Tobit); nothing where the level was not known.
   */
  void takeAtMost(double value, double ownVariance) {
    if (known) {
      double variance = variance(ownVariance);
      double sd = Math.sqrt(variance);
      double z = (value - mean()) / sd;
      double mills = Bell.inverseMills(z);
      correct(-mills / sd, Math.min(1, mills * (mills + z)) / variance);
    }
  }

  /** Moves the means by gain times a pull, and lowers the variances by gain squared times a cut. */
  private void correct(double pull, double cut) {
    double gainLevel = levelVariance + levelBias;
    double gainDrift = levelDrift + driftBias;
    double gainBias = levelBias + biasVariance;
    level += gainLevel * pull;
    drift += gainDrift * pull;
    bias += gainBias * pull;
    levelVariance = Math.max(0, levelVariance - gainLevel * gainLevel * cut);
    driftVariance = Math.max(0, driftVariance - gainDrift * gainDrift * cut);
    biasVariance = Math.max(0, biasVariance - gainBias * gainBias * cut);
    levelDrift -= gainLevel * gainDrift * cut;
    levelBias -= gainLevel * gainBias * cut;
    driftBias -= gainDrift * gainBias * cut;
  }

  /** What is known of level and drift on the day reached. */
  LevelState state(int day) {
    return new LevelState(day, level, levelVariance, drift, driftVariance, levelDrift);
  }
}

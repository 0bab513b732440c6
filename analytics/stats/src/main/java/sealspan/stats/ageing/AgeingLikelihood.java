package sealspan.stats.ageing;

/**
 * The closed-form log-likelihood of lives under a Weibull hazard of the virtual age, one pass over
 * all steps: a pass over a stretch has probability exp(-d), a failure found after it 1 - exp(-d),
 * where d is the cumulative hazard gained. Wear is taken to go on until the test, so the age before
 * a repair is known.
 */
final class AgeingLikelihood {
  /** Above this a failure is certain to working precision. */
  private static final double CERTAIN = 700;

  private final RepairedLives lives;
  private final VirtualAge model;

  AgeingLikelihood(RepairedLives lives, VirtualAge model) {
    this.lives = lives;
    this.model = model;
  }

  int failures() {
    return lives.failures;
  }

  /** Whether a repair of the kind is followed by a stretch. */
  boolean tells(int kind) {
    return lives.seenAfter[kind];
  }

  /** Value and derivatives; without frailty where its deviation is 0. */
  AgeingPoint at(double[] parameters) {
    double deviation = parameters[AgeingPoint.FRAILTY];
    return deviation == 0 ? alike(parameters) : frail(parameters, new FrailtySum(deviation));
  }

  private AgeingPoint frail(double[] parameters, FrailtySum sum) {
    AgeTrace trace = new AgeTrace(model, parameters);
    for (int u = 0; u < lives.units; u++) {
      trace.startNew();
      sum.startUnit();
      for (int i = lives.first[u]; i < lives.first[u + 1]; i++) {
        byte step = lives.steps[i];
        if (step == RepairedLife.PASSED) {
          addGain(trace, i, 1, sum.passed());
        } else if (step == RepairedLife.FAILED) {
          addGain(trace, i, 1, sum.failure());
        } else if (step == RepairedLife.FAILED_AT_END) {
          addGain(trace, i, 1, sum.passed());
          trace.addLogHazard(lives.to[i], sum.exactFailure());
        } else if (step == RepairedLife.REPLACED) {
          trace.startNew();
        } else {
          trace.repair(step - RepairedLife.REPAIRED, lives.to[i]);
        }
      }
      sum.endUnit();
    }
    return sum.point(parameters);
  }

  private AgeingPoint alike(double[] parameters) {
    AgeTrace trace = new AgeTrace(model, parameters);
    double[] sum = new double[AgeTrace.SIZE];
    double[] gained = new double[AgeTrace.SIZE];
    for (int u = 0; u < lives.units; u++) {
      trace.startNew();
      for (int i = lives.first[u]; i < lives.first[u + 1]; i++) {
        byte step = lives.steps[i];
        if (step == RepairedLife.PASSED) {
          addGain(trace, i, -1, sum);
        } else if (step == RepairedLife.FAILED) {
          java.util.Arrays.fill(gained, 0);
          addGain(trace, i, 1, gained);
          addFailure(gained, sum);
        } else if (step == RepairedLife.FAILED_AT_END) {
          addGain(trace, i, -1, sum);
          trace.addLogHazard(lives.to[i], sum);
        } else if (step == RepairedLife.REPLACED) {
          trace.startNew();
        } else {
          trace.repair(step - RepairedLife.REPAIRED, lives.to[i]);
        }
      }
    }
    return AgeingPoint.of(parameters, sum);
  }

  /** The hazard gained by all units over all stretches. */
  double hazardGained(double[] parameters) {
    AgeTrace trace = new AgeTrace(model, parameters);
    double[] sum = new double[AgeTrace.SIZE];
    for (int u = 0; u < lives.units; u++) {
      trace.startNew();
      for (int i = lives.first[u]; i < lives.first[u + 1]; i++) {
        byte step = lives.steps[i];
        if (step < RepairedLife.REPLACED) {
          addGain(trace, i, 1, sum);
        } else if (step == RepairedLife.REPLACED) {
          trace.startNew();
        } else {
          trace.repair(step - RepairedLife.REPAIRED, lives.to[i]);
        }
      }
    }
    return sum[0];
  }

  private void addGain(AgeTrace trace, int step, double sign, double[] sum) {
    trace.addHazard(sign, lives.to[step], lives.logTo[step], sum);
    trace.addHazard(-sign, lives.from[step], lives.logFrom[step], sum);
  }

  /** Adds log(1 - exp(-d)) for the hazard d gained, with its derivatives. */
  private static void addFailure(double[] gained, double[] sum) {
    double d = gained[0];
    if (d > CERTAIN) {
      return;
    }
    double odds = StrictMath.expm1(d);
    double first = 1 / odds;
    double second = -first * (1 + first);
    sum[0] += StrictMath.log(-StrictMath.expm1(-d));
    for (int j = 1; j <= AgeTrace.SLOPES; j++) {
      sum[j] += first * gained[j];
    }
    for (int k = 0; k < AgeTrace.ROW.length; k++) {
      sum[5 + k] +=
          first * gained[5 + k]
              + second * gained[1 + AgeTrace.ROW[k]] * gained[1 + AgeTrace.COLUMN[k]];
    }
  }
}

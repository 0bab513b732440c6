package sealspan.stats.effect;

import java.util.Arrays;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.RootSearch;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.Regression;
import sealspan.stats.regression.RegressionFit;
import sealspan.stats.regression.Ridge;

/** The work behind {@link ActionEffect}. */
final class EffectFit {
  /** A normal prior of variance 1 for the coefficient of every scaled covariate. */
  private static final Ridge RIDGE = new Ridge(1);

  private final ComparedCases cases;
  private final double level;
  private final int size;
  private final double[] logExposure;
  private final double[] chance;
  private final double[] overlap;
  private final double[] weight;
  private FittedPart choice;

  EffectFit(ComparedCases cases, double level) {
    this.cases = cases;
    this.level = level;
    this.size = cases.size();
    this.logExposure = Arrays.stream(cases.exposure()).map(StrictMath::log).toArray();
    this.chance = new double[size];
    this.overlap = new double[size];
    this.weight = new double[size];
  }

  Estimate<ActionEffect> estimate() {
    Observations data = Observations.of(cases.design(), indicators(cases.second()));
    Estimate<RegressionFit> choices = Regression.fit(Family.LOGISTIC, data, RIDGE);
    if (choices instanceof Estimate.NotIdentified<RegressionFit> none) {
      return Estimate.notIdentified("the choice of the action has no model: " + none.because());
    }
    weigh(choices.orThrow());
    List<Balance> balance = Balance.of(cases, weight);
    String unlike = unlike(balance);
    if (unlike != null) {
      return Estimate.notIdentified(unlike);
    }
    OutcomePart[] outcomes = new OutcomePart[2];
    for (Arm arm : Arm.values()) {
      Estimate<OutcomePart> outcome = outcome(data, arm);
      if (outcome instanceof Estimate.NotIdentified<OutcomePart> none) {
        return Estimate.notIdentified(none.because());
      }
      outcomes[arm.ordinal()] = outcome.orThrow();
    }
    return Estimate.of(
        new ActionEffect(
            comparable(outcomes),
            all(outcomes),
            balance,
            effective(false),
            effective(true),
            comparableShare()));
  }

  private void weigh(RegressionFit fit) {
    double[] scores = new double[size];
    choice = new FittedPart(fit, scores);
    double[] predictor = choice.predictor(cases);
    for (int i = 0; i < size; i++) {
      chance[i] = Family.LOGISTIC.mean(predictor[i]);
      boolean second = cases.second()[i];
      scores[i] = (second ? 1 : 0) - chance[i];
      overlap[i] = chance[i] * (1 - chance[i]);
      weight[i] = second ? 1 - chance[i] : chance[i];
    }
    double[] widening = choice.widening(cases, overlap);
    for (int i = 0; i < size; i++) {
      scores[i] *= widening[i];
    }
  }

  /** Why there are no comparable cases; null where there are. */
  private String unlike(List<Balance> balance) {
    for (Arm arm : Arm.values()) {
      int failures = 0;
      int held = 0;
      for (int i = 0; i < size; i++) {
        if (cases.second()[i] == (arm == Arm.SECOND) && isComparable(i)) {
          failures += cases.failed()[i] ? 1 : 0;
          held += cases.failed()[i] ? 0 : 1;
        }
      }
      if (Math.min(failures, held) < ActionEffect.FEWEST_OF_A_KIND) {
        return "no comparable cases: of those that might as well have got the other action, only "
            + (failures < held ? failures + " failed" : held + " held")
            + " after "
            + (arm == Arm.FIRST ? "the first action" : "the second action");
      }
    }
    for (Balance one : balance) {
      if (Math.abs(one.after()) > ActionEffect.LARGEST_DIFFERENCE) {
        return "no comparable cases: "
            + one.covariate()
            + " sets the two groups apart, even after weighting";
      }
    }
    return null;
  }

  private boolean isComparable(int at) {
    return chance[at] >= ActionEffect.LEAST_PROBABILITY
        && chance[at] <= 1 - ActionEffect.LEAST_PROBABILITY;
  }

  private double comparableShare() {
    int count = 0;
    for (int i = 0; i < size; i++) {
      count += isComparable(i) ? 1 : 0;
    }
    return count / (double) size;
  }

  private double effective(boolean second) {
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < size; i++) {
      if (cases.second()[i] == second) {
        sum += weight[i];
        squares += weight[i] * weight[i];
      }
    }
    return sum * sum / squares;
  }

  private static double[] indicators(boolean[] flags) {
    double[] values = new double[flags.length];
    for (int i = 0; i < flags.length; i++) {
      values[i] = flags[i] ? 1 : 0;
    }
    return values;
  }

  /**
   * What followed one action.
   *
   * @param part the model
   * @param jackknifed the model with residuals over one less leverage (HC3 of MacKinnon and White
   *     1985): for risks of all cases, which reach beyond those that got the action
   * @param predictor log hazard of every case after the action
   * @param shift what the log hazards are raised by, to meet the weighted failures of the group
   * @param shiftInfluence by how much each case moves the shift
   */
  private record OutcomePart(
      FittedPart part,
      FittedPart jackknifed,
      double[] predictor,
      double shift,
      double[] shiftInfluence) {}

  private Estimate<OutcomePart> outcome(Observations data, Arm arm) {
    double[] inArm = new double[size];
    for (int i = 0; i < size; i++) {
      inArm[i] = cases.second()[i] == (arm == Arm.SECOND) ? 1 : 0;
    }
    Observations observations =
        Observations.of(data.design(), indicators(cases.failed()))
            .offset(logExposure)
            .weight(inArm)
            .cluster(cases.unit());
    Estimate<RegressionFit> fit = Regression.fit(Family.CLOGLOG, observations, RIDGE);
    if (fit instanceof Estimate.NotIdentified<RegressionFit> none) {
      return Estimate.notIdentified("what followed has no model: " + none.because());
    }
    double[] scores = new double[size];
    FittedPart part = new FittedPart(fit.orThrow(), scores);
    double[] predictor = part.predictor(cases);
    double[] information = new double[size];
    for (int i = 0; i < size; i++) {
      information[i] = inArm[i] * Hazard.information(predictor[i] + logExposure[i]);
    }
    double[] widening = part.widening(cases, information);
    for (int i = 0; i < size; i++) {
      scores[i] =
          inArm[i] * Hazard.score(cases.failed()[i], predictor[i] + logExposure[i]) * widening[i];
    }
    double[] twice = new double[size];
    for (int i = 0; i < size; i++) {
      twice[i] = scores[i] * widening[i];
    }
    FittedPart jackknifed = new FittedPart(fit.orThrow(), twice);
    double shift = RootSearch.around(s -> unmet(inArm, predictor, s), 0, 0.5);
    double[] influence = shiftInfluence(arm, part, predictor, shift, inArm, widening);
    return Estimate.of(new OutcomePart(part, jackknifed, predictor, shift, influence));
  }

  /** Weighted failures of a group less those that the shifted model expects. */
  private double unmet(double[] inArm, double[] predictor, double shift) {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      if (inArm[i] > 0) {
        sum += weight[i] * residual(i, predictor[i] + shift);
      }
    }
    return sum;
  }

  private double residual(int at, double logHazard) {
    return (cases.failed()[at] ? 1 : 0) - Family.CLOGLOG.mean(logHazard + logExposure[at]);
  }

  private double[] shiftInfluence(
      Arm arm,
      FittedPart part,
      double[] predictor,
      double shift,
      double[] inArm,
      double[] widening) {
    double[] influence = new double[size];
    double[] byOutcome = new double[size];
    double[] byChoice = new double[size];
    double steepness = 0;
    for (int i = 0; i < size; i++) {
      if (inArm[i] > 0) {
        double logHazard = predictor[i] + shift;
        double residual = residual(i, logHazard);
        influence[i] = weight[i] * residual * widening[i];
        byOutcome[i] = -weight[i] * Hazard.slope(logHazard + logExposure[i]);
        steepness -= byOutcome[i];
        byChoice[i] = (arm == Arm.SECOND ? -overlap[i] : overlap[i]) * residual;
      }
    }
    part.pass(cases, FittedPart.gradient(cases, byOutcome), 1, influence);
    choice.pass(cases, FittedPart.gradient(cases, byChoice), 1, influence);
    for (int i = 0; i < size; i++) {
      influence[i] /= steepness;
    }
    return influence;
  }

  private ActionEffect.Risks comparable(OutcomePart[] outcomes) {
    double total = Arrays.stream(overlap).sum();
    double[] risk = new double[2];
    double[][] influence = new double[2][size];
    for (int arm = 0; arm < 2; arm++) {
      OutcomePart outcome = outcomes[arm];
      double sum = 0;
      double bySum = 0;
      double[] byOutcome = new double[size];
      double[] risks = new double[size];
      for (int i = 0; i < size; i++) {
        double logHazard = outcome.predictor[i] + outcome.shift;
        risks[i] = Family.CLOGLOG.mean(logHazard);
        sum += overlap[i] * risks[i];
        byOutcome[i] = overlap[i] * Hazard.slope(logHazard) / total;
        bySum += byOutcome[i];
      }
      risk[arm] = sum / total;
      double[] byChoice = new double[size];
      for (int i = 0; i < size; i++) {
        double off = risks[i] - risk[arm];
        influence[arm][i] = overlap[i] * off / total + bySum * outcome.shiftInfluence[i];
        byChoice[i] = overlap[i] * (1 - 2 * chance[i]) * off / total;
      }
      outcome.part.pass(cases, FittedPart.gradient(cases, byOutcome), 1, influence[arm]);
      choice.pass(cases, FittedPart.gradient(cases, byChoice), 1, influence[arm]);
    }
    return risks(risk, influence);
  }

  private ActionEffect.Risks all(OutcomePart[] outcomes) {
    double[] risk = new double[2];
    double[][] influence = new double[2][size];
    for (int arm = 0; arm < 2; arm++) {
      OutcomePart outcome = outcomes[arm];
      double[] byOutcome = new double[size];
      for (int i = 0; i < size; i++) {
        influence[arm][i] = Family.CLOGLOG.mean(outcome.predictor[i]) / size;
        risk[arm] += influence[arm][i];
        byOutcome[i] = Hazard.slope(outcome.predictor[i]) / size;
      }
      for (int i = 0; i < size; i++) {
        influence[arm][i] -= risk[arm] / size;
      }
      outcome.jackknifed.pass(cases, FittedPart.gradient(cases, byOutcome), 1, influence[arm]);
    }
    return risks(risk, influence);
  }

  private ActionEffect.Risks risks(double[] risk, double[][] influence) {
    int[] unit = cases.unit();
    double[] difference = new double[size];
    double[] logRatio = new double[size];
    for (int arm = 0; arm < 2; arm++) {
      Influence.centre(influence[arm]);
    }
    for (int i = 0; i < size; i++) {
      difference[i] = influence[0][i] - influence[1][i];
      logRatio[i] = influence[0][i] / risk[0] - influence[1][i] / risk[1];
    }
    double worthFirst = effective(false);
    double worthSecond = effective(true);
    double quantile = Influence.quantile(Math.min(worthFirst, worthSecond), level);
    return new ActionEffect.Risks(
        Influence.risk(
            risk[0],
            Influence.variance(influence[0], unit),
            Influence.quantile(worthFirst, level),
            level),
        Influence.risk(
            risk[1],
            Influence.variance(influence[1], unit),
            Influence.quantile(worthSecond, level),
            level),
        Influence.difference(
            risk[0] - risk[1], Influence.variance(difference, unit), quantile, level),
        Influence.ratio(risk[0] / risk[1], Influence.variance(logRatio, unit), quantile, level));
  }
}

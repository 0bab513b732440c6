package sealspan.study.practice;

/**
 * Curves that follow from the true values in closed form, averaged over the gamma frailty: with
 * mean 1 and coefficient of variation c, the mean of exp(-frailty H) is (1 + c^2 H)^(-1/c^2). They
 * hold for a seal that is new (virtual age 0), and for fouling without water events, in a zone
 * whose factor is 1.
 */
public final class TrueRates {
  private final PracticeParameters parameters;

  public TrueRates(PracticeParameters parameters) {
    this.parameters = parameters;
  }

  /** Probability that a new seal of a small assembly has not worn out after some days. */
  public double wearSurvival(SealKind kind, double days) {
    return averaged(wearHazard(kind, days));
  }

  /** Probability that a new component of a small assembly is neither worn nor fouled by then. */
  public double survival(SealKind kind, double days) {
    double fouling = parameters.fouling().perYear() * days / PracticeParameters.DAYS_A_YEAR;
    return averaged(wearHazard(kind, days) + fouling);
  }

  /** Cumulative hazard of wear at a frailty of 1, from virtual age 0. */
  public double wearHazard(SealKind kind, double days) {
    TrueWear wear = parameters.wear();
    return StrictMath.pow(days / wear.scaleDays(kind), wear.shape(kind));
  }

  private double averaged(double hazard) {
    double variance = parameters.wear().frailtyCv() * parameters.wear().frailtyCv();
    return variance == 0
        ? StrictMath.exp(-hazard)
        : StrictMath.pow(1 + variance * hazard, -1 / variance);
  }
}

package sealspan.study.practice;

import sealspan.study.practice.Draws.Purpose;

/**
 * The hidden life of one component: when its seal wears out, when it gets fouled, and how its true
 * value drifts. Times are in days since 1970-01-01.
 */
final class PartLife {
  /** Whether the last action took. */
  enum Hold {
    HELD,
    DID_NOT_HOLD
  }

  final PartPlan plan;
  private final PracticeUnit unit;
  private final int index;

  private int actions;
  private int actionDay;
  private double ageAtAction;
  private Hold hold;
  private double wornAt;
  private Draws fouling;
  private double fouledAt;
  private double clearsAt;
  private double level;
  private double levelDay;
  private int advances;
  private int foulings;

  PartLife(PracticeUnit unit, int index, PartPlan plan) {
    this.unit = unit;
    this.index = index;
    this.plan = plan;
  }

  /** Starts afresh on a day at a virtual age in days, after an action that held or did not. */
  void begin(int day, double virtualAge, Hold newHold) {
    actionDay = day;
    ageAtAction = virtualAge;
    hold = newHold;
    actions++;
    wornAt = day + drawnLife(virtualAge);
    fouling = unit.draws(Purpose.FOULING, index, actions);
    foulAfter(day);
    TrueReadings truth = unit.parameters.readings();
    double spread = truth.levelSdPsi() * plan.range();
    level = plan.newLevelPsi();
    if (spread > 0) {
      double lowest = plan.limitTenths() / 10.0 + 0.3;
      Draws draws = unit.draws(Purpose.LEVEL, index, actions);
      level = Math.max(lowest, level + spread * draws.normal());
    }
    levelDay = day;
  }

  /** Flushing takes the fouling away and leaves the seal as it is. */
  void flush(int day) {
    foulAfter(day);
  }

  private void foulAfter(double day) {
    foulings++;
    fouledAt =
        unit.foulingRate.nextAfter(day, unit.frailty, unit.parameters.endDay() + 400, fouling);
    double perDay = unit.parameters.fouling().clearsPerYear() / PracticeParameters.DAYS_A_YEAR;
    clearsAt =
        perDay == 0 || Double.isInfinite(fouledAt)
            ? Double.POSITIVE_INFINITY
            : fouledAt + fouling.exponential() / perDay;
  }

  /** Days until the seal wears out, given that it has reached a virtual age; by inversion. */
  private double drawnLife(double virtualAge) {
    TrueWear wear = unit.parameters.wear();
    double shape = wear.shape(plan.kind());
    double scale = wear.scaleDays(plan.kind());
    double drawn = unit.draws(Purpose.WEAR, index, actions).exponential();
    double reached = StrictMath.pow(virtualAge / scale, shape);
    double until = reached + drawn / (unit.frailty * unit.sizeRatio);
    return scale * StrictMath.pow(until, 1 / shape) - virtualAge;
  }

  /** Takes the drift on to a day; to be called once a visit. */
  void advance(int day) {
    advances++;
    while (clearsAt <= day) {
      foulAfter(clearsAt);
    }
    TrueReadings truth = unit.parameters.readings();
    double years = (day - levelDay) / PracticeParameters.DAYS_A_YEAR;
    levelDay = day;
    if (years > 0
        && plan.isMeasured()
        && (truth.volatilityPsi() > 0 || truth.driftPsiPerYear() != 0)) {
      double chance = unit.draws(Purpose.DRIFT, index, advances).normal();
      level +=
          plan.range()
              * (truth.driftPsiPerYear() * years
                  + truth.volatilityPsi() * StrictMath.sqrt(years) * chance);
    }
  }

  /** What truly is the matter on a day; wear comes before fouling where both hold. */
  SealState stateOn(int day) {
    if (hold == Hold.DID_NOT_HOLD) {
      return SealState.NOT_HELD;
    }
    if (wornAt <= day) {
      return SealState.WORN;
    }
    if (fouledAt <= day && day < clearsAt) {
      return SealState.FOULED;
    }
    if (plan.isMeasured() && level < plan.limitTenths() / 10.0) {
      return SealState.DRIFTED;
    }
    return SealState.HEALTHY;
  }

  /** Whether it is fouled on a day, worn or not. */
  boolean isFouledOn(int day) {
    return fouledAt <= day && day < clearsAt;
  }

  double virtualAge(int day) {
    return ageAtAction + (day - actionDay);
  }

  double wornAt() {
    return wornAt;
  }

  double fouledAt() {
    return fouledAt;
  }

  /** When it first fails by wear or fouling. */
  double failsAt() {
    return Math.min(wornAt, fouledAt);
  }

  /** The disturbance that the present fouling is due to; null where it would have come anyway. */
  Disturbance foulingCause() {
    Draws draws = unit.draws(Purpose.FOULING, 500 + index, foulings);
    return unit.foulingRate.causeOf(fouledAt, draws);
  }

  double level() {
    return level;
  }

  double scaleDays() {
    return unit.parameters.wear().scaleDays(plan.kind());
  }

  int index() {
    return index;
  }
}

package sealspan.study.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sealspan.event.Component;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.Unit;

/** What one test round shows, component by component, in the order of the test. */
final class TestRound {
  private static final int LEAKED = -1;
  private static final int NOT_TESTED = -2;
  private static final int TIGHT = -3;

  /** Greatest reading of a gauge of 15 psi, tenths. */
  private static final int FULL_SCALE_TENTHS = 150;

  private static final Quantity[] PSI = new Quantity[FULL_SCALE_TENTHS + 1];

  static {
    for (int tenths = 0; tenths <= FULL_SCALE_TENTHS; tenths++) {
      PSI[tenths] = new Quantity(tenths / 10 + "." + tenths % 10, Unit.PSI);
    }
  }

  /** Whether the tester goes on after the first deficiency. */
  enum Extent {
    FULL,
    UNTIL_FIRST_DEFICIENCY
  }

  private final List<PartLife> parts;
  private final int[] tenths;
  private final boolean[] failed;
  private boolean stopped;

  private TestRound(List<PartLife> parts) {
    this.parts = parts;
    this.tenths = new int[parts.size()];
    this.failed = new boolean[parts.size()];
  }

  /** Tests a unit on a day with a gauge of the given bias. */
  static TestRound of(PracticeUnit unit, int day, double biasPsi, Extent extent, Draws draws) {
    TestRound round = new TestRound(unit.parts);
    double gaugeSd = unit.parameters.readings().gaugeSdPsi();
    for (int i = 0; i < round.tenths.length; i++) {
      if (round.stopped) {
        round.tenths[i] = NOT_TESTED;
        continue;
      }
      PartLife part = unit.parts.get(i);
      double error = gaugeSd > 0 ? biasPsi + gaugeSd * draws.normal() : biasPsi;
      round.tenths[i] = shown(part, day, error, draws);
      round.failed[i] = round.isDeficient(i);
      round.stopped = round.failed[i] && extent == Extent.UNTIL_FIRST_DEFICIENCY;
    }
    round.stopped &= round.tenths[round.tenths.length - 1] == NOT_TESTED;
    return round;
  }

  private static int shown(PartLife part, int day, double error, Draws draws) {
    SealState state = part.stateOn(day);
    boolean sound = state == SealState.HEALTHY || state == SealState.DRIFTED;
    if (!part.plan.isMeasured()) {
      return sound ? TIGHT : LEAKED;
    }
    double limit = part.plan.limitTenths() / 10.0;
    double psi;
    if (sound) {
      psi = part.level() + error;
    } else if (draws.happens(0.3)) {
      return LEAKED;
    } else {
      psi = limit - 0.3 - Math.min(limit - 0.3, 0.75 * part.plan.range()) * draws.uniform();
    }
    return Math.max(0, Math.min(FULL_SCALE_TENTHS, (int) Math.floor(10 * psi + 0.5)));
  }

  private boolean isDeficient(int i) {
    PartPlan plan = parts.get(i).plan;
    if (tenths[i] == LEAKED) {
      return true;
    }
    if (!plan.isMeasured()) {
      return false;
    }
    return tenths[i] < plan.limitTenths()
        || plan.measure() == Measure.STATIC_DROP && bufferIsLow(i);
  }

  /** The relief valve is tested two places before check 1; without its reading, no buffer. */
  private boolean bufferIsLow(int check1) {
    int relief = tenths[check1 - 2];
    return relief >= 0 && tenths[check1] - relief < PartPlan.BUFFER_TENTHS;
  }

  boolean passed() {
    for (boolean one : failed) {
      if (one) {
        return false;
      }
    }
    return true;
  }

  /** Whether components after the first deficiency were left untested. */
  boolean stopped() {
    return stopped;
  }

  /** Places of the components that failed. */
  List<PartLife> failing() {
    List<PartLife> failing = new ArrayList<>();
    for (int i = 0; i < failed.length; i++) {
      if (failed[i]) {
        failing.add(parts.get(i));
      }
    }
    return failing;
  }

  /** Whether a component leaked, or did not open, rather than reading low. */
  boolean leaked(PartLife part) {
    return tenths[part.index()] == LEAKED;
  }

  /** The readings as a report gives them, by line and component. */
  List<Reading> readings() {
    List<Reading> readings = new ArrayList<>(tenths.length);
    for (int i = 0; i < tenths.length; i++) {
      PartPlan plan = parts.get(i).plan;
      readings.add(
          tenths[i] >= 0
              ? new Reading(plan.at(), plan.measure(), Observation.MEASURED, PSI[tenths[i]], "0.1")
              : Reading.seen(plan.at(), plan.measure(), seen(plan, tenths[i])));
    }
    readings.sort(Comparator.comparing(Reading::at));
    return readings;
  }

  private static Observation seen(PartPlan plan, int code) {
    if (code == NOT_TESTED) {
      return Observation.NOT_TESTED;
    }
    if (code == TIGHT) {
      return Observation.CLOSED_TIGHT;
    }
    Component component = plan.at().component();
    boolean opens = component == Component.RELIEF_VALVE || component == Component.AIR_INLET;
    return opens ? Observation.DID_NOT_OPEN : Observation.LEAKED;
  }

  /** A reading that somebody slipped in writing down: the tens digit is wrong. */
  static Reading slipped(Reading reading) {
    int tenths = reading.value().value().movePointRight(1).intValueExact();
    int wrong = tenths >= 100 ? tenths - 100 : Math.min(tenths + 100, FULL_SCALE_TENTHS);
    return new Reading(
        reading.at(), reading.measure(), reading.observation(), PSI[wrong], reading.resolution());
  }
}

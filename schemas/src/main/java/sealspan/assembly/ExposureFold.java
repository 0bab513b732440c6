package sealspan.assembly;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.Action;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.ComponentAt;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed.Phase;

/**
 * The exposures of one component, or of the assembly as a whole.
 *
 * <p>An exposure runs from the last known pass to the next known as-found result. UNKNOWN changes
 * nothing, so the exposure runs on; a component that the procedure did not reach as found, and that
 * nobody acted on, gets its result from the retest of the same visit. An exposure ends without a
 * result where the component is acted on while its state is unknown, and where the unit is removed,
 * installed or replaced: the next pass begins a new one. After a failure there is none until the
 * next pass.
 */
final class ExposureFold {
  private final ComponentAt at;
  private final List<TestExposure> exposures = new ArrayList<>(8);
  private LocalDate lastPass;
  private String passedInVisit;
  private String notReachedInVisit;
  private Action lastAction = Action.NONE;

  private ExposureFold(ComponentAt at) {
    this.at = at;
  }

  /** The exposures of a component in order of time. */
  static List<TestExposure> of(ComponentAt at, List<HistoryStep> steps) {
    ExposureFold fold = new ExposureFold(at);
    for (int i = 0; i < steps.size(); i++) {
      HistoryStep step = steps.get(i);
      if (step.round() != null) {
        fold.round(steps, i);
      } else if (step.event() instanceof RepairPerformed repair) {
        fold.repair(repair);
      } else if (step.event() instanceof AssemblyRemoved
          || step.event() instanceof AssemblyInstalled installed
              && installed.dayMeaning() == DayMeaning.INSTALLED) {
        fold.forget();
      }
    }
    return fold.exposures;
  }

  private void forget() {
    lastPass = null;
    passedInVisit = null;
    notReachedInVisit = null;
    lastAction = Action.NONE;
  }

  private void round(List<HistoryStep> steps, int index) {
    TestRound round = steps.get(index).round();
    Result result = round.result(at);
    boolean asFound = round.phase() == Phase.AS_FOUND && round.counting() != Counting.RETEST;
    boolean enters = round.counting() == Counting.COUNTED || round.counting() == Counting.UNDECIDED;
    if (result == Result.PASSED || result == Result.FAILED) {
      if (asFound || round.visitId().equals(notReachedInVisit)) {
        if (enters || !asFound) {
          record(steps, index, result);
        }
        lastAction = Action.NONE;
      }
      notReachedInVisit = null;
      pass(result == Result.PASSED ? round : null);
    } else if (asFound) {
      notReachedInVisit = enters ? round.visitId() : null;
    }
    if (result != Result.PASSED && round.leftAs(at) == Result.PASSED) {
      pass(round);
    }
  }

  private void pass(TestRound round) {
    lastPass = round == null ? null : round.test().when().day();
    passedInVisit = round == null ? null : round.visitId();
  }

  private void record(List<HistoryStep> steps, int index, Result result) {
    TestRound round = steps.get(index).round();
    LocalDate day = round.test().when().day();
    if (lastPass == null || !day.isAfter(lastPass)) {
      return;
    }
    boolean failed = result == Result.FAILED;
    exposures.add(
        new TestExposure(
            round.source().id(),
            at,
            lastPass,
            day,
            (int) ChronoUnit.DAYS.between(lastPass, day),
            failed,
            failed ? FailureClassification.of(at, steps, index) : null,
            lastAction));
  }

  private void repair(RepairPerformed repair) {
    String visit = EventOrder.visitId(repair);
    for (RepairItem item : repair.items()) {
      if (!ActedOn.touches(item, at) || item.action() == Action.NONE) {
        continue;
      }
      notReachedInVisit = null;
      boolean known = visit.equals(passedInVisit);
      if (!known || item.action() == Action.ASSEMBLY_REPLACED) {
        lastPass = null;
        passedInVisit = null;
      }
      if (item.action() != null && item.action().compareTo(lastAction) > 0) {
        lastAction = item.action();
      }
    }
  }
}

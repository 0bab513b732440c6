package sealspan.assembly;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.Action;
import sealspan.event.ComponentAt;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed.Phase;

/**
 * One action of a repair, and whether it held.
 *
 * @param source the repair
 * @param number number of the action in the repair, from 1
 * @param item the action
 * @param visitId the visit; where none was recorded, the day
 * @param foundFailed whether the component had failed when it was opened
 * @param retest result of the first round after it in the same visit; null without one
 * @param nextOn day of the next known as-found result of a later visit; null without one, and where
 *     the component was acted on again before
 * @param next that result; null without one
 */
public record RepairOutcome(
    StandingEvent source,
    int number,
    RepairItem item,
    String visitId,
    boolean foundFailed,
    Result retest,
    LocalDate nextOn,
    Result next) {

  /** The actions of the repair at an index, in order. */
  static List<RepairOutcome> of(List<HistoryStep> steps, int index) {
    HistoryStep step = steps.get(index);
    RepairPerformed repair = (RepairPerformed) step.event();
    String visit = EventOrder.visitId(repair);
    List<RepairOutcome> outcomes = new ArrayList<>(repair.items().size());
    for (int i = 0; i < repair.items().size(); i++) {
      RepairItem item = repair.items().get(i);
      outcomes.add(follow(steps, index, i + 1, item, visit));
    }
    return outcomes;
  }

  private static RepairOutcome follow(
      List<HistoryStep> steps, int index, int number, RepairItem item, String visit) {
    ComponentAt at = item.at();
    Result retest = null;
    LocalDate nextOn = null;
    Result next = null;
    for (int i = index + 1; i < steps.size() && next == null; i++) {
      HistoryStep step = steps.get(i);
      if (step.event() instanceof RepairPerformed later) {
        if (!EventOrder.visitId(later).equals(visit) && actsOn(later, at)) {
          break;
        }
      } else if (step.round() != null && !isShut(at)) {
        Result result = step.round().result(at);
        if (step.round().visitId().equals(visit)) {
          retest = retest == null ? result : retest;
        } else if (step.round().phase() == Phase.AS_FOUND
            && (result == Result.PASSED || result == Result.FAILED)) {
          nextOn = step.day();
          next = result;
        }
      }
    }
    return new RepairOutcome(
        steps.get(index).source(),
        number,
        item,
        visit,
        wasFailed(steps, index, at),
        retest,
        nextOn,
        next);
  }

  private static boolean isShut(ComponentAt at) {
    return !AssemblyParts.isTested(at.component())
        && at.component() != sealspan.event.Component.WHOLE;
  }

  private static boolean actsOn(RepairPerformed repair, ComponentAt at) {
    for (RepairItem item : repair.items()) {
      if (item.action() != Action.NONE && ActedOn.touches(item, at)) {
        return true;
      }
    }
    return false;
  }

  private static boolean wasFailed(List<HistoryStep> steps, int index, ComponentAt at) {
    if (isShut(at)) {
      return false;
    }
    for (int i = index - 1; i >= 0; i--) {
      TestRound round = steps.get(i).round();
      if (round != null) {
        Result result = round.result(at);
        if (round.leftAs(at) == Result.PASSED) {
          return false;
        }
        if (result == Result.PASSED || result == Result.FAILED) {
          return result == Result.FAILED;
        }
      }
    }
    return false;
  }
}

package sealspan.assembly;

import java.util.ArrayList;
import java.util.List;
import sealspan.event.Action;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Mechanism;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed.Phase;

/**
 * The class of a failure; the one place where fouling is decided. Fouling is a failed round whose
 * recorded mechanism is debris, deposit or scale; only where no mechanism was recorded, one that
 * passed after cleaning or flushing alone. Damage without debris is not fouling. Mechanisms that
 * name neither leave the failure unclassified.
 */
final class FailureClassification {
  private FailureClassification() {}

  /**
   * The class of the failure of a component, or of the whole assembly, in the round at an index. It
   * rests on the repairs up to the next round that passes it or finds it anew.
   */
  static FailureClass of(ComponentAt at, List<HistoryStep> steps, int index) {
    TestRound round = steps.get(index).round();
    List<RepairItem> items = new ArrayList<>(2);
    Result after = round.leftAs(at);
    for (int i = index + 1; i < steps.size() && after != Result.PASSED; i++) {
      HistoryStep step = steps.get(i);
      if (step.event() instanceof RepairPerformed repair) {
        for (RepairItem item : repair.items()) {
          if (concerns(item, at, round)) {
            items.add(item);
          }
        }
      } else if (step.round() != null) {
        if (step.round().phase() == Phase.AS_FOUND
            && !step.round().visitId().equals(round.visitId())) {
          break;
        }
        after = step.round().result(at);
      }
    }
    return classify(items, Boolean.TRUE.equals(round.test().flushedToPass()), after);
  }

  /** For the whole assembly, items on the components that failed; on all where none is known. */
  private static boolean concerns(RepairItem item, ComponentAt at, TestRound round) {
    if (at.component() != Component.WHOLE || item.at().component() == Component.WHOLE) {
      return ActedOn.touches(item, at);
    }
    boolean anyFailed = false;
    for (ComponentResult component : round.verdict().components()) {
      if (component.result() == Result.FAILED) {
        anyFailed = true;
        if (component.at().equals(item.at())) {
          return true;
        }
      }
    }
    return !anyFailed && ActedOn.touches(item, at);
  }

  private static FailureClass classify(List<RepairItem> items, boolean flushed, Result after) {
    boolean recorded = false;
    boolean damage = false;
    boolean cleaned = flushed;
    boolean otherwise = false;
    for (RepairItem item : items) {
      if (item.mechanism() != null && item.mechanism() != Mechanism.UNKNOWN) {
        recorded = true;
        switch (item.mechanism()) {
          case DEBRIS, DEPOSIT, SCALE -> {
            return FailureClass.FOULING;
          }
          case NOTHING_FOUND, OTHER, UNKNOWN -> {}
          default -> damage = true;
        }
      }
      if (item.action() == Action.FLUSHED || item.action() == Action.CLEANED) {
        cleaned = true;
      } else if (item.action() != Action.NONE) {
        otherwise = true;
      }
    }
    if (damage) {
      return FailureClass.DAMAGE;
    }
    return !recorded && cleaned && !otherwise && after == Result.PASSED
        ? FailureClass.FOULING
        : FailureClass.UNCLASSIFIED;
  }
}

package sealspan.assembly;

import java.util.List;
import java.util.TreeSet;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;

/** Checks of repairs against the rounds around them. */
final class RepairChecks {
  private RepairChecks() {}

  /** Checks the repair or the failed round at an index. */
  static void all(List<HistoryStep> steps, int index, AssemblyContext context, FindingLog log) {
    HistoryStep step = steps.get(index);
    if (step.event() instanceof RepairPerformed repair) {
      partNotOfType(step, repair, context, log);
      if (worksOnTested(repair)) {
        repairAfterPass(steps, index, repair, log);
        finalTest(steps, index, repair, log);
      }
    } else if (step.round() != null) {
      nothingFollows(steps, index, log);
      asFoundAfterRepair(steps, index, log);
    }
  }

  private static void partNotOfType(
      HistoryStep step, RepairPerformed repair, AssemblyContext context, FindingLog log) {
    AssemblyType type = context.type(step.day());
    if (type == null) {
      return;
    }
    TreeSet<String> foreign = new TreeSet<>();
    for (RepairItem item : repair.items()) {
      if (!AssemblyParts.has(type, context.mainlines(step.day()), item.at())) {
        foreign.add(Words.of(item.at()));
      }
    }
    if (!foreign.isEmpty()) {
      log.add(
          Finding.Kind.SUSPICIOUS,
          "repair of a part the type has not",
          step.source(),
          "An assembly of type "
              + type
              + " has no "
              + String.join(", no ", foreign)
              + ", yet a repair of it is listed.");
    }
  }

  private static void repairAfterPass(
      List<HistoryStep> steps, int index, RepairPerformed repair, FindingLog log) {
    TestRound before = null;
    String visit = EventOrder.visitId(repair);
    for (int i = index - 1; i >= 0 && before == null; i--) {
      TestRound round = steps.get(i).round();
      if (round != null && round.visitId().equals(visit)) {
        before = round;
      }
    }
    boolean passed = before != null && before.outcome() == Outcome.PASSED;
    if (passed && !isScheduled(repair)) {
      log.add(
          Finding.Kind.SUSPICIOUS,
          "repair after a pass",
          steps.get(index).source(),
          "A repair is listed although the round before it in the same visit passed, and no reason"
              + " such as scheduled replacement is given.");
    }
  }

  private static boolean isScheduled(RepairPerformed repair) {
    for (RepairItem item : repair.items()) {
      if (item.action() != Action.NONE
          && AssemblyParts.isTested(item.at().component())
          && item.reason() != ReplacementReason.SCHEDULED) {
        return false;
      }
    }
    return true;
  }

  private static void finalTest(
      List<HistoryStep> steps, int index, RepairPerformed repair, FindingLog log) {
    if (endsTheUnit(repair)) {
      return;
    }
    for (int i = index + 1; i < steps.size(); i++) {
      HistoryStep step = steps.get(i);
      if (step.round() != null) {
        if (isFinal(step.round(), repair)) {
          return;
        }
        break;
      }
      if (step.event() instanceof RepairPerformed || step.event() instanceof AssemblyRemoved) {
        return; // The later repair is the one to ask, or there is nothing left to test.
      }
    }
    if (finalTestBefore(steps, index, repair)) {
      log.add(
          Finding.Kind.INVALID,
          "final test before the repair",
          steps.get(index).source(),
          "The as-left test of the visit stands before the repair. Check the dates.");
    } else {
      log.add(
          Finding.Kind.INCOMPLETE,
          "final test missing",
          steps.get(index).source(),
          "No as-left test is recorded after the repair.");
    }
  }

  private static boolean endsTheUnit(RepairPerformed repair) {
    for (RepairItem item : repair.items()) {
      if (item.action() == Action.ASSEMBLY_REPLACED) {
        return true;
      }
    }
    return false;
  }

  private static boolean isFinal(TestRound round, RepairPerformed repair) {
    return round.phase() == Phase.AS_LEFT
        || round.visitId().equals(EventOrder.visitId(repair))
        || round.test().purpose() == Purpose.AFTER_REPAIR;
  }

  private static boolean finalTestBefore(
      List<HistoryStep> steps, int index, RepairPerformed repair) {
    String visit = EventOrder.visitId(repair);
    boolean leftBefore = false;
    for (int i = index - 1; i >= 0; i--) {
      TestRound round = steps.get(i).round();
      if (steps.get(i).event() instanceof RepairPerformed earlier
          && EventOrder.visitId(earlier).equals(visit)) {
        return false; // The round before followed this earlier repair.
      }
      leftBefore |=
          round != null && round.phase() == Phase.AS_LEFT && round.visitId().equals(visit);
    }
    return leftBefore;
  }

  private static void nothingFollows(List<HistoryStep> steps, int index, FindingLog log) {
    TestRound round = steps.get(index).round();
    if (round.verdict().performance() != Result.FAILED
        || round.verdict().leftAs() == Result.PASSED
        || round.phase() != Phase.AS_FOUND) {
      return;
    }
    for (int i = index + 1; i < steps.size(); i++) {
      HistoryStep step = steps.get(i);
      boolean sameVisit = step.round() != null && step.round().visitId().equals(round.visitId());
      if (step.event() instanceof AssemblyRemoved
          || step.event() instanceof RepairPerformed repair && worksOnTested(repair)
          || step.round() != null && (sameVisit || step.round().phase() == Phase.AS_LEFT)) {
        return;
      }
      if (step.round() != null) {
        break;
      }
    }
    log.add(
        Finding.Kind.INCOMPLETE,
        "no repair after a failure",
        round.source(),
        "The assembly failed, and neither a repair nor its removal is recorded. It counts all the"
            + " same.");
  }

  private static void asFoundAfterRepair(List<HistoryStep> steps, int index, FindingLog log) {
    TestRound round = steps.get(index).round();
    for (int i = index - 1; i >= 0 && round.phase() == Phase.AS_FOUND; i--) {
      if (steps.get(i).event() instanceof RepairPerformed repair
          && EventOrder.visitId(repair).equals(round.visitId())) {
        log.add(
            Finding.Kind.SUSPICIOUS,
            "as-found test after a repair",
            round.source(),
            "The round is marked as found, but a repair of the same visit stands before it. It is"
                + " not counted as found.");
        return;
      }
    }
  }

  private static boolean worksOnTested(RepairPerformed repair) {
    for (RepairItem item : repair.items()) {
      boolean tested =
          AssemblyParts.isTested(item.at().component()) || item.at().component() == Component.WHOLE;
      if (tested && item.action() != Action.NONE) {
        return true;
      }
    }
    return false;
  }
}

package sealspan.study.practice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sealspan.event.Action;
import sealspan.event.Cause;
import sealspan.event.FailureMode;
import sealspan.event.Mechanism;
import sealspan.event.Money;
import sealspan.event.PartFitted;
import sealspan.event.RepairItem;
import sealspan.event.ReplacementReason;
import sealspan.event.WaterDisturbed;
import sealspan.study.practice.Draws.Purpose;
import sealspan.study.practice.TrueAction.Deed;

/** Repairs the components of one unit on one day, and says what the report tells of it. */
final class RepairBench {
  private final PracticeUnit unit;
  private final int day;
  private final Draws draws;
  private final TruthNotes truth;

  RepairBench(PracticeUnit unit, int day, int visitNumber, int attempt, TruthNotes truth) {
    this.unit = unit;
    this.day = day;
    this.draws = unit.draws(Purpose.REPAIR, visitNumber, attempt);
    this.truth = truth;
  }

  /** Repairs what failed in a round; whatever did not take at first is replaced. */
  List<RepairItem> repair(TestRound round, int attempt) {
    TrueRepairs truths = unit.parameters.repairs();
    List<RepairItem> items = new ArrayList<>();
    List<PartLife> failing = round.failing();
    boolean opened = false;
    for (PartLife part : failing) {
      SealState state = part.stateOn(day);
      double probability = truths.replaceProbability(part.virtualAge(day), part.scaleDays(), state);
      double withDamage = probability + (1 - probability) * truths.damagedInWork();
      boolean chosen = draws.happens(probability) || attempt > 1;
      boolean damaged = draws.happens(truths.damagedInWork()) && !chosen;
      boolean replaced = chosen || damaged;
      opened |= replaced;
      FailureMode mode = mode(round, part);
      Mechanism mechanism = mechanism(part, state);
      Cause cause = cause(part, state);
      act(part, replaced ? Deed.REPLACED : Deed.CLEANED, state, attempt > 1 ? null : withDamage);
      Action action = replaced ? replacement(part) : Action.CLEANED;
      ReplacementReason reason =
          damaged ? ReplacementReason.DAMAGED_IN_WORK : replaced ? ReplacementReason.FAILED : null;
      items.add(item(part, mode, mechanism, cause, action, reason));
    }
    if (draws.happens(truths.kitWhileOpen()) && opened) {
      for (PartLife part : unit.parts) {
        if (!failing.contains(part) && sameLine(part, failing)) {
          items.add(renewed(part, Action.FULL_RUBBER_KIT, ReplacementReason.WHILE_OPEN));
        }
      }
    }
    items.sort(Comparator.comparing(RepairItem::at));
    return items;
  }

  /** Replaces every seal as scheduled. */
  List<RepairItem> rebuild() {
    List<RepairItem> items = new ArrayList<>();
    for (PartLife part : unit.parts) {
      items.add(renewed(part, Action.REBUILT, ReplacementReason.SCHEDULED));
    }
    items.sort(Comparator.comparing(RepairItem::at));
    return items;
  }

  private static boolean sameLine(PartLife part, List<PartLife> failing) {
    return failing.stream().anyMatch(f -> f.plan.at().line() == part.plan.at().line());
  }

  private RepairItem renewed(PartLife part, Action action, ReplacementReason reason) {
    act(part, Deed.REPLACED, part.stateOn(day), null);
    return item(part, null, null, null, action, reason);
  }

  private void act(PartLife part, Deed deed, SealState state, Double replaceProbability) {
    TrueRepairs truths = unit.parameters.repairs();
    double before = part.virtualAge(day);
    boolean cleaned = deed == Deed.CLEANED;
    double after = before * (cleaned ? truths.qClean() : truths.qReplace());
    boolean held =
        !draws.happens(cleaned ? truths.cleanDoesNotTake() : truths.replaceDoesNotTake());
    part.begin(day, after, held ? PartLife.Hold.HELD : PartLife.Hold.DID_NOT_HOLD);
    truth.acted(
        new TrueAction(
            unit.id(),
            part.plan.at(),
            LocalDate.ofEpochDay(day),
            deed,
            state,
            before,
            after,
            held,
            replaceProbability));
  }

  private RepairItem item(
      PartLife part,
      FailureMode mode,
      Mechanism mechanism,
      Cause cause,
      Action action,
      ReplacementReason reason) {
    List<PartFitted> parts = List.of();
    if (reason != null) {
      boolean kit = action == Action.FULL_RUBBER_KIT || action == Action.REBUILT;
      String kind = kit ? "rubber kit" : part.plan.kind() == SealKind.RELIEF ? "diaphragm" : "disc";
      long price = (kit ? 4000 : 1500) * (unit.sizeRatio > 1 ? 5 : 1);
      parts =
          List.of(
              new PartFitted(
                  kind,
                  unit.model() + (kit ? "-K" : "-D"),
                  unit.maker,
                  "EPDM",
                  null,
                  1,
                  new Money(price, VisitPaper.CURRENCY),
                  null));
    }
    return new RepairItem(part.plan.at(), mode, mechanism, cause, action, reason, parts);
  }

  private static Action replacement(PartLife part) {
    return part.plan.kind() == SealKind.RELIEF ? Action.DIAPHRAGM_REPLACED : Action.DISC_REPLACED;
  }

  private static FailureMode mode(TestRound round, PartLife part) {
    if (!round.leaked(part)) {
      return FailureMode.LOW_READING;
    }
    return part.plan.kind() == SealKind.CHECK
        ? FailureMode.INTERNAL_LEAK
        : FailureMode.FAILED_TO_OPEN;
  }

  private Mechanism mechanism(PartLife part, SealState state) {
    int choice = draws.place(0.6, 0.25, 0.15);
    if (draws.happens(unit.parameters.reports().mechanismNotRecorded())) {
      return null;
    }
    return switch (state) {
      case FOULED -> List.of(Mechanism.DEBRIS, Mechanism.DEPOSIT, Mechanism.SCALE).get(choice);
      case WORN -> worn(part.plan.kind()).get(choice);
      case DRIFTED -> Mechanism.SPRING_WEAK;
      case NOT_HELD -> Mechanism.SEAT_DAMAGED;
      case HEALTHY -> Mechanism.NOTHING_FOUND;
    };
  }

  private static List<Mechanism> worn(SealKind kind) {
    return switch (kind) {
      case CHECK -> List.of(Mechanism.SEAL_WORN, Mechanism.COMPRESSION_SET, Mechanism.SEAL_CUT);
      case RELIEF -> List.of(Mechanism.DIAPHRAGM_TORN, Mechanism.GUIDE_WORN, Mechanism.SEAL_WORN);
      case AIR_INLET -> List.of(Mechanism.SEAL_WORN, Mechanism.SPRING_WEAK, Mechanism.GUIDE_WORN);
    };
  }

  private Cause cause(PartLife part, SealState state) {
    boolean known = draws.happens(0.5);
    if (draws.happens(unit.parameters.reports().causeNotRecorded())) {
      return null;
    }
    if (state == SealState.WORN || state == SealState.DRIFTED) {
      return Cause.AGE_OR_WEAR;
    }
    if (state != SealState.FOULED) {
      return Cause.UNKNOWN;
    }
    Disturbance disturbance = part.foulingCause();
    if (disturbance == null || !known) {
      return Cause.GRIT_IN_SUPPLY;
    }
    return disturbance.kind() == WaterDisturbed.Kind.FLUSHING ? Cause.FLUSHING : Cause.MAIN_BREAK;
  }
}

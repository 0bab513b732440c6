package sealspan.assembly;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.assembly.SealInterval.End;
import sealspan.assembly.SealInterval.Origin;
import sealspan.event.Action;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.Phase;

/**
 * The seals that one position held, one after another.
 *
 * <p>Seals that ended before the record begins are left out. A unit that is installed again brings
 * its seal with it: the seal keeps its first day and comes under observation anew.
 */
final class SealFold {
  private final ComponentAt at;
  private final LocalDate recordBegins;
  private final List<SealInterval> seals = new ArrayList<>(2);

  private LocalDate start;
  private Origin origin;
  private LocalDate entry;
  private String startedInVisit;
  private LocalDate lastHeld;
  private LocalDate foundFailed;
  private boolean inPlace;
  private LocalDate lastSeen;
  private LocalDate lastRoundOn;

  private SealFold(ComponentAt at, LocalDate recordBegins) {
    this.at = at;
    this.recordBegins = recordBegins;
  }

  /**
   * The seals of a component in order of time.
   *
   * @param installedOn day on which the unit was installed new; null where unknown
   * @param recordBegins first day of the record
   */
  static List<SealInterval> of(
      ComponentAt at, List<HistoryStep> steps, LocalDate installedOn, LocalDate recordBegins) {
    SealFold fold = new SealFold(at, recordBegins);
    boolean known = installedOn != null && !recordBegins.isAfter(installedOn);
    fold.begin(known ? installedOn : recordBegins, known ? Origin.KNOWN : Origin.UNKNOWN, null);
    for (HistoryStep step : steps) {
      fold.step(step);
    }
    if (fold.inPlace) {
      LocalDate seen = fold.lastSeen == null ? fold.entry : fold.lastSeen;
      fold.end(End.IN_PLACE, seen.isBefore(fold.entry) ? fold.entry : seen, null);
    }
    return fold.seals;
  }

  private void begin(LocalDate day, Origin from, String visit) {
    start = day;
    origin = from;
    entry = day.isBefore(recordBegins) ? recordBegins : day;
    startedInVisit = visit;
    lastHeld = null;
    foundFailed = null;
    inPlace = true;
  }

  private void end(End how, LocalDate day, ReplacementReason reason) {
    inPlace = false;
    if (!day.isBefore(entry)) {
      seals.add(
          new SealInterval(
              at, seals.size() + 1, start, origin, entry, day, how, reason, lastHeld, foundFailed));
    }
  }

  private void step(HistoryStep step) {
    LocalDate day = step.day();
    if (step.round() != null) {
      lastSeen = day;
      lastRoundOn = day;
      round(step.round(), day);
    } else if (step.event() instanceof RepairPerformed repair) {
      lastSeen = day;
      repair(repair, day);
    } else if (step.event() instanceof AssemblyRemoved removed && inPlace) {
      remove(removed, day);
    } else if (step.event() instanceof AssemblyInstalled installed) {
      install(installed, day);
    }
  }

  /** A seal is found failed by an as-found round; a retest may fail for what the work did. */
  private void round(TestRound round, LocalDate day) {
    if (!inPlace || day.isBefore(start)) {
      return;
    }
    boolean asFound = round.phase() == Phase.AS_FOUND && round.counting() != Counting.RETEST;
    if (round.leftAs(at) == Result.PASSED) {
      lastHeld = day;
      foundFailed = null;
    } else if (asFound && round.result(at) == Result.FAILED && foundFailed == null) {
      foundFailed = day;
    }
  }

  private void repair(RepairPerformed repair, LocalDate day) {
    String visit = EventOrder.visitId(repair);
    for (RepairItem item : repair.items()) {
      boolean renewed =
          ActedOn.touches(item, at)
              && item.action() != null
              && item.action().sealEffect() == Action.SealEffect.RENEWED;
      if (renewed && inPlace && !visit.equals(startedInVisit)) {
        replace(day, reason(item));
        begin(day, Origin.KNOWN, visit);
      }
    }
  }

  /** A reason given for the whole assembly is that of the components that failed. */
  private ReplacementReason reason(RepairItem item) {
    boolean whole = item.at().component() == Component.WHOLE;
    return whole && item.reason() == ReplacementReason.FAILED ? reasonOfWhole() : item.reason();
  }

  private ReplacementReason reasonOfWhole() {
    if (foundFailed != null) {
      return ReplacementReason.FAILED;
    }
    return lastHeld != null && lastHeld.equals(lastRoundOn) ? ReplacementReason.WHILE_OPEN : null;
  }

  private void replace(LocalDate day, ReplacementReason reason) {
    if (foundFailed == null && reason == ReplacementReason.FAILED) {
      foundFailed = day;
    }
    end(End.REPLACED, day, reason);
  }

  private void remove(AssemblyRemoved removed, LocalDate day) {
    AssemblyRemoved.Reason why = removed.reason();
    if (why == AssemblyRemoved.Reason.REPLACED_BECAUSE_FAILED) {
      replace(day, reasonOfWhole());
    } else if (why == AssemblyRemoved.Reason.REPLACED_AS_SCHEDULED) {
      replace(day, ReplacementReason.SCHEDULED);
    } else {
      end(End.REMOVED, day, null);
    }
  }

  private void install(AssemblyInstalled installed, LocalDate day) {
    if (!inPlace && installed.dayMeaning() == DayMeaning.INSTALLED) {
      LocalDate held = lastHeld;
      LocalDate first = start;
      begin(first, origin, null);
      entry = day.isBefore(recordBegins) ? recordBegins : day;
      lastHeld = held;
    }
  }
}

package sealspan.study.practice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Takes down the truth of one position while its life is made up. */
final class TruthNotes {
  private final int beginDay;
  private final List<PositionTruth.TrueUnit> units = new ArrayList<>();
  private final List<TrueFailure> failures = new ArrayList<>();
  private final List<TrueAction> actions = new ArrayList<>();
  private final Map<String, TrueLevel> levels = new LinkedHashMap<>();
  private final Set<String> seen = new HashSet<>();

  TruthNotes(int beginDay) {
    this.beginDay = beginDay;
  }

  void unit(PracticeUnit unit) {
    units.add(new PositionTruth.TrueUnit(unit.id(), unit.frailty, unit.installDay));
  }

  /** Notes the failures that a visit comes upon; each once. */
  void visited(PracticeUnit unit, int day) {
    if (day < beginDay) {
      return;
    }
    for (PartLife part : unit.parts) {
      if (part.wornAt() <= day) {
        failed(unit, part, SealState.WORN, part.wornAt(), day, null);
      }
      if (part.isFouledOn(day)) {
        Disturbance cause = part.foulingCause();
        failed(
            unit, part, SealState.FOULED, part.fouledAt(), day, cause == null ? null : cause.id());
      }
    }
  }

  private void failed(
      PracticeUnit unit, PartLife part, SealState state, double at, int day, String cause) {
    if (seen.add(unit.id() + part.index() + state + at)) {
      failures.add(
          new TrueFailure(
              unit.id(),
              part.plan.at(),
              state,
              at,
              part.virtualAge(0) + at,
              cause,
              LocalDate.ofEpochDay(day)));
    }
  }

  /** Notes the levels that a round has read; of several rounds of a day the last counts. */
  void read(PracticeUnit unit, int day) {
    if (day < beginDay) {
      return;
    }
    for (PartLife part : unit.parts) {
      if (part.plan.isMeasured()) {
        levels.put(
            unit.id() + " " + part.index() + " " + day,
            new TrueLevel(unit.id(), part.plan.at(), LocalDate.ofEpochDay(day), part.level()));
      }
    }
  }

  void acted(TrueAction action) {
    if (action.day().toEpochDay() >= beginDay) {
      actions.add(action);
    }
  }

  void flushed(PracticeUnit unit, PartLife part, int day) {
    double age = part.virtualAge(day);
    acted(
        new TrueAction(
            unit.id(),
            part.plan.at(),
            LocalDate.ofEpochDay(day),
            TrueAction.Deed.FLUSHED,
            SealState.FOULED,
            age,
            age,
            true,
            null));
  }

  PositionTruth truth(PracticeUnit last, Site site) {
    return new PositionTruth(
        Names.position(last.position),
        Names.zone(site.zone()),
        units,
        failures,
        actions,
        List.copyOf(levels.values()));
  }
}

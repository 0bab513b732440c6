package sealspan.assembly;

import java.time.LocalDate;
import java.util.List;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;

/** Checks of days against the time that the unit was in place. */
final class DateChecks {
  private DateChecks() {}

  static void all(List<HistoryStep> steps, FindingLog log) {
    LocalDate firstInstalled = null;
    for (HistoryStep step : steps) {
      if (step.event() instanceof AssemblyInstalled installed
          && firstInstalled == null
          && installed.dayMeaning() == DayMeaning.INSTALLED) {
        firstInstalled = step.day();
      }
    }
    LocalDate removedOn = null;
    for (HistoryStep step : steps) {
      if (step.event() instanceof AssemblyInstalled) {
        removedOn = null;
      } else if (step.event() instanceof AssemblyRemoved) {
        removedOn = step.day();
      } else if (step.round() != null) {
        beforeInstallation(step, firstInstalled, log);
        afterRemoval(step, removedOn, log);
      }
    }
  }

  private static void beforeInstallation(HistoryStep step, LocalDate installedOn, FindingLog log) {
    if (installedOn != null && step.day().isBefore(installedOn)) {
      log.add(
          Finding.Kind.INVALID,
          "test before installation",
          step.source(),
          "The test was on " + step.day() + ", the unit was installed on " + installedOn + ".");
    }
  }

  private static void afterRemoval(HistoryStep step, LocalDate removedOn, FindingLog log) {
    if (removedOn != null && step.day().isAfter(removedOn)) {
      log.add(
          Finding.Kind.INVALID,
          "test after removal",
          step.source(),
          "The test was on " + step.day() + ", the unit was removed on " + removedOn + ".");
    }
  }
}

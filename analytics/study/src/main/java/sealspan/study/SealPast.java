package sealspan.study;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import sealspan.event.Action;
import sealspan.event.RepairItem;

/** What is known at a component before it is opened. */
final class SealPast {
  private LocalDate newOn;
  private LocalDate actedOn;
  private int failures;
  private int cleanings;
  private String lastAction = "NONE";

  void installed(LocalDate day) {
    newOn = day;
    actedOn = day;
    cleanings = 0;
    lastAction = "NONE";
  }

  void failedAsFound() {
    failures++;
  }

  void workedOn(List<RepairItem> items, LocalDate day) {
    boolean renewed = items.stream().anyMatch(SealPast::renews);
    boolean cleaned = items.stream().allMatch(SealPast::cleans);
    if (renewed) {
      newOn = day;
      cleanings = 0;
    } else if (cleaned) {
      cleanings++;
    }
    actedOn = day;
    lastAction = renewed ? "SEAL_RENEWED" : cleaned ? "CLEANED" : "OTHER";
  }

  static boolean renews(RepairItem item) {
    return item.action() != null && item.action().sealEffect() == Action.SealEffect.RENEWED;
  }

  static boolean cleans(RepairItem item) {
    return item.action() == Action.CLEANED || item.action() == Action.FLUSHED;
  }

  /** Days since the seal was new; null where that is not on the record. */
  Integer sealAgeDays(LocalDate day) {
    return newOn == null ? null : (int) ChronoUnit.DAYS.between(newOn, day);
  }

  /** Days since the last work or the installation; null where neither is on the record. */
  Integer sinceActionDays(LocalDate day) {
    return actedOn == null ? null : (int) ChronoUnit.DAYS.between(actedOn, day);
  }

  /** Failures found as found, the present one left out. */
  int failuresBefore() {
    return Math.max(0, failures - 1);
  }

  int cleaningsBefore() {
    return cleanings;
  }

  String lastAction() {
    return lastAction;
  }
}

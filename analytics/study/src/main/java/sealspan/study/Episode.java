package sealspan.study;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import sealspan.assembly.Criterion;
import sealspan.assembly.JudgedReading;
import sealspan.assembly.ReadingUnits;
import sealspan.assembly.Result;
import sealspan.assembly.TestRound;
import sealspan.event.Action;
import sealspan.event.ComponentAt;
import sealspan.event.Quantity;
import sealspan.event.RepairItem;
import sealspan.event.ReplacementReason;
import sealspan.table.RepairEpisodeRow;

/** One episode of repair while it is followed to its next routine test. */
final class Episode {
  static final String NO_PASS = "no pass was recorded after the work, so no days count";
  static final String CLEANED = "CLEANED";
  static final String SEAL_RENEWED = "SEAL_RENEWED";

  final String visitId;
  LocalDate passDay;

  private final String assemblyId;
  private final ComponentAt at;
  private final TestRound failedRound;
  private final LocalDate day;
  private final String decision;
  private final String undecided;
  private final String found;
  private final Integer sealAgeDays;
  private final Integer sinceActionDays;
  private final int failuresBefore;
  private final int cleaningsBefore;
  private final String actionBefore;
  private boolean renewedInVisit;
  private Result retest;
  private LocalDate nextOn;
  private Boolean failedNext;
  private Boolean untouchedFailedNext;

  private Episode(
      String assemblyId,
      ComponentAt at,
      TestRound failedRound,
      SealPast past,
      List<RepairItem> items,
      String visitId,
      LocalDate day) {
    this.assemblyId = assemblyId;
    this.at = at;
    this.failedRound = failedRound;
    this.visitId = visitId;
    this.day = day;
    this.undecided = undecided(items);
    this.renewedInVisit = items.stream().anyMatch(SealPast::renews);
    this.decision = undecided != null ? null : renewedInVisit ? SEAL_RENEWED : CLEANED;
    this.found = found(items);
    this.sealAgeDays = past.sealAgeDays(day);
    this.sinceActionDays = past.sinceActionDays(day);
    this.failuresBefore = past.failuresBefore();
    this.cleaningsBefore = past.cleaningsBefore();
    this.actionBefore = past.lastAction();
  }

  /** The episode that begins with the first work of a visit on a component that had failed. */
  static Episode begin(
      String assemblyId,
      ComponentAt at,
      TestRound failedRound,
      SealPast past,
      List<RepairItem> items,
      String visitId,
      LocalDate day) {
    return new Episode(assemblyId, at, failedRound, past, items, visitId, day);
  }

  /** Why the first work is neither cleaning alone nor a new seal; null where it is one of them. */
  private static String undecided(List<RepairItem> items) {
    boolean renewed = false;
    boolean onlyCleaned = true;
    for (RepairItem item : items) {
      if (item.action() == null) {
        return "what was done is not recorded";
      }
      if (item.action() == Action.ASSEMBLY_REPLACED) {
        return "the assembly was replaced";
      }
      if (item.reason() == ReplacementReason.DAMAGED_IN_WORK) {
        return "the seal was damaged in the work, so what was decided is not known";
      }
      renewed |= SealPast.renews(item);
      onlyCleaned &= SealPast.cleans(item);
    }
    return renewed || onlyCleaned ? null : "other work: neither cleaning alone nor a new seal";
  }

  private static String found(List<RepairItem> items) {
    String found = "NOT_KNOWN";
    for (RepairItem item : items) {
      if (item.mechanism() != null) {
        switch (item.mechanism()) {
          case DEBRIS, DEPOSIT, SCALE -> {
            return "FOULING";
          }
          case UNKNOWN, OTHER -> {}
          case NOTHING_FOUND -> found = found.equals("NOT_KNOWN") ? "NOTHING_FOUND" : found;
          default -> found = "DAMAGE";
        }
      }
    }
    return found;
  }

  /** More work in the same visit: only a later pass counts. */
  void again(List<RepairItem> items) {
    renewedInVisit |= items.stream().anyMatch(SealPast::renews);
    passDay = null;
  }

  /** A result of the same visit after the work. */
  void retested(Result result, LocalDate on) {
    if (retest == null) {
      retest = result;
    }
    leftAs(result, on);
  }

  /** A result after the work that is not an as-found one. */
  void leftAs(Result result, LocalDate on) {
    if (result == Result.FAILED) {
      passDay = null;
    } else if (passDay == null) {
      passDay = on;
    }
  }

  /** The next routine as-found result. */
  void found(Result result, LocalDate on, Boolean untouchedFailed) {
    nextOn = on;
    failedNext = result == Result.FAILED;
    untouchedFailedNext = untouchedFailed;
  }

  RepairEpisodeRow row(String because) {
    return new RepairEpisodeRow(
        assemblyId,
        visitId,
        day,
        at.text(),
        Text.of(failedRound.type()),
        failedRound.sizeInch(),
        failedRound.place().zoneId(),
        decision,
        found,
        readingShare(),
        ageDays(),
        sealAgeDays,
        sinceActionDays,
        failuresBefore,
        cleaningsBefore,
        actionBefore,
        Text.of(retest),
        renewedInVisit,
        nextOn,
        nextOn == null ? null : (int) ChronoUnit.DAYS.between(passDay, nextOn),
        failedNext,
        untouchedFailedNext,
        undecided != null ? undecided : because);
  }

  /** Age on the day of the work, which may be later than that of the test. */
  private Integer ageDays() {
    if (failedRound.ageDays() == null) {
      return null;
    }
    LocalDate tested = failedRound.test().when().day();
    return failedRound.ageDays() + (int) ChronoUnit.DAYS.between(tested, day);
  }

  private Double readingShare() {
    Double lowest = null;
    for (JudgedReading judged : failedRound.verdict().readings()) {
      Criterion limit = judged.criterion();
      Double psi = ReadingUnits.psi(judged.reading().value());
      boolean counts =
          judged.result() == Result.FAILED
              && judged.reading().at().equals(at)
              && psi != null
              && limit != null
              && limit.limit() != null
              && limit.limit().signum() > 0;
      if (counts) {
        Double limitPsi =
            ReadingUnits.psi(new Quantity(limit.limit().toPlainString(), limit.unit()));
        if (limitPsi != null) {
          double share = Math.max(0, psi) / limitPsi;
          lowest = lowest == null ? share : Math.min(lowest, share);
        }
      }
    }
    return lowest;
  }
}

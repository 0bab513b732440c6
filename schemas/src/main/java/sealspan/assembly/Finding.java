package sealspan.assembly;

import java.time.LocalDate;
import java.util.Comparator;

/**
 * Something noticed about a report or a history. It is kept and shown; whether a report may be used
 * is decided by each use.
 *
 * @param kind what sort of thing
 * @param check name of the check
 * @param eventId the event that it is about
 * @param day day of that event
 * @param reportNumber its report number; null where not recorded
 * @param testerId its tester; null where not recorded
 * @param words what was noticed, for people
 */
public record Finding(
    Kind kind,
    String check,
    String eventId,
    LocalDate day,
    String reportNumber,
    String testerId,
    String words) {

  /** The sorts of findings. */
  public enum Kind {
    /** A programme would not accept the report. */
    INVALID,
    /** The round counts as failed whatever the report says. */
    COUNTS_AS_FAILED,
    /** The report may be wrong. */
    SUSPICIOUS,
    /** Two contents under one id, or two statements that cannot both hold. */
    CONFLICT,
    /** Something that should follow is not there. */
    INCOMPLETE
  }

  /** Findings in order of day, event, check and words. */
  static final Comparator<Finding> ORDER =
      Comparator.comparing(Finding::day)
          .thenComparing(Finding::eventId)
          .thenComparing(Finding::check)
          .thenComparing(Finding::words);
}

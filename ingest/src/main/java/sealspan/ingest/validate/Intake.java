package sealspan.ingest.validate;

import java.time.LocalDate;
import sealspan.event.LoggedEvent;

/**
 * What is taken for granted of all rows that are taken in together.
 *
 * @param source name of the source; it is part of the key of numbered reports, so the same reports
 *     need the same name each time
 * @param latestDay last day on which something can have happened; the day of the import, as a rule
 * @param usualReportLagDays days from an event to its report, assumed where a row does not tell;
 *     null for no assumption
 * @param arrival whether the rows are taken in as they happen or with history
 */
public record Intake(
    String source, LocalDate latestDay, Integer usualReportLagDays, LoggedEvent.Arrival arrival) {

  public Intake {
    if (source == null || source.isBlank()) {
      throw new IllegalArgumentException("A source needs a name.");
    }
    if (usualReportLagDays != null && usualReportLagDays < 0) {
      throw new IllegalArgumentException("A report cannot come before what it reports.");
    }
  }

  /** History from files, with no assumption about when it was reported. */
  public static Intake imported(String source, LocalDate latestDay) {
    return new Intake(source, latestDay, null, LoggedEvent.Arrival.IMPORTED);
  }
}

package sealspan.assembly;

import java.math.BigDecimal;
import java.time.LocalDate;
import sealspan.event.Unit;

/**
 * A rule of a programme that is no limit of a reading; it stands in the criteria table with the
 * component {@code gauge}.
 *
 * @param jurisdiction whose rule it is; {@code default} for sites that name none
 * @param subject what it is about
 * @param amount months between calibrations, or the gauge's greatest error or reading
 * @param unit unit of the error or reading; null for months
 * @param validFrom first day on which it applies; null for no beginning
 * @param validTo last day on which it applies; null for no end
 * @param source where it was published
 */
public record ProgrammeRule(
    String jurisdiction,
    Subject subject,
    BigDecimal amount,
    Unit unit,
    LocalDate validFrom,
    LocalDate validTo,
    String source) {

  /** What rules are about. */
  public enum Subject {
    /** Greatest error of a test gauge; a reading this near its limit is marginal. */
    GAUGE_ACCURACY,
    /** Greatest differential that a test gauge can show. */
    GAUGE_RANGE,
    /** Whole months that a gauge may be used after its calibration. */
    CALIBRATION_INTERVAL
  }

  /** Whether it applies on a day. */
  boolean appliesOn(LocalDate day) {
    return (validFrom == null || !day.isBefore(validFrom))
        && (validTo == null || !day.isAfter(validTo));
  }
}

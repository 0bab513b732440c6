package sealspan.ingest.validate;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import sealspan.event.AssemblyEvent;
import sealspan.event.InspectionPerformed;
import sealspan.event.InstantText;
import sealspan.event.LoggedEvent;
import sealspan.event.LoggedEvent.ReportedOrigin;
import sealspan.event.Moment;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.VisitAttempted;
import sealspan.ingest.validate.Problem.Fault;

/** When events were reported. */
final class Reported {
  private static final Column REPORTED_ON = Columns.named("reported_on");

  private Reported() {}

  /**
   * The instant that a row tells; null where it tells none. A day without a time counts to its last
   * minute: then no question about an earlier moment is answered with what came later.
   */
  static Instant told(Fields fields, AssemblyEvent event) {
    Instant at = instant(fields);
    boolean happens =
        event instanceof TestPerformed
            || event instanceof RepairPerformed
            || event instanceof InspectionPerformed
            || event instanceof VisitAttempted;
    if (at != null && happens && event.when() != null) {
      // A day begins up to 14 hours earlier somewhere on Earth than in Greenwich.
      Instant earliest =
          event.when().day().atStartOfDay(ZoneOffset.UTC).toInstant().minus(Duration.ofHours(14));
      if (at.isBefore(earliest)) {
        fields.add(
            REPORTED_ON,
            Fault.CONTRADICTION,
            "It was reported before " + event.when().day() + ", the day on which it happened.",
            "Check both days.");
      }
    }
    return at;
  }

  private static Instant instant(Fields fields) {
    String text = fields.text(REPORTED_ON);
    if (text == null) {
      return null;
    }
    if (text.indexOf('T') == 10 && (text.endsWith("Z") || text.indexOf('+') > 10)) {
      try {
        Instant plain = InstantText.plain(text);
        return plain == null ? OffsetDateTime.parse(text).toInstant() : plain;
      } catch (DateTimeException e) {
        fields.add(
            REPORTED_ON,
            Fault.NOT_A_TIME,
            Fields.quoted(text) + " is not a day and time.",
            "Write it as 2025-03-31, 2025-03-31 14:05 or 2025-03-31T14:05:00Z.");
        return null;
      }
    }
    Moment moment = fields.moment(REPORTED_ON, null);
    if (moment == null) {
      return null;
    }
    return moment.minuteOfDay() != null ? moment.instant() : endOf(moment.day(), moment.timeZone());
  }

  private static Instant endOf(LocalDate day, String timeZone) {
    ZoneId zone = timeZone == null ? ZoneOffset.UTC : ZoneId.of(timeZone);
    return day.atTime(LocalTime.of(23, 59)).atZone(zone).toInstant();
  }

  /** The event with its envelope. */
  static LoggedEvent logged(Told told, String id, Intake intake) {
    Instant at = told.reportedAt();
    ReportedOrigin origin = ReportedOrigin.GIVEN;
    if (at == null && intake.usualReportLagDays() != null) {
      Moment when = told.event().when();
      at = endOf(when.day().plusDays(intake.usualReportLagDays()), when.timeZone());
      origin = ReportedOrigin.ASSUMED;
    } else if (at == null) {
      origin = ReportedOrigin.NOT_RECORDED;
    }
    return new LoggedEvent(id, intake.source(), told.event(), at, origin, null, intake.arrival());
  }
}

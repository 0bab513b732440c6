package sealspan.ingest.validate;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import sealspan.event.Moment;
import sealspan.ingest.validate.Problem.Fault;

/** Days and times of the fields of a row. */
final class DayFields {
  private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
  private static final LocalDate LATEST_VALIDITY = LocalDate.of(2199, 12, 31);
  private static final Column TIME_ZONE = Columns.named("time_zone");

  private DayFields() {}

  /** A day on which something happened: from 1900 on, and not later than the latest day. */
  static LocalDate pastDay(Fields fields, Column column) {
    return within(fields, column, day(fields, column), fields.latestDay());
  }

  /** A day up to which something is valid. */
  static LocalDate validityDay(Fields fields, Column column) {
    return within(fields, column, day(fields, column), LATEST_VALIDITY);
  }

  private static LocalDate day(Fields fields, Column column) {
    String text = fields.text(column);
    if (text == null) {
      return null;
    }
    LocalDate day = fields.draft().notation().days().parse(text);
    if (day == null) {
      int gap = timeGap(text);
      day = gap < 0 ? null : fields.draft().notation().days().parse(text.substring(0, gap));
    }
    if (day == null) {
      fields.add(
          column,
          Fault.NOT_A_DAY,
          Fields.quoted(text) + " is not a day as expected here.",
          dayAdvice(fields));
    }
    return day;
  }

  private static String dayAdvice(Fields fields) {
    List<String> further = fields.draft().notation().days().patterns();
    return further.isEmpty()
        ? "Write it as 2025-03-31, or name the form (such as M/d/yyyy) in a mapping, dateFormats."
        : "Write it as 2025-03-31 or in a form of the mapping: " + String.join(", ", further) + ".";
  }

  private static LocalDate within(Fields fields, Column column, LocalDate day, LocalDate latest) {
    if (day == null) {
      return null;
    }
    if (day.isBefore(EARLIEST)) {
      fields.add(column, Fault.DAY_OUT_OF_RANGE, day + " is before 1900.", "Check the year.");
      return null;
    }
    if (day.isAfter(latest)) {
      fields.add(
          column,
          Fault.DAY_OUT_OF_RANGE,
          day + " is after " + latest + ", the last day that can be told of.",
          "Check day, month and year.");
      return null;
    }
    return day;
  }

  private static int timeGap(String text) {
    int gap = text.indexOf('T') == 10 ? 10 : text.indexOf(' ');
    return gap >= 6 && text.indexOf(':', gap) > 0 ? gap : -1;
  }

  /**
   * When something happened; null where the day cannot be read.
   *
   * @param time column of the time of day; null where the cell of the day may tell it
   */
  static Moment moment(Fields fields, Column date, Column time) {
    LocalDate day = pastDay(fields, date);
    Integer minute = time == null ? null : minuteOfDay(fields, time);
    if (minute == null && day != null) {
      String text = fields.text(date);
      int gap = text.length() > 10 ? timeGap(text) : -1;
      if (gap > 0) {
        int told = TimeForms.minuteOfDay(text.substring(gap + 1).trim());
        // Spreadsheets write midnight for a day without a time.
        minute = told > 0 ? told : null;
      }
    }
    return day == null ? null : new Moment(day, minute, timeZone(fields));
  }

  static Integer minuteOfDay(Fields fields, Column column) {
    String text = fields.text(column);
    if (text == null) {
      return null;
    }
    int minute = TimeForms.minuteOfDay(text);
    if (minute < 0) {
      fields.add(
          column,
          Fault.NOT_A_TIME,
          Fields.quoted(text) + " is not a time of day.",
          "Write it as 09:40, or as 9:40 am.");
      return null;
    }
    return minute;
  }

  /** The time zone of the row, else that of the file; null where neither tells. */
  static String timeZone(Fields fields) {
    String text = fields.text(TIME_ZONE);
    if (text == null) {
      return fields.draft().notation().timeZone();
    }
    try {
      return ZoneId.of(text).getId();
    } catch (DateTimeException e) {
      fields.add(
          TIME_ZONE,
          Fault.UNKNOWN_CODE,
          Fields.quoted(text) + " is not a time zone.",
          "Write an IANA name such as America/Denver.");
      return null;
    }
  }
}

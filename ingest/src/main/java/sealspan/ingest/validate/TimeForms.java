package sealspan.ingest.validate;

import java.util.Locale;

/** Times of day as people write them: 9:40, 09:40, 09:40:15, 9:40 am. Seconds are dropped. */
final class TimeForms {
  private TimeForms() {}

  /** Minutes since midnight; -1 where the text is no time of day. */
  static int minuteOfDay(String text) {
    String time = text;
    int halfDay = -1;
    String lower = text.toLowerCase(Locale.ROOT);
    if (lower.endsWith("am") || lower.endsWith("pm")) {
      halfDay = lower.charAt(lower.length() - 2) == 'p' ? 12 : 0;
      time = text.substring(0, text.length() - 2).trim();
    }
    int colon = time.indexOf(':');
    if (colon < 1 || colon > 2) {
      return -1;
    }
    int end = time.indexOf(':', colon + 1);
    if (end >= 0 && (DayForms.digits(time, end + 1, Math.min(time.length(), end + 3)) > 59)) {
      return -1;
    }
    int minuteEnd = end < 0 ? time.length() : end;
    int hour = DayForms.digits(time, 0, colon);
    int minute = minuteEnd - colon == 3 ? DayForms.digits(time, colon + 1, minuteEnd) : -1;
    if (halfDay >= 0) {
      hour = hour < 1 || hour > 12 ? -1 : hour % 12 + halfDay;
    }
    return hour < 0 || hour > 23 || minute < 0 || minute > 59 ? -1 : 60 * hour + minute;
  }
}

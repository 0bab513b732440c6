package sealspan.event;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;

/**
 * Instants in the text that {@link Instant#toString()} writes. Every event of the log has two or
 * three, and the general parser took two thirds of the time of reading one.
 */
final class InstantText {
  private static final String FORM = "0000-00-00T00:00:00";

  private InstantText() {}

  /**
   * The instant of a text such as {@code 2026-03-01T09:30:00.250Z}; everything else that {@link
   * Instant#parse} takes is taken too.
   *
   * @throws DateTimeParseException when it is none
   */
  static Instant parse(String text) {
    int dot = FORM.length();
    int end = text.length() - 1;
    if (end < dot || text.charAt(end) != 'Z' || end > dot + 10 || !hasForm(text)) {
      return Instant.parse(text);
    }
    int nanos = 0;
    if (end > dot) {
      if (text.charAt(dot) != '.' || end == dot + 1) {
        return Instant.parse(text);
      }
      for (int i = dot + 1; i <= dot + 9; i++) {
        int digit = i < end ? text.charAt(i) - '0' : 0;
        if (digit < 0 || digit > 9) {
          return Instant.parse(text);
        }
        nanos = 10 * nanos + digit;
      }
    }
    int hour = number(text, 11, 13);
    int minute = number(text, 14, 16);
    int second = number(text, 17, 19);
    if (hour > 23 || minute > 59 || second > 59) {
      return Instant.parse(text);
    }
    try {
      long day =
          LocalDate.of(number(text, 0, 4), number(text, 5, 7), number(text, 8, 10)).toEpochDay();
      return Instant.ofEpochSecond(86_400 * day + 3_600L * hour + 60L * minute + second, nanos);
    } catch (DateTimeException e) {
      throw new DateTimeParseException(e.getMessage(), text, 0, e);
    }
  }

  private static boolean hasForm(String text) {
    for (int i = 0; i < FORM.length(); i++) {
      char form = FORM.charAt(i);
      char c = text.charAt(i);
      if (form == '0' ? c < '0' || c > '9' : c != form) {
        return false;
      }
    }
    return true;
  }

  private static int number(String text, int from, int to) {
    int number = 0;
    for (int i = from; i < to; i++) {
      number = 10 * number + text.charAt(i) - '0';
    }
    return number;
  }
}

package sealspan.ingest.validate;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How days are written: as ISO 8601 says (2025-03-31), and in the given further forms. */
public final class DayForms {
  private final List<String> patterns;
  private final List<DateTimeFormatter> formats = new ArrayList<>();

  private DayForms(List<String> patterns) {
    this.patterns = List.copyOf(patterns);
    for (String pattern : patterns) {
      // A year of an era (y) cannot be resolved strictly; the proleptic year (u) can.
      DateTimeFormatter format =
          new DateTimeFormatterBuilder()
              .parseCaseInsensitive()
              .appendPattern(pattern.replace('y', 'u'))
              .toFormatter(Locale.ENGLISH)
              .withResolverStyle(ResolverStyle.STRICT);
      if (!tellsADay(format)) {
        throw new IllegalArgumentException("'" + pattern + "' does not tell year, month and day");
      }
      formats.add(format);
    }
  }

  private static boolean tellsADay(DateTimeFormatter format) {
    LocalDate day = LocalDate.of(2025, 3, 14);
    try {
      return LocalDate.parse(day.format(format), format).equals(day);
    } catch (DateTimeException e) {
      // What it writes of a day is not enough to read the day back.
      return false;
    }
  }

  /**
   * Days in ISO 8601 and further forms, tried in their order.
   *
   * @param patterns patterns of {@link DateTimeFormatter}, such as {@code M/d/yyyy}
   * @throws IllegalArgumentException where a pattern is none
   */
  public static DayForms of(List<String> patterns) {
    return new DayForms(patterns);
  }

  /** The further forms. */
  public List<String> patterns() {
    return patterns;
  }

  /** The day that a text tells; null where it tells none in these forms. */
  public LocalDate parse(String text) {
    LocalDate iso = iso(text);
    if (iso != null) {
      return iso;
    }
    for (DateTimeFormatter format : formats) {
      try {
        return LocalDate.parse(text, format);
      } catch (DateTimeException e) {
        // Not in this form; the next may fit.
        continue;
      }
    }
    return null;
  }

  private static LocalDate iso(String text) {
    if (text.length() != 10 || text.charAt(4) != '-' || text.charAt(7) != '-') {
      return null;
    }
    int year = digits(text, 0, 4);
    int month = digits(text, 5, 7);
    int day = digits(text, 8, 10);
    if (year < 0 || month < 1 || month > 12 || day < 1) {
      return null;
    }
    boolean exists = day <= 28 || day <= java.time.YearMonth.of(year, month).lengthOfMonth();
    return exists ? LocalDate.of(year, month, day) : null;
  }

  /** The number that the characters from begin to end tell; -1 where one is no digit. */
  static int digits(String text, int begin, int end) {
    int number = 0;
    for (int i = begin; i < end; i++) {
      int digit = text.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return -1;
      }
      number = 10 * number + digit;
    }
    return begin < end ? number : -1;
  }
}

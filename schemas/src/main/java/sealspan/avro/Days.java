package sealspan.avro;

import java.time.LocalDate;

/**
 * Days as objects that are made once: rows hold the same few thousand days over and over. Threads
 * may make one twice, which changes nothing.
 */
final class Days {
  /** From 1970 to 2149. */
  private static final LocalDate[] KNOWN = new LocalDate[1 << 16];

  private Days() {}

  static LocalDate of(int epochDay) {
    if (epochDay < 0 || epochDay >= KNOWN.length) {
      return LocalDate.ofEpochDay(epochDay);
    }
    LocalDate known = KNOWN[epochDay];
    if (known == null) {
      known = LocalDate.ofEpochDay(epochDay);
      KNOWN[epochDay] = known;
    }
    return known;
  }
}

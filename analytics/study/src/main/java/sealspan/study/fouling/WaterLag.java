package sealspan.study.fouling;

/**
 * When something must have acted to count, before a test and not before its last pass. The first is
 * the question asked beforehand; the others tell whether what it does wears off.
 */
enum WaterLag {
  SINCE_LAST_PASS("since the last pass"),
  LAST_90_DAYS("in the 90 days before the test"),
  EARLIER("since the last pass, but more than 90 days before the test");

  private static final int DAYS = 90;

  private final String words;

  WaterLag(String words) {
    this.words = words;
  }

  /** In words. */
  String words() {
    return words;
  }

  /** The time begins after this day. */
  int afterDay(WaterTest test) {
    return this == LAST_90_DAYS ? Math.max(test.afterDay(), test.day() - DAYS) : test.afterDay();
  }

  /** The time ends with this day; it is empty where this is not later than {@link #afterDay}. */
  int lastDay(WaterTest test) {
    return this == EARLIER ? Math.max(test.afterDay(), test.day() - DAYS) : test.day();
  }

  /** The lag that with this one makes up all the time since the last pass; null for all of it. */
  WaterLag rest() {
    return switch (this) {
      case SINCE_LAST_PASS -> null;
      case LAST_90_DAYS -> EARLIER;
      case EARLIER -> LAST_90_DAYS;
    };
  }
}

package sealspan.study.fouling;

/**
 * One counted as-found round with the time since its last pass, in its water zone.
 *
 * @param assemblyId its assembly
 * @param zoneId water zone that day
 * @param type type that day; null where not recorded
 * @param afterDay day of the last pass, days since 1970-01-01; what came later may have acted
 * @param day day of the test, later than that; what came on it may have acted
 * @param fouled whether it found a fouling failure
 */
record WaterTest(
    String assemblyId, String zoneId, String type, int afterDay, int day, boolean fouled) {

  /** Days since the last pass, at least 1. */
  int days() {
    return day - afterDay;
  }
}

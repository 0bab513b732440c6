package sealspan.study.watch;

import java.time.Instant;

/**
 * A test that the watch has judged.
 *
 * @param knownAt when it became known
 * @param eventId event id of the round
 * @param test its outcome
 * @param probability what the frozen model gave it
 * @param zones numbers of the zones of that model that it lies in
 */
record Bet(Instant knownAt, String eventId, WatchedOutcome test, double probability, int[] zones) {
  boolean in(int zone) {
    for (int each : zones) {
      if (each == zone) {
        return true;
      }
    }
    return false;
  }
}

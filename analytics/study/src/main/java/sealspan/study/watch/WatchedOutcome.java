package sealspan.study.watch;

import java.time.LocalDate;
import java.util.Objects;
import sealspan.study.fouling.FoulingFailure;
import sealspan.table.TestRow;

/**
 * A routine as-found round that counts, and whether it found a fouling failure.
 *
 * @param day day of the round
 * @param place site of that day; where none is recorded, the assembly's id after a space
 * @param zoneId water zone that day; null where none is recorded
 * @param type assembly type that day; null where none is recorded
 * @param exposureDays days since the assembly last passed, at least 1
 * @param fouled whether it found a fouling failure
 */
public record WatchedOutcome(
    LocalDate day, String place, String zoneId, String type, int exposureDays, boolean fouled) {

  public WatchedOutcome {
    Objects.requireNonNull(day, "day");
    Objects.requireNonNull(place, "place");
  }

  /** The outcome of a round; null where it does not count, or its failure is not classified. */
  static WatchedOutcome of(TestRow round) {
    if (!counts(round) || FoulingFailure.of(round) == FoulingFailure.UNCLASSIFIED) {
      return null;
    }
    return new WatchedOutcome(
        round.day(),
        round.siteId() == null ? " " + round.assemblyId() : round.siteId(),
        round.zoneId(),
        round.type(),
        round.exposureDays(),
        FoulingFailure.of(round) == FoulingFailure.FOULED);
  }

  /** Whether a round is one that could be a fouling failure: as for the visits of the scan. */
  static boolean counts(TestRow round) {
    return round.counted()
        && round.phase().equals("AS_FOUND")
        && round.exposureDays() != null
        && round.exposureDays() > 0;
  }

  /** What tells the site visit: all rounds of a day at one place. */
  String visit() {
    return day + " " + place;
  }
}

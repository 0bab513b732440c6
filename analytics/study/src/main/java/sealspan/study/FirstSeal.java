package sealspan.study;

import sealspan.stats.survival.Lifetime;
import sealspan.table.SealRow;

/**
 * The life of the first seal of a position, in days since it was new.
 *
 * @param type assembly type; null where not recorded
 * @param entryAge age at which it came under observation, at least 0
 * @param heldAge last age at which it is known to have held, at least the entry
 * @param failedAge age at which it was found failed; {@link Lifetime#NEVER} where it was not
 * @param endAge age at its last day, at least 0
 * @param replaced whether it ended by being replaced
 * @param reason why it came to its end; null where it has not
 */
record FirstSeal(
    String type,
    int entryAge,
    int heldAge,
    int failedAge,
    int endAge,
    boolean replaced,
    String reason) {
  static final String REMOVED = "REMOVED";
  private static final String NOT_RECORDED = "NOT_RECORDED";

  static FirstSeal of(SealRow seal) {
    int entry = Math.max(0, SealPosition.days(seal.startDay(), seal.entryDay()));
    int held =
        seal.lastHeldOn() == null
            ? entry
            : Math.max(entry, SealPosition.days(seal.startDay(), seal.lastHeldOn()));
    int failed =
        seal.foundFailedOn() == null
            ? Lifetime.NEVER
            : SealPosition.days(seal.startDay(), seal.foundFailedOn());
    int end = Math.max(0, SealPosition.days(seal.startDay(), seal.endDay()));
    return new FirstSeal(
        seal.type(), entry, held, failed, end, SealPosition.replaced(seal), reason(seal));
  }

  private static String reason(SealRow seal) {
    if (SealPosition.replaced(seal)) {
      return seal.replacementReason() == null ? NOT_RECORDED : seal.replacementReason();
    }
    return seal.endedBy().equals(REMOVED) ? REMOVED : null;
  }

  /** What is known of its life until it failed; null where it was never seen to hold or to fail. */
  Lifetime untilFailed() {
    if (failedAge == Lifetime.NEVER) {
      return heldAge > entryAge ? Lifetime.goingOn(entryAge, heldAge) : null;
    }
    return failedAge > heldAge ? Lifetime.endedWithin(entryAge, heldAge, failedAge) : null;
  }
}

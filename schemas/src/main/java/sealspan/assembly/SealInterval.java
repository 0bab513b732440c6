package sealspan.assembly;

import java.time.LocalDate;
import sealspan.event.ComponentAt;
import sealspan.event.ReplacementReason;

/**
 * The time of one seal at its position.
 *
 * @param at component whose seal it is
 * @param gap number of the seal at the position, from 1
 * @param startDay first day of the seal; where its origin is unknown, first day of the record
 * @param origin whether the first day is that of installation or replacement
 * @param entryDay day since when it is under observation, not before the record begins
 * @param endDay day of replacement or removal; while in place, the day it was last seen
 * @param end how it ended
 * @param reason reason of the replacement; null where none was recorded or nothing was replaced
 * @param lastHeldOn last day on which it is known to have held; null for none
 * @param foundFailedOn day on which it was found failed; null where it was not. It failed in
 *     (lastHeldOn, foundFailedOn]
 */
public record SealInterval(
    ComponentAt at,
    int gap,
    LocalDate startDay,
    Origin origin,
    LocalDate entryDay,
    LocalDate endDay,
    End end,
    ReplacementReason reason,
    LocalDate lastHeldOn,
    LocalDate foundFailedOn) {

  /** Whether the first day of a seal is known. */
  public enum Origin {
    KNOWN,
    UNKNOWN
  }

  /** How the time of a seal ended. */
  public enum End {
    REPLACED,
    REMOVED,
    IN_PLACE
  }
}

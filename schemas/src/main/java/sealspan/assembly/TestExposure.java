package sealspan.assembly;

import java.time.LocalDate;
import sealspan.event.Action;
import sealspan.event.ComponentAt;

/**
 * One component (or the whole assembly) from its last known pass to a routine as-found round that
 * gave a result, or, where that round did not reach it and nobody acted on it, to the retest of the
 * same visit.
 *
 * @param eventId event id of the round
 * @param at the component; {@code whole} for the assembly
 * @param fromDay day of the last known pass
 * @param toDay day of the round
 * @param exposureDays days between, at least 1
 * @param failed whether it failed
 * @param failureClass class of the failure; null where it passed
 * @param lastAction strongest action on the component since its as-found result before; NONE for
 *     none
 */
public record TestExposure(
    String eventId,
    ComponentAt at,
    LocalDate fromDay,
    LocalDate toDay,
    int exposureDays,
    boolean failed,
    FailureClass failureClass,
    Action lastAction) {}

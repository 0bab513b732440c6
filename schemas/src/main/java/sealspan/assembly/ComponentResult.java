package sealspan.assembly;

import sealspan.event.ComponentAt;

/**
 * What a round says of one tested component.
 *
 * @param at the component
 * @param result its result as found, or as left
 * @param leftAs what the readings say of the state in which it was left; other than the result only
 *     where an assembly was flushed to pass
 * @param marginal whether one of its readings lies within the gauge's error of the limit
 */
public record ComponentResult(ComponentAt at, Result result, Result leftAs, boolean marginal) {}

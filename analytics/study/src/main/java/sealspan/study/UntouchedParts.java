package sealspan.study;

import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.TestExposure;
import sealspan.assembly.TestRound;
import sealspan.event.Action;
import sealspan.event.ComponentAt;

/**
 * The other components of an assembly that had held and that nobody touched: work on one component
 * cannot help or harm them, so a difference there speaks of the cases and not of the work.
 */
final class UntouchedParts {
  private UntouchedParts() {}

  /**
   * Whether one of them failed in a later round; null where there is none with a result.
   *
   * @param at the component that was worked on
   * @param next the later round
   * @param before the round that found the component failed
   */
  static Boolean failed(AssemblyHistory history, ComponentAt at, TestRound next, TestRound before) {
    Boolean failed = null;
    for (TestExposure exposure : history.exposures()) {
      boolean other =
          exposure.eventId().equals(next.source().id())
              && !exposure.at().equals(AssemblyHistory.WHOLE)
              && !exposure.at().equals(at);
      if (other
          && exposure.lastAction() == Action.NONE
          && !exposure.fromDay().isBefore(before.test().when().day())) {
        failed = Boolean.TRUE.equals(failed) || exposure.failed();
      }
    }
    return failed;
  }
}

package sealspan.assembly;

import java.util.IdentityHashMap;
import java.util.Map;
import sealspan.event.Action;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;

/**
 * The exposure of an assembly that has not ended yet: from its last known pass, by the same rules
 * as the exposures that have.
 */
public final class OpenExposure {
  private OpenExposure() {}

  /** The round that passed last, so that an exposure runs on from it; null where none does. */
  public static TestRound begunBy(AssemblyHistory history) {
    Map<StandingEvent, TestRound> rounds = new IdentityHashMap<>();
    history.rounds().forEach(round -> rounds.put(round.source(), round));
    TestRound passed = null;
    for (StandingEvent event : history.events()) {
      TestRound round = rounds.get(event);
      if (round != null) {
        Result result = round.result(AssemblyHistory.WHOLE);
        if (result == Result.FAILED) {
          passed = null;
        }
        if (result == Result.PASSED || round.leftAs(AssemblyHistory.WHOLE) == Result.PASSED) {
          passed = round;
        }
      } else if (endedBy(event, passed)) {
        passed = null;
      }
    }
    return passed;
  }

  private static boolean endedBy(StandingEvent event, TestRound passed) {
    if (passed == null || event.event() instanceof AssemblyRemoved) {
      return true;
    }
    if (event.event() instanceof AssemblyInstalled installed) {
      return installed.dayMeaning() == DayMeaning.INSTALLED;
    }
    if (event.event() instanceof RepairPerformed repair) {
      boolean sameVisit = EventOrder.visitId(repair).equals(passed.visitId());
      for (RepairItem item : repair.items()) {
        boolean acts = item.action() != Action.NONE && ActedOn.touches(item, AssemblyHistory.WHOLE);
        if (acts && (!sameVisit || item.action() == Action.ASSEMBLY_REPLACED)) {
          return true;
        }
      }
    }
    return false;
  }
}

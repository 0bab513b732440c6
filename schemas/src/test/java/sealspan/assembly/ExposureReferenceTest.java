package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sealspan.event.Action;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyRemoved;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed.Phase;

/**
 * Exposures against a second reading of the definitions that keeps no state: for each round it
 * looks back for the nearest event that says something of the component.
 */
class ExposureReferenceTest {
  @Test
  void theFoldAgreesWithLookingBackFromEachRound() {
    AcceptanceCriteria criteria = AcceptanceCriteria.shipped();
    int compared = 0;
    for (long seed = 0; seed < 3_000; seed++) {
      AssemblyHistory history = AssemblyHistory.of("A", RandomHistory.of(seed, "A"), criteria);
      TreeSet<String> fold = new TreeSet<>();
      TreeSet<ComponentAt> parts = new TreeSet<>(List.of(AssemblyHistory.WHOLE));
      for (TestExposure e : history.exposures()) {
        fold.add(text(e.eventId(), e.at(), e.fromDay(), e.toDay(), e.failed()));
      }
      history.rounds().forEach(r -> r.verdict().components().forEach(c -> parts.add(c.at())));
      TreeSet<String> slow = new TreeSet<>();
      for (ComponentAt part : parts) {
        slow.addAll(lookBack(history, part));
      }
      assertEquals(slow, fold, "seed " + seed);
      compared += slow.size();
    }
    assertTrue(compared > 10_000, "only " + compared + " exposures were compared");
  }

  private static String text(
      String round, ComponentAt at, LocalDate from, LocalDate to, boolean failed) {
    return String.join(" ", round, at.text(), from.toString(), to.toString(), "" + failed);
  }

  private static List<String> lookBack(AssemblyHistory history, ComponentAt part) {
    List<String> found = new ArrayList<>();
    for (int i = 0; i < history.events().size(); i++) {
      TestRound round = round(history, i);
      boolean routineAsFound =
          round != null
              && (round.counting() == Counting.COUNTED || round.counting() == Counting.UNDECIDED)
              && round.phase() == Phase.AS_FOUND;
      boolean firstWordOfIt =
          round != null && isKnown(round.result(part)) && notReachedAsFound(history, i, part);
      if (firstWordOfIt || routineAsFound && isKnown(round.result(part))) {
        LocalDate from = lastPass(history, i, part, round.test().when().day());
        LocalDate day = round.test().when().day();
        if (from != null && from.isBefore(day)) {
          boolean failed = round.result(part) == Result.FAILED;
          found.add(text(round.source().id(), part, from, day, failed));
        }
      }
    }
    return found;
  }

  /**
   * Whether the visit's routine as-found round did not reach a part that nobody has touched since.
   */
  private static boolean notReachedAsFound(AssemblyHistory history, int index, ComponentAt part) {
    String visit = round(history, index).visitId();
    boolean notReached = false;
    for (int j = 0; j < index; j++) {
      TestRound round = round(history, j);
      AssemblyEvent event = history.events().get(j).event();
      if (round != null && isKnown(round.result(part))) {
        notReached = false;
      } else if (round != null
          && round.phase() == Phase.AS_FOUND
          && round.counting() != Counting.RETEST) {
        notReached =
            round.visitId().equals(visit)
                && (round.counting() == Counting.COUNTED || round.counting() == Counting.UNDECIDED);
      } else if (event instanceof RepairPerformed repair) {
        notReached &= repair.items().stream().noneMatch(item -> concerns(item, part));
      } else if (event instanceof AssemblyRemoved
          || event instanceof AssemblyInstalled installed
              && installed.dayMeaning() == AssemblyInstalled.DayMeaning.INSTALLED) {
        notReached = false;
      }
    }
    return notReached;
  }

  /** Day of the last known pass; null where something lies between it and the round. */
  private static LocalDate lastPass(
      AssemblyHistory history, int index, ComponentAt part, LocalDate day) {
    TreeSet<String> workedIn = new TreeSet<>();
    for (int j = index - 1; j >= 0; j--) {
      AssemblyEvent event = history.events().get(j).event();
      TestRound round = round(history, j);
      if (round != null && round.leftAs(part) == Result.PASSED) {
        workedIn.remove(round.visitId()); // Work on what had just passed leaves the pass known.
        return workedIn.isEmpty() ? round.test().when().day() : null;
      }
      if (round != null && round.result(part) == Result.FAILED) {
        return null;
      }
      if (event instanceof AssemblyRemoved
          || event instanceof AssemblyInstalled installed
              && installed.dayMeaning() == AssemblyInstalled.DayMeaning.INSTALLED) {
        return null;
      }
      if (event instanceof RepairPerformed repair) {
        for (RepairItem item : repair.items()) {
          if (concerns(item, part)) {
            if (item.action() == Action.ASSEMBLY_REPLACED) {
              return null;
            }
            workedIn.add(EventOrder.visitId(repair));
          }
        }
      }
    }
    return null;
  }

  private static boolean concerns(RepairItem item, ComponentAt part) {
    if (item.action() == Action.NONE) {
      return false;
    }
    Component on = item.at().component();
    return on == Component.WHOLE
        || item.at().equals(part)
        || part.component() == Component.WHOLE
            && List.of(
                    Component.CHECK1, Component.CHECK2, Component.RELIEF_VALVE, Component.AIR_INLET)
                .contains(on);
  }

  private static boolean isKnown(Result result) {
    return result == Result.PASSED || result == Result.FAILED;
  }

  private static TestRound round(AssemblyHistory history, int index) {
    for (TestRound round : history.rounds()) {
      if (round.source() == history.events().get(index)) {
        return round;
      }
    }
    return null;
  }
}

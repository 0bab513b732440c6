package sealspan.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.Counting;
import sealspan.assembly.Result;
import sealspan.assembly.StandingEvent;
import sealspan.assembly.TestRound;
import sealspan.event.Action;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed.Phase;
import sealspan.table.RepairEpisodeRow;

/** Follows one component through a history in canonical order, and its episodes of repair. */
final class EpisodeFold {
  private final AssemblyHistory history;
  private final ComponentAt at;
  private final List<RepairEpisodeRow> rows = new ArrayList<>(2);
  private final SealPast past = new SealPast();
  private TestRound failedRound;
  private boolean failed;
  private Episode open;

  EpisodeFold(AssemblyHistory history, ComponentAt at) {
    this.history = history;
    this.at = at;
  }

  /**
   * Takes the next event.
   *
   * @param round what the history makes of it, for a test round; null for other events
   * @param visitId its visit, for a repair; null for other events
   */
  void step(StandingEvent event, TestRound round, String visitId) {
    LocalDate day = event.event().when().day();
    if (round != null) {
      round(round, day);
    } else if (event.event() instanceof RepairPerformed repair) {
      repair(repair, day, visitId);
    } else if (event.event() instanceof AssemblyRemoved) {
      close("the assembly was removed before the next routine test");
      failed = false;
    } else if (event.event() instanceof AssemblyInstalled installed
        && installed.dayMeaning() == DayMeaning.INSTALLED) {
      close("the assembly was removed before the next routine test");
      failed = false;
      past.installed(day);
    }
  }

  /** The episodes, of which the last may still wait for its test. */
  List<RepairEpisodeRow> end() {
    close("not tested again yet");
    return rows;
  }

  private void close(String because) {
    if (open != null) {
      rows.add(open.row(open.passDay == null ? Episode.NO_PASS : because));
      open = null;
    }
  }

  private void round(TestRound round, LocalDate day) {
    Result result = round.result(at);
    boolean known = result == Result.PASSED || result == Result.FAILED;
    boolean asFound = round.phase() == Phase.AS_FOUND && round.counting() != Counting.RETEST;
    if (open != null && known) {
      if (round.visitId().equals(open.visitId)) {
        open.retested(result, day);
      } else if (!asFound) {
        open.leftAs(result, day);
      } else {
        next(round, result, day);
      }
    }
    if (known) {
      failed = result == Result.FAILED;
      if (failed && asFound) {
        failedRound = round;
        past.failedAsFound();
      }
    }
    if (round.leftAs(at) == Result.PASSED) {
      failed = false;
    }
  }

  private void next(TestRound round, Result result, LocalDate day) {
    if (open.passDay != null && day.isAfter(open.passDay)) {
      if (round.counting() == Counting.COUNTED || round.counting() == Counting.UNDECIDED) {
        open.found(result, day, UntouchedParts.failed(history, at, round, failedRound));
        close(null);
        return;
      }
      close("seen next outside a routine test");
      return;
    }
    close(Episode.NO_PASS);
  }

  private void repair(RepairPerformed repair, LocalDate day, String visitId) {
    List<RepairItem> items = new ArrayList<>(1);
    for (RepairItem item : repair.items()) {
      boolean touches = item.at().component() == Component.WHOLE || item.at().equals(at);
      if (touches && item.action() != Action.NONE) {
        items.add(item);
      }
    }
    if (items.isEmpty()) {
      return;
    }
    if (open != null && open.visitId.equals(visitId)) {
      open.again(items);
    } else {
      close("worked on again before the next routine test");
      if (failed && failedRound != null) {
        open = Episode.begin(history.assemblyId(), at, failedRound, past, items, visitId, day);
      }
    }
    past.workedOn(items, day);
  }
}

package sealspan.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.ComponentResult;
import sealspan.assembly.RepairOutcome;
import sealspan.assembly.Result;
import sealspan.assembly.StandingEvent;
import sealspan.assembly.TestRound;
import sealspan.event.ComponentAt;
import sealspan.table.RepairEpisodeRow;

/**
 * The repair episodes of an assembly: every time that a component which had failed as found was
 * worked on. What was decided first counts, whatever the retest made of it: a cleaning that did not
 * take and was followed by a new seal in the same visit is what deciding to clean led to.
 */
final class RepairEpisodes {
  private RepairEpisodes() {}

  static List<RepairEpisodeRow> of(AssemblyHistory history) {
    Map<String, TestRound> rounds = new HashMap<>();
    TreeSet<ComponentAt> failed = new TreeSet<>();
    for (TestRound round : history.rounds()) {
      rounds.put(round.source().id(), round);
      for (ComponentResult component : round.verdict().components()) {
        if (component.result() == Result.FAILED) {
          failed.add(component.at());
        }
      }
    }
    if (failed.isEmpty()) {
      return List.of();
    }
    Map<String, String> visits = new HashMap<>();
    for (RepairOutcome repair : history.repairs()) {
      visits.put(repair.source().id(), repair.visitId());
    }
    List<RepairEpisodeRow> episodes = new ArrayList<>();
    for (ComponentAt at : failed) {
      EpisodeFold fold = new EpisodeFold(history, at);
      for (StandingEvent event : history.events()) {
        fold.step(event, rounds.get(event.id()), visits.get(event.id()));
      }
      episodes.addAll(fold.end());
    }
    return episodes;
  }
}

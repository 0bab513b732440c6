package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.table.RepairEpisodeRow;
import sealspan.table.RetestRow;

/**
 * Repairs that did not take: the retest of the same visit has no exposure, so its failures are a
 * share of their own and never part of a rate.
 */
final class Retests {
  private static final List<String> DECISIONS = List.of("CLEANED", "SEAL_RENEWED");

  private Retests() {}

  /** One row for each of the two decisions, by the episodes of a stratum. */
  static List<RetestRow> of(String stratum, List<RepairEpisodeRow> episodes) {
    int[] retests = new int[DECISIONS.size()];
    int[] failed = new int[DECISIONS.size()];
    for (RepairEpisodeRow episode : episodes) {
      // Neither of the two: a list of constants cannot be asked for null.
      int at = episode.decision() == null ? -1 : DECISIONS.indexOf(episode.decision());
      String result = episode.retestResult();
      boolean known = "PASSED".equals(result) || "FAILED".equals(result);
      if (at >= 0 && known) {
        retests[at]++;
        failed[at] += result.equals("FAILED") ? 1 : 0;
      }
    }
    List<RetestRow> rows = new ArrayList<>();
    for (int i = 0; i < retests.length; i++) {
      ExactShare share = retests[i] == 0 ? null : ExactShare.of(failed[i], retests[i]);
      rows.add(
          new RetestRow(
              stratum,
              DECISIONS.get(i),
              retests[i],
              failed[i],
              share == null ? null : (double) failed[i] / retests[i],
              share == null ? null : share.lower(),
              share == null ? null : share.upper()));
    }
    return rows;
  }
}

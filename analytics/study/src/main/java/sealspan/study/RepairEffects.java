package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.effect.ActionEffect;
import sealspan.stats.effect.Balance;
import sealspan.table.AssemblyRows;
import sealspan.table.RepairBalanceRow;
import sealspan.table.RepairEffectRow;
import sealspan.table.RepairEpisodeRow;

/**
 * What cleaning and a new seal would each have led to in a stratum, by what was found on opening.
 *
 * @param figures the figures
 * @param balance how alike the compared cases are
 */
record RepairEffects(List<RepairEffectRow> figures, List<RepairBalanceRow> balance) {
  static final double LEVEL = 0.95;
  private static final String ANY = "ANY";
  private static final List<String> FOUND =
      List.of(ANY, "FOULING", "DAMAGE", "NOTHING_FOUND", "NOT_KNOWN");

  /** The episodes of a stratum; of one component where one is named. */
  static List<RepairEpisodeRow> episodes(String component, Members members) {
    List<RepairEpisodeRow> episodes = new ArrayList<>();
    for (AssemblyRows rows : members) {
      for (RepairEpisodeRow episode : rows.repairEpisodes()) {
        if (component == null || component.equals(episode.component())) {
          episodes.add(episode);
        }
      }
    }
    return episodes;
  }

  /** The effect by the episodes of a stratum. */
  static RepairEffects of(String stratum, List<RepairEpisodeRow> all) {
    List<RepairEffectRow> figures = new ArrayList<>();
    List<RepairBalanceRow> balance = new ArrayList<>();
    for (String found : FOUND) {
      List<RepairEpisodeRow> episodes =
          found.equals(ANY) ? all : all.stream().filter(e -> found.equals(e.found())).toList();
      if (!episodes.isEmpty() || found.equals(ANY)) {
        EpisodeCohort cohort = EpisodeCohort.of(episodes);
        Estimate<ActionEffect> effect = RepairEffect.of(cohort);
        figures.addAll(EffectFigures.of(stratum, found, cohort, effect));
        if (effect instanceof Estimate.Identified<ActionEffect> identified) {
          for (Balance one : identified.value().balance()) {
            balance.add(balance(stratum, found, one));
          }
        }
      }
    }
    return new RepairEffects(List.copyOf(figures), List.copyOf(balance));
  }

  private static RepairBalanceRow balance(String stratum, String found, Balance one) {
    return new RepairBalanceRow(
        stratum,
        found,
        one.covariate(),
        one.firstMean(),
        one.secondMean(),
        one.before(),
        one.firstWeightedMean(),
        one.secondWeightedMean(),
        one.after());
  }
}

package sealspan.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import sealspan.stats.effect.Arm;
import sealspan.stats.effect.ComparedCases;
import sealspan.stats.effect.MatchedChoice;
import sealspan.table.RepairEpisodeRow;

/**
 * The episodes of a stratum that are compared, and those that are not.
 *
 * @param episodes the compared ones: cleaned or seal renewed, and seen again at a routine test
 * @param leftOut how many were left out, by reason
 */
record EpisodeCohort(List<RepairEpisodeRow> episodes, Map<String, Integer> leftOut) {
  private static final double NUISANCE_RIDGE = 0.25;

  /** Divides episodes into those compared and those left out. */
  static EpisodeCohort of(List<RepairEpisodeRow> all) {
    List<RepairEpisodeRow> compared = new ArrayList<>();
    Map<String, Integer> leftOut = new TreeMap<>();
    for (RepairEpisodeRow episode : all) {
      if (episode.leftOutBecause() == null) {
        compared.add(episode);
      } else {
        leftOut.merge(episode.leftOutBecause(), 1, Integer::sum);
      }
    }
    return new EpisodeCohort(compared, leftOut);
  }

  static boolean renewed(RepairEpisodeRow episode) {
    return Episode.SEAL_RENEWED.equals(episode.decision());
  }

  int count(Arm arm) {
    return (int) episodes.stream().filter(e -> renewed(e) == (arm == Arm.SECOND)).count();
  }

  int failed(Arm arm) {
    return (int)
        episodes.stream().filter(e -> renewed(e) == (arm == Arm.SECOND) && e.failedNext()).count();
  }

  int assemblies() {
    return (int) episodes.stream().map(RepairEpisodeRow::assemblyId).distinct().count();
  }

  /** The cases, with the failure of the component itself as outcome; exposures in years. */
  ComparedCases cases() {
    return cases(episodes, RepairEpisodeRow::failedNext);
  }

  /** The cases that have a component nobody touched, with its failure as outcome. */
  ComparedCases untouchedCases() {
    List<RepairEpisodeRow> with =
        episodes.stream().filter(e -> e.untouchedFailedNext() != null).toList();
    return cases(with, RepairEpisodeRow::untouchedFailedNext);
  }

  private static ComparedCases cases(
      List<RepairEpisodeRow> rows, Predicate<RepairEpisodeRow> outcome) {
    int n = rows.size();
    boolean[] second = new boolean[n];
    boolean[] failed = new boolean[n];
    double[] years = new double[n];
    int[] unit = new int[n];
    Map<String, Integer> units = new HashMap<>();
    for (int i = 0; i < n; i++) {
      RepairEpisodeRow row = rows.get(i);
      second[i] = renewed(row);
      failed[i] = outcome.test(row);
      years[i] = row.exposureDays() / RatePriors.YEAR_DAYS;
      unit[i] = units.computeIfAbsent(row.assemblyId(), id -> units.size());
    }
    EpisodeCovariates covariates = EpisodeCovariates.of(rows);
    return new ComparedCases(covariates.names(), covariates.columns(), second, failed, years, unit);
  }

  /**
   * The same assemblies with themselves. What was done before is taken in, because an earlier new
   * seal makes a cleaning look good.
   */
  List<MatchedChoice.Stratum> withinAssemblies() {
    Map<String, List<RepairEpisodeRow>> byAssembly = new TreeMap<>();
    for (RepairEpisodeRow episode : episodes) {
      byAssembly.computeIfAbsent(episode.assemblyId(), id -> new ArrayList<>()).add(episode);
    }
    List<MatchedChoice.Stratum> strata = new ArrayList<>();
    for (List<RepairEpisodeRow> rows : byAssembly.values()) {
      boolean both = rows.stream().map(EpisodeCohort::renewed).distinct().count() == 2;
      if (both) {
        double[][] covariates = new double[rows.size()][];
        boolean[] failed = new boolean[rows.size()];
        for (int i = 0; i < failed.length; i++) {
          RepairEpisodeRow row = rows.get(i);
          failed[i] = row.failedNext();
          covariates[i] =
              new double[] {
                renewed(row) ? 0 : 1,
                row.actionBefore().equals(Episode.CLEANED) ? 1 : 0,
                row.actionBefore().equals(Episode.SEAL_RENEWED) ? 1 : 0,
                StrictMath.log(row.exposureDays() / RatePriors.YEAR_DAYS)
              };
        }
        strata.add(new MatchedChoice.Stratum(covariates, failed));
      }
    }
    return strata;
  }

  /** Weak priors for everything but the action itself. */
  static double[] withinRidges() {
    return new double[] {0, NUISANCE_RIDGE, NUISANCE_RIDGE, NUISANCE_RIDGE};
  }
}

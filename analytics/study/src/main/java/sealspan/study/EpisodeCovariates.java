package sealspan.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import sealspan.table.RepairEpisodeRow;

/**
 * What was known of the cases before the decision, as columns of numbers. Where something is not
 * recorded the mean of the others stands in and a column says so. What was found on opening is
 * known after the decision to open, but before the one between cleaning and a new seal. Who did the
 * work is left out: it moves the decision and not the seal, and to adjust for it would only make
 * more of what was not recorded.
 *
 * @param names names of the columns
 * @param columns the columns
 */
record EpisodeCovariates(List<String> names, double[][] columns) {
  private static final double YEAR_DAYS = RatePriors.YEAR_DAYS;
  private static final int FEWEST_OF_A_LEVEL = 20;
  private static final int MOST_LEVELS = 8;

  static EpisodeCovariates of(List<RepairEpisodeRow> episodes) {
    Map<String, double[]> columns = new LinkedHashMap<>();
    measured(columns, "failed reading as a share of its limit", episodes, e -> e.readingShare());
    measured(columns, "age of the assembly, log", episodes, e -> logYears(e.ageDays()));
    measured(columns, "age of the seal, log", episodes, e -> logYears(e.sealAgeDays()));
    measured(
        columns,
        "time since work on the component, log",
        episodes,
        e -> logYears(e.sinceActionDays()));
    measured(columns, "size, log", episodes, e -> logSize(e.sizeInch()));
    measured(columns, "failures before", episodes, e -> (double) Math.min(5, e.failuresBefore()));
    measured(
        columns,
        "cleanings of this seal before",
        episodes,
        e -> (double) Math.min(5, e.cleaningsBefore()));
    levels(columns, "work before", episodes, RepairEpisodeRow::actionBefore);
    levels(columns, "found", episodes, RepairEpisodeRow::found);
    levels(columns, "component", episodes, RepairEpisodeRow::component);
    levels(columns, "type", episodes, RepairEpisodeRow::type);
    levels(columns, "zone", episodes, RepairEpisodeRow::zoneId);
    measured(columns, "season, winter to summer", episodes, e -> StrictMath.cos(season(e)));
    measured(columns, "season, spring to autumn", episodes, e -> StrictMath.sin(season(e)));
    return new EpisodeCovariates(
        List.copyOf(columns.keySet()), columns.values().toArray(double[][]::new));
  }

  /** Log of an age in years; a month at least, so that the first days do not stretch the scale. */
  private static Double logYears(Integer days) {
    return days == null ? null : StrictMath.log(Math.max(30, days) / YEAR_DAYS);
  }

  private static Double logSize(String sizeInch) {
    boolean decimal = sizeInch != null && sizeInch.matches("\\d*\\.?\\d+");
    double inches = decimal ? Double.parseDouble(sizeInch) : 0;
    return inches > 0 ? StrictMath.log(inches) : null;
  }

  private static double season(RepairEpisodeRow episode) {
    return 2 * StrictMath.PI * episode.day().getDayOfYear() / YEAR_DAYS;
  }

  private static void measured(
      Map<String, double[]> columns,
      String name,
      List<RepairEpisodeRow> episodes,
      Function<RepairEpisodeRow, Double> value) {
    double[] column = new double[episodes.size()];
    double[] missing = new double[episodes.size()];
    double sum = 0;
    int known = 0;
    for (int i = 0; i < column.length; i++) {
      Double one = value.apply(episodes.get(i));
      if (one == null) {
        missing[i] = 1;
      } else {
        column[i] = one;
        sum += one;
        known++;
      }
    }
    double mean = known == 0 ? 0 : sum / known;
    for (int i = 0; i < column.length; i++) {
      column[i] = missing[i] == 1 ? mean : column[i];
    }
    if (varies(column)) {
      columns.put(name, column);
    }
    if (varies(missing)) {
      columns.put(name + ": not recorded", missing);
    }
  }

  /** A column for each level that enough cases have, other than the most frequent. */
  private static void levels(
      Map<String, double[]> columns,
      String name,
      List<RepairEpisodeRow> episodes,
      Function<RepairEpisodeRow, String> value) {
    Map<String, Integer> counts = new TreeMap<>();
    for (RepairEpisodeRow episode : episodes) {
      counts.merge(label(value.apply(episode)), 1, Integer::sum);
    }
    List<String> frequent = new ArrayList<>(counts.keySet());
    frequent.sort((a, b) -> counts.get(b) - counts.get(a));
    int fewest = Math.min(FEWEST_OF_A_LEVEL, Math.max(1, episodes.size() / 10));
    for (int rank = 1; rank < Math.min(frequent.size(), MOST_LEVELS + 1); rank++) {
      String level = frequent.get(rank);
      if (counts.get(level) >= fewest) {
        double[] column = new double[episodes.size()];
        for (int i = 0; i < column.length; i++) {
          column[i] = level.equals(label(value.apply(episodes.get(i)))) ? 1 : 0;
        }
        columns.put(name + ": " + level, column);
      }
    }
  }

  private static String label(String level) {
    return level == null
        ? "not recorded"
        : level.toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }

  private static boolean varies(double[] column) {
    return Arrays.stream(column).distinct().count() > 1;
  }
}

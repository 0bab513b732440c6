package sealspan.study;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.Regression;
import sealspan.stats.regression.RegressionFit;
import sealspan.stats.regression.Ridge;
import sealspan.table.RateEffectRow;

/**
 * What goes with higher rates: a complementary log-log model with the logarithm of the exposure as
 * offset. Effects are pulled a little towards none, so that a level with few tests cannot claim
 * much.
 */
final class RateEffects {
  /** With fewer failures nothing is said of what goes with them. */
  static final int FEWEST_FAILURES = 50;

  private static final int FEWEST_TESTS_OF_LEVEL = 30;
  private static final int MOST_LEVELS = 25;

  /** A normal prior of standard deviation 1/2 on the logarithm of a ratio. */
  private static final Ridge RIDGE = new Ridge(4);

  private static final double LEVEL = .95;
  private static final String STRATUM = "all";

  private final List<Map<String, Double>> ratios = new ArrayList<>();

  private RateEffects(Collection<RateEffectRow> rows) {
    for (RateFactor factor : RateFactor.values()) {
      Map<String, Double> own = new HashMap<>();
      rows.stream()
          .filter(row -> row.factor().equals(factor.text()))
          .forEach(row -> own.put(row.level(), row.ratio()));
      ratios.add(own);
    }
  }

  /** As the rows of a fit have them; a level that they do not name counts as the base. */
  static RateEffects read(Collection<RateEffectRow> rows) {
    return new RateEffects(rows);
  }

  /** The rate at some levels as a multiple of that at all base levels. */
  double multiplier(List<String> levels) {
    double product = 1;
    for (int f = 0; f < levels.size(); f++) {
      product *= ratios.get(f).getOrDefault(levels.get(f), 1.0);
    }
    return product;
  }

  /** The rows of a fit; empty where there are too few failures. */
  static List<RateEffectRow> fit(List<RatedUnit> all, ExposureScale scale) {
    List<RatedUnit> units = Subsample.of(all);
    String sampled = units.size() == all.size() ? null : Subsample.NOTE;
    List<RatedTest> tests = new ArrayList<>();
    List<Integer> cluster = new ArrayList<>();
    List<Double> offset = new ArrayList<>();
    int failures = 0;
    for (int unit = 0; unit < units.size(); unit++) {
      for (RatedTest test : units.get(unit).tests()) {
        tests.add(test);
        cluster.add(unit);
        offset.add(StrictMath.log(scale.years(test.days(), units.get(unit).type())));
        failures += test.failed() ? 1 : 0;
      }
    }
    List<RateEffectRow> rows = new ArrayList<>();
    if (failures < FEWEST_FAILURES) {
      return rows;
    }
    Design design = Design.ofRows(tests.size()).constant();
    List<Map<String, List<RatedTest>>> levels = new ArrayList<>();
    for (RateFactor factor : RateFactor.values()) {
      Map<String, List<RatedTest>> own = levels(tests, factor);
      levels.add(own);
      int column = 0;
      for (String level : own.keySet()) {
        design = column++ == 0 ? design : withLevel(design, tests, factor, level);
      }
    }
    double[] failed = tests.stream().mapToDouble(test -> test.failed() ? 1 : 0).toArray();
    Observations data =
        Observations.of(design, failed)
            .offset(offset.stream().mapToDouble(Double::doubleValue).toArray())
            .cluster(cluster.stream().mapToInt(Integer::intValue).toArray());
    Estimate<RegressionFit> estimate = Regression.fit(Family.CLOGLOG, data, RIDGE);
    if (estimate instanceof Estimate.Identified<RegressionFit> fit) {
      for (RateFactor factor : RateFactor.values()) {
        rows.addAll(rows(factor, levels.get(factor.ordinal()), fit.value(), sampled));
      }
    }
    return rows;
  }

  /** Levels with enough tests, the base (the one with most tests) first; none if it is alone. */
  private static Map<String, List<RatedTest>> levels(List<RatedTest> tests, RateFactor factor) {
    Map<String, List<RatedTest>> byLevel = new TreeMap<>();
    for (RatedTest test : tests) {
      byLevel
          .computeIfAbsent(test.levels().get(factor.ordinal()), l -> new ArrayList<>())
          .add(test);
    }
    Map<String, List<RatedTest>> kept = new java.util.LinkedHashMap<>();
    byLevel.entrySet().stream()
        .filter(level -> level.getValue().size() >= FEWEST_TESTS_OF_LEVEL)
        .sorted(
            Comparator.comparingInt((Map.Entry<String, List<RatedTest>> l) -> -l.getValue().size())
                .thenComparing(Map.Entry::getKey))
        .limit(MOST_LEVELS)
        .forEach(level -> kept.put(level.getKey(), level.getValue()));
    return kept.size() < 2 ? Map.of() : kept;
  }

  private static Design withLevel(
      Design design, List<RatedTest> tests, RateFactor factor, String level) {
    double[] values = new double[tests.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = tests.get(i).levels().get(factor.ordinal()).equals(level) ? 1 : 0;
    }
    return design.column(name(factor, level), values);
  }

  private static List<RateEffectRow> rows(
      RateFactor factor, Map<String, List<RatedTest>> levels, RegressionFit fit, String sampled) {
    List<RateEffectRow> rows = new ArrayList<>();
    for (Map.Entry<String, List<RatedTest>> level : levels.entrySet()) {
      int tests = level.getValue().size();
      int failures = (int) level.getValue().stream().filter(RatedTest::failed).count();
      boolean base = rows.isEmpty();
      double ratio = 1;
      Double lower = null;
      Double upper = null;
      String note = base ? "the base" : sampled;
      if (!base) {
        String name = name(factor, level.getKey());
        ratio = StrictMath.exp(fit.coefficient(name));
        Estimate<PointEstimate> clustered = fit.clustered(name, LEVEL);
        if (clustered instanceof Estimate.Identified<PointEstimate> e) {
          lower = StrictMath.exp(e.value().interval().lower());
          upper = StrictMath.exp(e.value().interval().upper());
        } else {
          note = "no interval: " + ((Estimate.NotIdentified<PointEstimate>) clustered).because();
        }
      }
      rows.add(
          new RateEffectRow(
              STRATUM, factor.text(), level.getKey(), tests, failures, ratio, lower, upper, note));
    }
    return rows;
  }

  private static String name(RateFactor factor, String level) {
    return factor.text() + "=" + level;
  }
}

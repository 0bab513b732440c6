package sealspan.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.rates.GammaPrior;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.PriorFit;
import sealspan.stats.rates.RateShrinkage;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.Regression;
import sealspan.stats.regression.RegressionFit;
import sealspan.table.ExposurePowerRow;

/**
 * Whether failures accumulate with the time between tests. If they do, the coefficient of log
 * exposure in a complementary log-log model is 1. Assemblies that differ make it look smaller,
 * because the worst fail early; so where their rates are seen to differ as a gamma distribution
 * would have it, the exposure is first turned into the cumulative hazard that 1 would give: shape x
 * log(1 + days / scale). The intervals of types hold jointly for all types.
 */
final class ExposurePowers {
  static final String PER_YEAR = "PER_YEAR";
  static final String PER_TEST = "PER_TEST";
  static final String ALL = "ALL";

  private static final int FEWEST_FAILURES = 10;

  /**
   * With times that differ less than this, a tenth or so, days of chance decide the coefficient.
   */
  private static final double LEAST_SPREAD = 0.1;

  private static final String COEFFICIENT = "log exposure";
  private static final double LEVEL = .95;

  private ExposurePowers() {}

  /** For all assemblies and for each type, by mechanism. */
  static List<ExposurePowerRow> of(List<RatedUnit> units) {
    List<ExposurePowerRow> rows = new ArrayList<>(ofStratum("all", units, LEVEL));
    TreeSet<String> types = new TreeSet<>();
    units.stream().filter(unit -> unit.type() != null).forEach(unit -> types.add(unit.type()));
    double joint = 1 - (1 - LEVEL) / Math.max(1, types.size());
    for (String type : types) {
      List<RatedUnit> own = units.stream().filter(unit -> type.equals(unit.type())).toList();
      rows.addAll(ofStratum("type=" + type, own, joint));
    }
    return rows;
  }

  private static List<ExposurePowerRow> ofStratum(
      String stratum, List<RatedUnit> units, double level) {
    List<RatedUnit> some = Subsample.of(units);
    String sampled = some.size() == units.size() ? null : Subsample.NOTE;
    List<ExposurePowerRow> rows = new ArrayList<>();
    for (String mechanism : List.of(ALL, "FOULING", "DAMAGE")) {
      rows.add(row(stratum, mechanism, some, level, sampled));
    }
    return rows;
  }

  private static ExposurePowerRow row(
      String stratum, String mechanism, List<RatedUnit> units, double level, String sampled) {
    List<List<RatedTest>> tests = new ArrayList<>();
    int n = 0;
    int failures = 0;
    int unclassified = 0;
    for (RatedUnit unit : units) {
      List<RatedTest> kept = new ArrayList<>();
      for (RatedTest test : unit.tests()) {
        boolean other = !mechanism.equals(ALL) && test.failed();
        if (other && isUnclassified(test)) {
          unclassified++;
          continue;
        }
        boolean failed = test.failed() && (!other || mechanism.equals(test.failureClass()));
        failures += failed ? 1 : 0;
        n++;
        kept.add(
            new RatedTest(
                test.days(), failed, test.failureClass(), test.compliant(), test.levels()));
      }
      tests.add(kept);
    }
    Estimate<PointEstimate> estimate =
        failures < FEWEST_FAILURES
            ? Estimate.notIdentified(
                (failures == 0 ? "there are no" : "there are only " + failures)
                    + " such failures; it needs "
                    + FEWEST_FAILURES)
            : spreadOfLogDays(tests) < LEAST_SPREAD
                ? Estimate.notIdentified("the times between tests hardly differ")
                : coefficient(tests, n, level);
    if (estimate instanceof Estimate.Identified<PointEstimate> e) {
      boolean accumulate = e.value().interval().contains(1);
      return new ExposurePowerRow(
          stratum,
          mechanism,
          n,
          failures,
          unclassified,
          e.value().value(),
          e.value().interval().lower(),
          e.value().interval().upper(),
          accumulate ? PER_YEAR : PER_TEST,
          sampled);
    }
    String because = ((Estimate.NotIdentified<PointEstimate>) estimate).because();
    return new ExposurePowerRow(
        stratum,
        mechanism,
        n,
        failures,
        unclassified,
        null,
        null,
        null,
        PER_YEAR,
        "not identified: " + because);
  }

  private static boolean isUnclassified(RatedTest test) {
    return test.failureClass() == null || test.failureClass().equals("UNCLASSIFIED");
  }

  /** Standard deviation of the logarithm of the days of all tests; 0 for none. */
  private static double spreadOfLogDays(List<List<RatedTest>> units) {
    double[] logs =
        units.stream().flatMap(List::stream).mapToDouble(test -> Math.log(test.days())).toArray();
    double mean = Arrays.stream(logs).average().orElse(0);
    return Math.sqrt(Arrays.stream(logs).map(x -> (x - mean) * (x - mean)).average().orElse(0));
  }

  private static Estimate<PointEstimate> coefficient(
      List<List<RatedTest>> byUnit, int n, double level) {
    List<HiddenFailures> units = byUnit.stream().map(RatedUnit::hiddenFailures).toList();
    GammaPrior differ =
        RateShrinkage.fitHidden(units) instanceof Estimate.Identified<PriorFit> fit
            ? fit.value().prior()
            : null;
    double[] log = new double[n];
    double[] failed = new double[n];
    int[] cluster = new int[n];
    int at = 0;
    for (int unit = 0; unit < byUnit.size(); unit++) {
      for (RatedTest test : byUnit.get(unit)) {
        log[at] = logHazard(test.days(), differ);
        failed[at] = test.failed() ? 1 : 0;
        cluster[at++] = unit;
      }
    }
    Design design = Design.ofRows(n).constant().column(COEFFICIENT, log);
    Observations data = Observations.of(design, failed).cluster(cluster);
    Estimate<RegressionFit> fitted = Regression.fit(Family.CLOGLOG, data);
    if (fitted instanceof Estimate.Identified<RegressionFit> fit) {
      return fit.value().clustered(COEFFICIENT, level);
    }
    return Estimate.notIdentified(((Estimate.NotIdentified<RegressionFit>) fitted).because());
  }

  private static double logHazard(int days, GammaPrior differ) {
    return differ == null
        ? StrictMath.log(days / RatePriors.YEAR_DAYS)
        : StrictMath.log(differ.shape() * StrictMath.log1p(days / differ.exposureDays()));
  }

  /** The rows of mechanism ALL by stratum. */
  static Map<String, ExposurePowerRow> whole(Collection<ExposurePowerRow> rows) {
    Map<String, ExposurePowerRow> whole = new HashMap<>();
    for (ExposurePowerRow row : rows) {
      if (row.mechanism().equals(ALL)) {
        whole.put(row.stratum(), row);
      }
    }
    return whole;
  }
}

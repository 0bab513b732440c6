package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.StratifiedFit;
import sealspan.stats.regression.StratifiedRegression;

/**
 * The rate of fouling between two tests against what the water did between them: a complementary
 * log-log regression, log H = log of the days + a constant of the zone + season + type + effect.
 * The day of fouling is not known, so what acted at any time since the last pass counts.
 *
 * <p>Tests of one zone, and those that met the same event, are not independent. Of the interval by
 * the model, the one that takes zones and the one that takes events as what was sampled, the widest
 * is given; one that has fewer than five zones or events to go by is not asked.
 *
 * @param log logarithm of the ratio of rates
 * @param lower its lower limit, 95 %
 * @param upper its upper limit
 * @param p probability of a value as far from 0, if there were no effect
 * @param clusteredBy what the interval takes as independent
 */
record WaterEffectFit(double log, double lower, double upper, double p, String clusteredBy) {
  static final int FEWEST = 5;

  /** With fewer fouled tests season and type are left out of the model. */
  static final int FEWEST_FOR_SEASON = 20;

  private static final int FEWEST_OF_TYPE = 10;
  private static final double VARIED_LOG_DAYS = 0.2;
  private static final double LEVEL = .95;
  private static final String EFFECT = "effect";

  /**
   * The effect of the last of some columns, given the others.
   *
   * @param tests the tests
   * @param columns one array for each, with a value for each test; the last is the one asked for
   * @param shared what tests have in common that met the same event
   */
  static Estimate<WaterEffectFit> of(
      List<WaterTest> tests, List<double[]> columns, Function<WaterTest, String> shared) {
    int n = tests.size();
    Design design = background(tests);
    for (int k = 0; k + 1 < columns.size(); k++) {
      design = design.column("given " + k, columns.get(k));
    }
    design = design.column(EFFECT, columns.get(columns.size() - 1));
    double[] fouled = new double[n];
    double[] logYears = new double[n];
    for (int i = 0; i < n; i++) {
      fouled[i] = tests.get(i).fouled() ? 1 : 0;
      logYears[i] = StrictMath.log(tests.get(i).days() / FoulingModel.YEAR_DAYS);
    }
    Observations data = Observations.of(design, fouled).offset(logYears);
    int[] zone = numbered(tests, WaterTest::zoneId);
    String dependent = StratifiedRegression.dependentColumn(Family.CLOGLOG, data, zone);
    while (dependent != null && !dependent.equals(EFFECT)) {
      data = data.design(data.design().without(dependent));
      dependent = StratifiedRegression.dependentColumn(Family.CLOGLOG, data, zone);
    }
    if (dependent != null) {
      return Estimate.notIdentified(
          "within zones it cannot be told from the season, the type or other times");
    }
    Estimate<StratifiedFit> fit = StratifiedRegression.fit(Family.CLOGLOG, data, zone);
    if (fit instanceof Estimate.NotIdentified<StratifiedFit> not) {
      return Estimate.notIdentified(not.because());
    }
    return widest(fit.orThrow(), zone, numbered(tests, shared));
  }

  private static Estimate<WaterEffectFit> widest(StratifiedFit fit, int[] zone, int[] event) {
    boolean byZone = fit.clusters(zone) >= FEWEST;
    boolean byEvent = fit.clusters(event) >= FEWEST;
    if (!byZone && !byEvent) {
      return Estimate.notIdentified(
          "the tests are of fewer than five zones, and of fewer than five times between events");
    }
    WaterEffectFit widest = of(fit.modelBased(EFFECT, LEVEL), 0, "tests");
    if (byZone) {
      widest = wider(widest, fit.clustered(EFFECT, zone, LEVEL), fit.clusters(zone), "zones");
    }
    if (byEvent) {
      widest = wider(widest, fit.clustered(EFFECT, event, LEVEL), fit.clusters(event), "events");
    }
    return Estimate.of(widest);
  }

  private static WaterEffectFit wider(
      WaterEffectFit one, Estimate<PointEstimate> other, int clusters, String by) {
    if (other instanceof Estimate.Identified<PointEstimate> found) {
      WaterEffectFit next = of(found.value(), clusters - 1, by);
      return next.upper - next.lower > one.upper - one.lower ? next : one;
    }
    return one;
  }

  private static WaterEffectFit of(PointEstimate estimate, int degrees, String by) {
    double z = -Math.abs(estimate.value() / estimate.standardError());
    double tail =
        degrees == 0
            ? new NormalDistribution().cumulativeProbability(z)
            : new TDistribution(degrees).cumulativeProbability(z);
    return new WaterEffectFit(
        estimate.value(),
        estimate.interval().lower(),
        estimate.interval().upper(),
        Math.min(1, 2 * tail),
        by);
  }

  /** Season, type, and a deviation from rates that are constant, where the data carry them. */
  private static Design background(List<WaterTest> tests) {
    int n = tests.size();
    Design design = Design.ofRows(n);
    long fouled = tests.stream().filter(WaterTest::fouled).count();
    if (fouled < FEWEST_FOR_SEASON) {
      return design;
    }
    double[] sine = new double[n];
    double[] cosine = new double[n];
    double[] logDays = new double[n];
    double mean = 0;
    for (int i = 0; i < n; i++) {
      double turn = FoulingModel.season(LocalDate.ofEpochDay(tests.get(i).day()));
      sine[i] = StrictMath.sin(turn);
      cosine[i] = StrictMath.cos(turn);
      logDays[i] = StrictMath.log(tests.get(i).days());
      mean += logDays[i] / n;
    }
    double spread = 0;
    for (double each : logDays) {
      spread += (each - mean) * (each - mean) / n;
    }
    design = design.column("season sine", sine).column("season cosine", cosine);
    if (Math.sqrt(spread) >= VARIED_LOG_DAYS) {
      design = design.column("log days", logDays);
    }
    return withTypes(design, tests);
  }

  /** A column for each type with enough fouled and other tests; the rest are the base. */
  private static Design withTypes(Design design, List<WaterTest> tests) {
    TreeMap<String, int[]> counts = new TreeMap<>();
    for (WaterTest test : tests) {
      counts.computeIfAbsent(type(test), t -> new int[2])[test.fouled() ? 1 : 0]++;
    }
    counts.values().removeIf(c -> c[0] < FEWEST_OF_TYPE || c[1] < FEWEST_OF_TYPE);
    String commonest = null;
    for (String type : counts.keySet()) {
      if (commonest == null || counts.get(type)[0] > counts.get(commonest)[0]) {
        commonest = type;
      }
    }
    Design with = design;
    for (String type : counts.keySet()) {
      if (!type.equals(commonest)) {
        with =
            with.column(
                "type=" + type,
                tests.stream().mapToDouble(test -> type(test).equals(type) ? 1 : 0).toArray());
      }
    }
    return with;
  }

  private static String type(WaterTest test) {
    return test.type() == null ? "not recorded" : test.type();
  }

  private static int[] numbered(List<WaterTest> tests, Function<WaterTest, String> of) {
    Map<String, Integer> numbers = new HashMap<>();
    int[] numbered = new int[tests.size()];
    for (int i = 0; i < numbered.length; i++) {
      numbered[i] = numbers.computeIfAbsent(of.apply(tests.get(i)), name -> numbers.size());
    }
    return numbered;
  }
}

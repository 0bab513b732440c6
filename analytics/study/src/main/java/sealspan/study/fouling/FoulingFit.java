package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.rates.CountedRate;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.Regression;
import sealspan.stats.regression.RegressionFit;
import sealspan.stats.regression.Ridge;
import sealspan.table.FoulingCoefficientRow;

/**
 * How likely a fouling failure is at a site visit, by what has nothing to do with the place: the
 * time since the last pass, the number of assemblies, their type, and the season. A complementary
 * log-log regression without effects of place, zone or assembly: with them a cluster would explain
 * itself away.
 *
 * <p>Exposure and number of rounds enter with the coefficient 1, as if fouling came at a constant
 * rate and to each assembly by itself, and with a deviation from it that the data must show: all
 * coefficients but the constant are pulled a little towards 0 (normal, standard deviation 1), so
 * that a type without a fouling failure has one too.
 *
 * @param method {@link #REGRESSION}, {@link #POOLED} or {@link #NONE}
 * @param baseType type that the others are compared with; null where none is
 * @param because why it is no regression, in words; null where it is one
 * @param coefficients what {@link FoulingModel} is made from; empty for {@link #NONE}
 */
public record FoulingFit(
    String method, String baseType, String because, List<FoulingCoefficientRow> coefficients) {
  static final String REGRESSION = "REGRESSION";
  static final String POOLED = "POOLED";
  static final String NONE = "NONE";

  /** With fewer, one rate for all. */
  static final int FEWEST_CASES = 10;

  private static final Ridge PULL = new Ridge(1);
  private static final double LEVEL = .95;

  /** The fit to classified visits, ordered. */
  public static FoulingFit of(List<FoulingVisit> visits) {
    int cases = (int) visits.stream().filter(FoulingVisit::fouled).count();
    if (visits.isEmpty()) {
      return new FoulingFit(
          NONE,
          null,
          "not identified: there is no routine as-found round that an earlier pass is known for",
          List.of());
    }
    if (cases < FEWEST_CASES) {
      return pooled(
          visits,
          cases,
          "there are only " + cases + " visits with a fouling failure; it needs " + FEWEST_CASES);
    }
    String base = commonestType(visits);
    Estimate<RegressionFit> fitted =
        Regression.fit(Family.CLOGLOG, observations(visits, base), PULL);
    if (fitted instanceof Estimate.Identified<RegressionFit> fit) {
      return new FoulingFit(REGRESSION, base, null, rows(fit.value()));
    }
    return pooled(visits, cases, ((Estimate.NotIdentified<RegressionFit>) fitted).because());
  }

  /**
   * One rate for all, half a case added so that it is never 0. The limits are those of the count
   * (Garwood); without a case there is no lower one.
   */
  private static FoulingFit pooled(List<FoulingVisit> visits, int cases, String because) {
    long days = 0;
    for (FoulingVisit visit : visits) {
      days += visit.exposureDays();
    }
    double years = days / FoulingModel.YEAR_DAYS;
    double perYear = (cases + 0.5) / years;
    Interval limits = CountedRate.garwood(cases, years, LEVEL);
    return new FoulingFit(
        POOLED,
        null,
        "not identified what goes with fouling: "
            + because
            + "; one rate for all, with half a case added",
        List.of(
            new FoulingCoefficientRow(
                FoulingModel.CONSTANT,
                StrictMath.log(perYear),
                cases == 0 ? null : StrictMath.log(limits.lower()),
                StrictMath.log(limits.upper())),
            new FoulingCoefficientRow(FoulingModel.EXPOSURE, 1, null, null),
            new FoulingCoefficientRow(FoulingModel.ROUNDS, 1, null, null)));
  }

  /** Of types equally common the first by name. */
  private static String commonestType(List<FoulingVisit> visits) {
    Map<String, Integer> counts = new TreeMap<>();
    for (FoulingVisit visit : visits) {
      if (visit.type() != null) {
        counts.merge(visit.type(), 1, Integer::sum);
      }
    }
    String commonest = null;
    for (Map.Entry<String, Integer> type : counts.entrySet()) {
      if (commonest == null || type.getValue() > counts.get(commonest)) {
        commonest = type.getKey();
      }
    }
    return commonest;
  }

  private static Observations observations(List<FoulingVisit> visits, String base) {
    int n = visits.size();
    double[] fouled = new double[n];
    double[] offset = new double[n];
    double[] exposure = new double[n];
    double[] rounds = new double[n];
    double[] sine = new double[n];
    double[] cosine = new double[n];
    String[] types = new String[n];
    int[] site = new int[n];
    Map<String, Integer> sites = new HashMap<>();
    for (int i = 0; i < n; i++) {
      FoulingVisit visit = visits.get(i);
      fouled[i] = visit.fouled() ? 1 : 0;
      exposure[i] =
          StrictMath.log(visit.exposureDays() / (visit.rounds() * FoulingModel.YEAR_DAYS));
      rounds[i] = StrictMath.log(visit.rounds());
      offset[i] = exposure[i] + rounds[i];
      double turn = FoulingModel.season(visit.day());
      sine[i] = StrictMath.sin(turn);
      cosine[i] = StrictMath.cos(turn);
      types[i] = visit.type() == null ? base : visit.type();
      site[i] = sites.computeIfAbsent(visit.place(), place -> sites.size());
    }
    Design design =
        Design.ofRows(n)
            .constant()
            .column(FoulingModel.EXPOSURE, exposure)
            .column(FoulingModel.ROUNDS, rounds)
            .column(FoulingModel.SINE, sine)
            .column(FoulingModel.COSINE, cosine);
    if (base != null) {
      design = design.factor(FoulingModel.TYPE, types, base);
    }
    return Observations.of(design, fouled).offset(offset).cluster(site);
  }

  private static List<FoulingCoefficientRow> rows(RegressionFit fit) {
    List<FoulingCoefficientRow> rows = new ArrayList<>();
    for (String name : fit.names()) {
      // Offsets of coefficient 1 were taken out of these two.
      double added = name.equals(FoulingModel.EXPOSURE) || name.equals(FoulingModel.ROUNDS) ? 1 : 0;
      Interval limits = limits(fit, name);
      rows.add(
          new FoulingCoefficientRow(
              name, fit.coefficient(name) + added, limits.lower() + added, limits.upper() + added));
    }
    return List.copyOf(rows);
  }

  private static Interval limits(RegressionFit fit, String name) {
    return fit.clustered(name, LEVEL) instanceof Estimate.Identified<PointEstimate> e
        ? e.value().interval()
        : fit.modelBased(name, LEVEL).interval();
  }
}

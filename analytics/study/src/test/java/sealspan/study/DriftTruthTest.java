package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.ReportHabits;
import sealspan.study.practice.TrueReadings;
import sealspan.table.AssemblyRows;
import sealspan.table.FitRows;
import sealspan.table.FrozenForecastRow;
import sealspan.table.LevelRow;

/**
 * The short form of the study of drift in the module of benchmarks: one fleet with gauges of known
 * error, forecasts from all but the last one and a half years. Seeds were fixed beforehand.
 */
class DriftTruthTest {
  private static final double GAUGE_SD = 0.085;
  private static final FitCut CUT = new FitCut("cut", "0:1", Instant.EPOCH, 1);

  private static AcceptanceCriteria criteria() {
    String limit = String.valueOf(Math.sqrt(3) * GAUGE_SD);
    String csv = AcceptanceCriteria.shipped().csv();
    return new AcceptanceCriteria(
        csv.replace("gauge,accuracy,,,,,,0.2,", "gauge,accuracy,,,,,," + limit + ","));
  }

  /** Assemblies of the fleet, each with the events that it had by a day. */
  private static Map<String, List<LoggedEvent>> events(PracticeFleet fleet, LocalDate before) {
    Map<String, List<LoggedEvent>> byAssembly = new HashMap<>();
    for (int position = 0; position < fleet.parameters().positions(); position++) {
      for (LoggedEvent e : fleet.eventsAt(position)) {
        LocalDate day = e.event().when().day();
        if (e.event().subject().kind() == Subject.Kind.ASSEMBLY && day.isBefore(before)) {
          Instant at = day.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
          byAssembly
              .computeIfAbsent(e.event().subject().id(), id -> new ArrayList<>())
              .add(
                  new LoggedEvent(
                      e.id(),
                      e.source(),
                      e.event(),
                      e.reportedAt(),
                      e.reportedOrigin(),
                      at,
                      e.arrival()));
        }
      }
    }
    return byAssembly;
  }

  /** Coverage within [.93, .97] unless a binomial test at p below .001 says otherwise. */
  private static void assertCovers(int covered, int intervals) {
    double share = (double) covered / intervals;
    double tooFew = new BinomialDistribution(intervals, .93).cumulativeProbability(covered);
    double tooMany =
        1 - new BinomialDistribution(intervals, .97).cumulativeProbability(covered - 1);
    assertTrue(tooFew >= .001 && tooMany >= .001, covered + " of " + intervals + ": " + share);
  }

  @Test
  void levelsCoverTheTruthAndForecastsBeatTheBaseRate() {
    PracticeParameters parameters =
        PracticeParameters.usual(20_260_301, 500)
            .ofType(AssemblyType.DC)
            .with(ReportHabits.flawless())
            .with(new TrueReadings(0.25, -0.08, 0.06, GAUGE_SD, 0));
    PracticeFleet fleet = new PracticeFleet(parameters);
    LocalDate end = parameters.recordBegins().plusYears(parameters.years());
    Map<String, List<LoggedEvent>> known = events(fleet, end.minusMonths(18));
    List<AssemblyRows> members = new ArrayList<>();
    known.forEach(
        (id, own) -> members.add(AssemblyTables.of(id, own, criteria(), LatestFits.none(), 0)));
    FitRows type = Fits.of("type=DC", Members.of(members), CUT);
    FitRows all = Fits.of("all", Members.of(members), CUT);
    LatestFits fits = LatestFits.of(List.of(type, all));
    Map<String, Double> truth = new HashMap<>();
    fleet
        .truths()
        .forEach(
            t ->
                t.levels()
                    .forEach(
                        l -> truth.put(l.assemblyId() + l.component().text() + l.day(), l.psi())));
    int levels = 0;
    int covered = 0;
    Map<String, IssuedForecast> issued = new HashMap<>();
    for (Map.Entry<String, List<LoggedEvent>> one : known.entrySet()) {
      AssemblyRows rows = AssemblyTables.of(one.getKey(), one.getValue(), criteria(), fits, 0);
      for (LevelRow level : rows.levels()) {
        double is = truth.get(level.assemblyId() + level.component() + level.day());
        levels++;
        covered += level.levelLowerPsi() <= is && is <= level.levelUpperPsi() ? 1 : 0;
      }
      if (rows.forecast() != null && rows.forecast().probabilityFails() != null) {
        issued.put(one.getKey(), issued(rows));
      }
    }
    assertTrue(levels > 500, "levels " + levels);
    assertCovers(covered, levels);
    ForecastScores score = ForecastScores.of(scored(fleet, end, fits, issued)).get(0);
    assertTrue(score.n() > 300 && score.skill() > 0, score.toString());
    assertTrue(score.monitor() > .001, score.toString());
  }

  private static IssuedForecast issued(AssemblyRows rows) {
    var f = rows.forecast();
    return new IssuedForecast(
        f.assemblyId(),
        "entry",
        Instant.EPOCH,
        "cut",
        "",
        f.basisEventId(),
        f.basisDay(),
        f.probabilityAtOnce(),
        f.probability6Months(),
        f.probabilityFails(),
        f.probability24Months(),
        f.baseProbability(),
        f.probabilityDrift(),
        f.probabilitySudden(),
        f.drivenBy(),
        "DC");
  }

  private static List<ScoredForecast> scored(
      PracticeFleet fleet, LocalDate end, LatestFits fits, Map<String, IssuedForecast> issued) {
    List<ScoredForecast> scored = new ArrayList<>();
    events(fleet, end)
        .forEach(
            (id, own) -> {
              IssuedForecast forecast = issued.get(id);
              List<IssuedForecast> its = forecast == null ? List.of() : List.of(forecast);
              for (FrozenForecastRow f :
                  AssemblyTables.of(id, own, criteria(), fits, its, 0).frozenForecasts()) {
                if (f.probabilityThen() != null) {
                  scored.add(
                      new ScoredForecast(
                          "DC", f.probabilityThen(), f.baseProbabilityThen(), f.failed()));
                }
              }
            });
    return scored;
  }
}

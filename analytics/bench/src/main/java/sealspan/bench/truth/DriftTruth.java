package sealspan.bench.truth;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.study.BatchTables;
import sealspan.study.FitCut;
import sealspan.study.ForecastScores;
import sealspan.study.IssuedForecast;
import sealspan.study.ScoredForecast;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.PracticeTown;
import sealspan.study.practice.ReportHabits;
import sealspan.study.practice.TrueLevel;
import sealspan.study.practice.TrueReadings;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.DriftRow;
import sealspan.table.FitRows;
import sealspan.table.ForecastRow;
import sealspan.table.FrozenForecastRow;
import sealspan.table.LevelRow;

/**
 * Whether levels, drifts and forecasts find the truth of practice fleets, whose gauges have an
 * error and keep a bias between calibrations. Forecasts are made from the events of all years but
 * the last one and a half, and held against the next test.
 *
 * <p>Run {@code java -cp ... sealspan.bench.truth.DriftTruth RUNS}; the seeds are 1 to RUNS.
 */
public final class DriftTruth {
  private static final int POSITIONS = 300;

  private DriftTruth() {}

  /**
   * A setting.
   *
   * @param name its name
   * @param fleet the fleet, but for its seed
   * @param gaugeLimitPsi greatest error of a gauge, as the criteria say
   */
  public record Setting(String name, PracticeParameters fleet, double gaugeLimitPsi) {
    PracticeParameters seeded(long seed) {
      PracticeParameters p = fleet;
      return new PracticeParameters(
          seed,
          p.positions(),
          p.recordBegins(),
          p.years(),
          p.onlyType(),
          p.town(),
          p.wear(),
          p.fouling(),
          p.repairs(),
          p.readings(),
          p.route(),
          p.reports());
    }

    AcceptanceCriteria criteria() {
      String csv = AcceptanceCriteria.shipped().csv();
      return new AcceptanceCriteria(
          csv.replace("gauge,accuracy,,,,,,0.2,", "gauge,accuracy,,,,,," + gaugeLimitPsi + ","));
    }
  }

  /**
   * The settings of the study: the error of the gauge as it is, and as the shipped limit has it.
   */
  public static List<Setting> settings() {
    PracticeParameters many = PracticeParameters.usual(0, POSITIONS).with(town(16));
    PracticeParameters clean = many.with(ReportHabits.flawless());
    double error = Math.sqrt(3 * (0.06 * 0.06 + 0.06 * 0.06));
    TrueReadings steep = new TrueReadings(0.25, -0.08, 0.06, 0.06, 0.06);
    return List.of(
        new Setting("gauge error known", clean, error),
        new Setting("gauge error of the shipped limit", clean, 0.2),
        new Setting("steep drift, double checks", clean.with(steep).ofType(AssemblyType.DC), error),
        new Setting("one gauge for all", clean.with(town(1_200)), error),
        new Setting("reports as people write them", many, 0.2));
  }

  private static PracticeTown town(int positionsPerTester) {
    PracticeTown t = PracticeTown.usual();
    return new PracticeTown(
        t.source(),
        t.latitude(),
        t.longitude(),
        t.timeZone(),
        t.jurisdiction(),
        t.zones(),
        t.zoneSideM(),
        positionsPerTester,
        t.injected());
  }

  /**
   * What came of one fleet, or of several together.
   *
   * @param levels levels with an interval
   * @param covered those whose interval holds the true level
   * @param drifts mean drifts of a type with an interval
   * @param driftsCovered those whose interval holds the true drift
   * @param scored forecasts, in order of their tests
   */
  public record Result(
      int levels, int covered, int drifts, int driftsCovered, List<ScoredForecast> scored) {
    Result and(Result other) {
      List<ScoredForecast> both = new ArrayList<>(scored);
      both.addAll(other.scored);
      return new Result(
          levels + other.levels,
          covered + other.covered,
          drifts + other.drifts,
          driftsCovered + other.driftsCovered,
          both);
    }
  }

  /** Runs a setting with one seed. */
  public static Result run(Setting setting, long seed) {
    PracticeParameters parameters = setting.seeded(seed);
    PracticeFleet fleet = new PracticeFleet(parameters);
    LocalDate day = parameters.recordBegins().plusYears(parameters.years()).minusMonths(18);
    List<LoggedEvent> all = fleet.events().map(DriftTruth::recorded).toList();
    List<LoggedEvent> known = all.stream().filter(e -> before(e, day)).toList();
    FitCut cut = new FitCut("cut", "0:1", Instant.EPOCH, 1);
    AcceptanceCriteria criteria = setting.criteria();
    Map<String, Double> truth = new HashMap<>();
    fleet.truths().forEach(t -> t.levels().forEach(l -> truth.put(key(l), l.psi())));
    int levels = 0;
    int covered = 0;
    int drifts = 0;
    int driftsCovered = 0;
    List<IssuedForecast> issued = new ArrayList<>();
    for (Bundle bundle : BatchTables.of(known, known, criteria, cut)) {
      if (bundle instanceof FitRows fit) {
        for (DriftRow drift : fit.drifts()) {
          if (drift.driftLowerPerYear() != null) {
            double is = parameters.readings().driftPsiPerYear() * range(drift);
            drifts++;
            driftsCovered +=
                drift.driftLowerPerYear() <= is && is <= drift.driftUpperPerYear() ? 1 : 0;
          }
        }
      } else if (bundle instanceof AssemblyRows rows) {
        for (LevelRow level : rows.levels()) {
          Double is = truth.get(level.assemblyId() + level.component() + level.day());
          if (level.levelPsi() != null && is != null) {
            levels++;
            covered += level.levelLowerPsi() <= is && is <= level.levelUpperPsi() ? 1 : 0;
          }
        }
        if (rows.forecast() != null && rows.forecast().probabilityFails() != null) {
          issued.add(issued(rows.forecast(), rows.assembly().type()));
        }
      }
    }
    return new Result(levels, covered, drifts, driftsCovered, scored(all, criteria, issued));
  }

  /** As recorded at the end of its day: a forecast is held against what was recorded later. */
  private static LoggedEvent recorded(LoggedEvent e) {
    Instant at = e.event().when().day().plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
    return new LoggedEvent(
        e.id(), e.source(), e.event(), e.reportedAt(), e.reportedOrigin(), at, e.arrival());
  }

  private static boolean before(LoggedEvent event, LocalDate day) {
    return event.event().when().day().isBefore(day);
  }

  private static String key(TrueLevel level) {
    return level.assemblyId() + level.component().text() + level.day();
  }

  /** Drift and spread of a measure, relative to a check in the direction of flow. */
  private static double range(DriftRow drift) {
    return switch (drift.measure()) {
      case "STATIC_DROP" -> 2.2;
      case "OPENING_POINT" -> drift.component().contains("relief") ? 0.6 : 0.8;
      default -> 1;
    };
  }

  private static IssuedForecast issued(ForecastRow f, String type) {
    return new IssuedForecast(
        f.assemblyId(),
        "entry",
        Instant.EPOCH,
        f.fitCutId(),
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
        type);
  }

  private static List<ScoredForecast> scored(
      List<LoggedEvent> all, AcceptanceCriteria criteria, List<IssuedForecast> issued) {
    List<ScoredForecast> scored = new ArrayList<>();
    for (Bundle bundle : BatchTables.of(all, List.of(), criteria, null, issued)) {
      if (bundle instanceof AssemblyRows rows) {
        for (FrozenForecastRow f : rows.frozenForecasts()) {
          if (f.probabilityThen() != null) {
            scored.add(
                new ScoredForecast(
                    f.type(), f.probabilityThen(), f.baseProbabilityThen(), f.failed()));
          }
        }
      }
    }
    return scored;
  }

  /**
   * A share with its interval of 95 %, fleets being what is drawn: what a gauge does to all units
   * of a fleet makes them fare alike.
   */
  private static String share(
      List<Result> fleets, ToIntFunction<Result> covered, ToIntFunction<Result> of) {
    double all = fleets.stream().mapToInt(of).sum();
    double share = fleets.stream().mapToInt(covered).sum() / all;
    double squares =
        fleets.stream()
            .mapToDouble(f -> covered.applyAsInt(f) - share * of.applyAsInt(f))
            .map(d -> d * d)
            .sum();
    double n = fleets.size();
    double reach = 1.96 * Math.sqrt(squares * n / (n - 1)) / all;
    return String.format(
        Locale.ROOT, "%.4f (%.3f to %.3f)", share, share - reach, Math.min(1, share + reach));
  }

  /** Prints the table of the study, or one row of it: FLEETS [NUMBER]. */
  public static void main(String[] arguments) {
    int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 100;
    int only = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 0;
    System.out.println(
        "| setting | runs | levels | covered | mean drifts | covered | forecasts | failed |"
            + " expected | Brier | skill (95 %) | reliability | runs with skill above 0 | verdict"
            + " |");
    System.out.println("|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|---|");
    List<Setting> settings = only == 0 ? settings() : settings().subList(only - 1, only);
    for (Setting setting : settings) {
      List<Result> results =
          IntStream.rangeClosed(1, runs).mapToObj(seed -> run(setting, seed)).toList();
      Result sum = results.stream().reduce(Result::and).orElseThrow();
      ForecastScores score = ForecastScores.of(sum.scored()).get(0);
      long gains =
          results.stream()
              .map(r -> ForecastScores.of(r.scored()).get(0))
              .filter(s -> s.skill() != null && s.skill() > 0)
              .count();
      System.out.printf(
          Locale.ROOT,
          "| %s | %d | %d | %s | %d | %s | %d | %d | %.1f | %.5f | %.4f (%.4f to %.4f) | %.5f |"
              + " %d | %s |%n",
          setting.name(),
          runs,
          sum.levels(),
          share(results, Result::covered, Result::levels),
          sum.drifts(),
          share(results, Result::driftsCovered, Result::drifts),
          score.n(),
          score.failed(),
          score.expected(),
          score.brier(),
          score.skill(),
          score.skillLower(),
          score.skillUpper(),
          score.reliability(),
          gains,
          score.verdict());
    }
  }
}

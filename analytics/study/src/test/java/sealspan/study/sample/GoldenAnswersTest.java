package sealspan.study.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.stats.Estimate;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateEstimate;
import sealspan.study.BatchTables;
import sealspan.study.ExactShare;
import sealspan.study.FitCut;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.CurveRow;
import sealspan.table.ExposureRow;
import sealspan.table.FitRows;
import sealspan.table.SealRow;
import sealspan.table.TestRow;

/** The answers that are worked out on paper in {@code sample-events/README.md}. */
class GoldenAnswersTest {
  private static final double DAYS_A_YEAR = 365.25;
  private static final Map<String, Double> GOLDEN = new LinkedHashMap<>();
  private static final Map<String, AssemblyRows> ASSEMBLIES = new TreeMap<>();
  private static final Map<String, FitRows> FITS = new TreeMap<>();

  @BeforeAll
  static void answer() throws IOException {
    for (Map<String, String> row : SampleFiles.table("golden.csv")) {
      String key = row.get("question") + "/" + row.get("subject") + "/" + row.get("quantity");
      assertEquals(null, GOLDEN.put(key, Double.valueOf(row.get("value"))), key);
    }
    AcceptanceCriteria criteria =
        new AcceptanceCriteria(Files.readString(SampleFiles.FOLDER.resolve("criteria.csv")));
    List<LoggedEvent> events = SampleFiles.events();
    FitCut cut = new FitCut("cut", "0:1", Instant.EPOCH, 1);
    for (Bundle bundle : BatchTables.of(events, events, criteria, cut)) {
      if (bundle instanceof AssemblyRows rows) {
        ASSEMBLIES.put(rows.assemblyId(), rows);
      } else if (bundle instanceof FitRows fit) {
        FITS.put(fit.stratum(), fit);
      }
    }
  }

  private static double golden(String question, String subject, String quantity) {
    Double value = GOLDEN.get(question + "/" + subject + "/" + quantity);
    assertNotNull(value, question + "/" + subject + "/" + quantity + " is not in golden.csv");
    return value;
  }

  private static void holds(String question, String subject, String quantity, double computed) {
    assertEquals(
        golden(question, subject, quantity),
        computed,
        5e-7,
        question + ", " + subject + ", " + quantity);
  }

  private static Stream<TestRow> counted() {
    return ASSEMBLIES.values().stream().flatMap(a -> a.tests().stream()).filter(TestRow::counted);
  }

  private static boolean passed(TestRow test) {
    return test.outcome().equals("PASSED") || test.outcome().equals("FAILED_COMPLIANCE");
  }

  @Test
  void passShares() {
    long rounds = counted().count();
    long passed = counted().filter(GoldenAnswersTest::passed).count();
    holds("pass share", "all", "rounds", rounds);
    holds("pass share", "all", "passed", passed);
    holds("pass share", "all", "share", (double) passed / rounds);
    ExactShare share = ExactShare.of(passed, rounds);
    holds("pass share", "all", "lower", share.lower());
    holds("pass share", "all", "upper", share.upper());
    long compliant = counted().filter(TestRow::compliant).count();
    holds("pass share", "all", "rounds without expired gauge", compliant);
    holds(
        "pass share",
        "all",
        "passed without expired gauge",
        counted().filter(t -> t.compliant() && passed(t)).count());
    holds("expired gauge", "all", "rounds", rounds - compliant);
    for (String type : List.of("DC", "DCDA", "DCDA_II", "PVB", "RP", "RPDA", "RPDA_II", "SVB")) {
      holdsForSome("type=" + type, counted().filter(t -> type.equals(t.type())).toList());
    }
    for (int year = 2019; year <= 2024; year++) {
      int in = year;
      holdsForSome("year=" + year, counted().filter(t -> t.day().getYear() == in).toList());
    }
  }

  private static void holdsForSome(String subject, List<TestRow> tests) {
    holds("pass share", subject, "rounds", tests.size());
    holds(
        "pass share", subject, "passed", tests.stream().filter(GoldenAnswersTest::passed).count());
  }

  @Test
  void exposures() {
    int rounds = 0;
    int failed = 0;
    long days = 0;
    for (AssemblyRows rows : ASSEMBLIES.values()) {
      AssemblyRow row = rows.assembly();
      rounds += row.testsWithExposure();
      failed += row.failuresWithExposure();
      days += row.exposureDays();
      if (row.routineTests() > 0) {
        holds("routine tests", row.assemblyId(), "rounds", row.routineTests());
        holds("routine tests", row.assemblyId(), "failed", row.failures());
        holds("exposure", row.assemblyId(), "rounds", row.testsWithExposure());
        holds("exposure", row.assemblyId(), "failed", row.failuresWithExposure());
        holds("exposure", row.assemblyId(), "days", row.exposureDays());
      }
    }
    holds("exposure", "all", "rounds", rounds);
    holds("exposure", "all", "failed", failed);
    holds("exposure", "all", "days", days);
    assertEquals(17, ASSEMBLIES.size());
  }

  @Test
  void failureRates() {
    for (String id : List.of("NH-01", "NH-02", "NH-03", "NH-17")) {
      RateEstimate rate = rate(id);
      holds("failure rate", id, "per year", DAYS_A_YEAR * rate.perDay());
      if (GOLDEN.containsKey("failure rate/" + id + "/lower")) {
        holds("failure rate", id, "lower", DAYS_A_YEAR * rate.interval().lower());
      }
      if (GOLDEN.containsKey("failure rate/" + id + "/upper")) {
        holds("failure rate", id, "upper", DAYS_A_YEAR * rate.interval().upper());
      }
    }
  }

  private static RateEstimate rate(String id) {
    List<ExposureRow> whole =
        ASSEMBLIES.get(id).exposures().stream().filter(e -> e.component().equals("whole")).toList();
    int[] days = whole.stream().mapToInt(ExposureRow::exposureDays).toArray();
    boolean[] failed = new boolean[days.length];
    for (int i = 0; i < failed.length; i++) {
      failed[i] = whole.get(i).failed();
    }
    Estimate<RateEstimate> estimate =
        HiddenFailureRate.exact(HiddenFailures.of(days, failed), 0.95);
    assertTrue(estimate instanceof Estimate.Identified<RateEstimate>, id);
    return ((Estimate.Identified<RateEstimate>) estimate).value();
  }

  @Test
  void failureClassesAndMarginalReadings() {
    for (String name : List.of("FOULING", "DAMAGE", "UNCLASSIFIED")) {
      holds(
          "failure class",
          "all",
          name,
          counted().filter(t -> name.equals(t.failureClass())).count());
    }
    List<TestRow> marginal = counted().filter(TestRow::marginal).toList();
    holds("marginal as-found rounds", "all", "rounds", marginal.size());
    assertEquals("NH-04", marginal.get(0).assemblyId());
  }

  @Test
  void seals() {
    List<SealRow> seals = ASSEMBLIES.values().stream().flatMap(a -> a.seals().stream()).toList();
    holds("seals", "all", "seals", seals.size());
    holds(
        "seals",
        "all",
        "replaced",
        seals.stream().filter(s -> s.endedBy().equals("REPLACED")).count());
    holds(
        "seals",
        "all",
        "first of unknown origin",
        seals.stream().filter(s -> s.gap() == 1 && !s.originKnown()).count());
    for (Map.Entry<String, Double> entry : GOLDEN.entrySet()) {
      String[] key = entry.getKey().split("/");
      if (key[0].equals("seals replaced")) {
        int days = Integer.parseInt(key[2].replaceAll("\\D", ""));
        assertEquals(entry.getValue(), inPlace(key[1], days), 5e-7, entry.getKey());
      }
    }
  }

  private static double inPlace(String stratum, int days) {
    double height = 1;
    List<CurveRow> curve =
        FITS.get(stratum).curves().stream()
            .filter(c -> c.question().equals("REPLACED_ANY_REASON"))
            .filter(c -> c.estimator().equals("WANG_CHANG"))
            .toList();
    assertTrue(!curve.isEmpty(), "no curve for " + stratum);
    for (CurveRow row : curve) {
      if (row.days() <= days) {
        height = row.height();
      }
    }
    return height;
  }
}

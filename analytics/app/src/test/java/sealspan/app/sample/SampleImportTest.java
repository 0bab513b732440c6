package sealspan.app.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.event.WaterSampled;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.MappingFile;
import sealspan.study.BatchTables;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.TestRow;

/** The sample files as the import reads them give the answers that are worked out on paper. */
class SampleImportTest {
  private static final Path FOLDER = Path.of(System.getProperty("sealspan.home"), "sample-events");
  private static final List<String> FILES =
      List.of(
          "events.jsonl",
          "visits.csv",
          "disturbances.csv",
          "water-samples.csv",
          "awkward/rejected.csv");

  private final Map<String, Double> golden = new HashMap<>();
  private final Map<String, ReadFile> files = new TreeMap<>();

  SampleImportTest() throws Exception {
    for (String line : Files.readAllLines(FOLDER.resolve("golden.csv"))) {
      String[] cells = line.split(",");
      if (!cells[0].equals("question")) {
        golden.put(cells[0] + "/" + cells[1] + "/" + cells[2], Double.valueOf(cells[3]));
      }
    }
    for (String name : FILES) {
      files.put(name, ReadFile.of(FOLDER.resolve(name), name, Mapping.NONE));
    }
  }

  private void holds(String question, String subject, String quantity, double computed) {
    String key = question + "/" + subject + "/" + quantity;
    assertEquals(golden.get(key), computed, 5e-7, key);
  }

  @Test
  void rowsGoWhereTheReadmeSays() {
    ReadFile visits = files.get("visits.csv");
    holds("intake", "visits.csv", "rows", visits.rows());
    assertEquals(List.of(), visits.problems());
    Map<String, LoggedEvent> byId = new HashMap<>();
    int duplicates = 0;
    int conflicts = 0;
    for (LoggedEvent event : visits.events()) {
      LoggedEvent known = byId.putIfAbsent(event.id(), event);
      if (known != null) {
        duplicates += known.event().equals(event.event()) ? 1 : 0;
        conflicts += known.event().equals(event.event()) ? 0 : 1;
      }
    }
    holds("intake", "visits.csv", "events", byId.size());
    holds("intake", "visits.csv", "duplicates", duplicates);
    holds("intake", "visits.csv", "conflicts", conflicts);
    for (String name : List.of("events.jsonl", "disturbances.csv", "water-samples.csv")) {
      assertEquals(List.of(), files.get(name).problems(), name);
      holds("intake", name, "events", files.get(name).events().size());
    }
    ReadFile awkward = files.get("awkward/rejected.csv");
    holds("intake", "awkward/rejected.csv", "events", awkward.events().size());
    holds("intake", "awkward/rejected.csv", "rejected", awkward.problems().size());
    assertEquals(
        List.of(
            "date",
            "assembly_id",
            "found_check1_psid",
            "purpose",
            "found_check1_psid",
            "date",
            "found_verdict"),
        awkward.problems().stream().map(p -> p.field()).toList());
  }

  @Test
  void aNonDetectIsNoNumber() {
    ReadFile samples = files.get("water-samples.csv");
    holds("intake", "water-samples.csv", "left out", samples.leftOut());
    Map<WaterSampled.Detection, Integer> found = new HashMap<>();
    for (LoggedEvent event : samples.events()) {
      WaterSampled sample = (WaterSampled) event.event();
      found.merge(sample.detection(), 1, Integer::sum);
      assertEquals(
          sample.detection() == WaterSampled.Detection.MEASURED, sample.value() != null, "value");
    }
    holds("intake", "water-samples.csv", "numbers", found.get(WaterSampled.Detection.MEASURED));
    holds(
        "intake",
        "water-samples.csv",
        "not detected",
        found.get(WaterSampled.Detection.NOT_DETECTED));
    holds(
        "intake",
        "water-samples.csv",
        "below quantification",
        found.get(WaterSampled.Detection.BELOW_QUANTIFICATION));
  }

  @Test
  void theAnswersAreThoseOnPaper() throws Exception {
    List<LoggedEvent> events = new ArrayList<>();
    for (String name : FILES) {
      files.get(name).events().forEach(e -> events.add(e.recorded(at(events.size()))));
    }
    int rounds = 0;
    int failed = 0;
    long days = 0;
    int seals = 0;
    int replaced = 0;
    for (AssemblyRows rows : assemblies(events)) {
      AssemblyRow row = rows.assembly();
      rounds += row.routineTests();
      failed += row.failures();
      days += row.exposureDays();
      seals += rows.seals().size();
      replaced += row.sealReplacements();
      if (row.routineTests() > 0) {
        holds("routine tests", row.assemblyId(), "rounds", row.routineTests());
        holds("routine tests", row.assemblyId(), "failed", row.failures());
        holds("exposure", row.assemblyId(), "days", row.exposureDays());
      }
    }
    holds("pass share", "all", "rounds", rounds);
    holds("pass share", "all", "passed", rounds - failed);
    holds("exposure", "all", "days", days);
    holds("seals", "all", "seals", seals);
    holds("seals", "all", "replaced", replaced);
  }

  @Test
  void aForeignSpreadsheetIsReadWithItsMapping() throws Exception {
    Path folder = FOLDER.resolve("awkward");
    Mapping mapping = MappingFile.read(folder.resolve("fathom-ridge.mapping.json"));
    ReadFile file = ReadFile.of(folder.resolve("fathom-ridge.csv"), mapping.source(), mapping);
    assertEquals(List.of(), file.problems());
    assertEquals(4, file.rows());
    List<LoggedEvent> events = new ArrayList<>();
    file.events().forEach(e -> events.add(e.recorded(at(events.size()))));
    Map<String, String> outcomes = new TreeMap<>();
    for (AssemblyRows rows : assemblies(events)) {
      for (TestRow test : rows.tests()) {
        outcomes.put(test.reportNumber() + " " + test.phase(), test.outcome());
      }
    }
    assertEquals(
        Map.of(
            "FR-23-1 AS_FOUND", "PASSED",
            "FR-24-1 AS_FOUND", "FAILED",
            "FR-24-1 AS_LEFT", "PASSED",
            "FR-23-2 AS_FOUND", "PASSED",
            "FR-24-2 AS_FOUND", "FAILED",
            "FR-24-2 AS_LEFT", "PASSED"),
        outcomes);
  }

  private static Instant at(int second) {
    return Instant.ofEpochSecond(1_750_000_000L + second);
  }

  private static List<AssemblyRows> assemblies(List<LoggedEvent> events) throws Exception {
    AcceptanceCriteria criteria =
        new AcceptanceCriteria(Files.readString(FOLDER.resolve("criteria.csv")));
    List<AssemblyRows> assemblies = new ArrayList<>();
    for (Bundle bundle : BatchTables.of(events, List.of(), criteria, null)) {
      if (bundle instanceof AssemblyRows rows) {
        assemblies.add(rows);
      }
    }
    return assemblies;
  }
}

package sealspan.app.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.Questions;
import sealspan.app.Problem;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.Engine;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.EngineState;
import sealspan.ingest.log.BrokerState;

/**
 * The whole way, as commands: files into a real broker, through Flink, into DuckDB, and out as
 * answers. One record lives through all tests, in their order.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@Timeout(value = 6, unit = TimeUnit.MINUTES)
class EndToEndTest {
  private static final Path SAMPLES = Path.of(System.getProperty("sealspan.home"), "sample-events");
  private static final Duration PATIENCE = Duration.ofMinutes(1);

  @TempDir static Path data;

  @BeforeAll
  static void importTheSamples() throws IOException {
    Files.copy(SAMPLES.resolve("criteria.csv"), data.resolve("criteria.csv"));
    Typed typed = imported();
    assertEquals(ExitCode.IN_PART, typed.code(), typed.toString());
    assertTrue(typed.out().contains("The answers are up to date."), typed.toString());
  }

  @AfterAll
  static void stop() {
    Typed.at(data, "stop");
  }

  private static Typed imported() {
    return Typed.at(
        data,
        "import",
        SAMPLES.resolve("events.jsonl").toString(),
        SAMPLES.resolve("visits.csv").toString(),
        SAMPLES.resolve("disturbances.csv").toString(),
        SAMPLES.resolve("water-samples.csv").toString(),
        SAMPLES.resolve("awkward/rejected.csv").toString());
  }

  @Test
  @Order(1)
  void theAnswersAreThoseWorkedOutOnPaper() {
    // sample-events/README.md, "First-test pass share": 53 of 65, .6997 to .9008.
    Typed share = Typed.at(data, "ask", "pass-share");
    assertEquals(ExitCode.DONE, share.code(), share.toString());
    assertTrue(
        share
            .out()
            .lines()
            .anyMatch(l -> l.matches("all +all +all +all +65 +53 +0\\.815 +0\\.7 +0\\.901")),
        share.out());
    Typed rejected = Typed.at(data, "ask", "rejected");
    assertTrue(rejected.out().contains("'rutine' is not known here"), rejected.out());
    assertTrue(rejected.out().contains("1 in conflict with a report of the same number"));
  }

  @Test
  @Order(1)
  void answersComeInFormsForPrograms() throws IOException {
    Typed csv = Typed.at(data, "ask", "worst-sites", "--format", "csv");
    assertTrue(csv.out().startsWith("site_id,label,"), csv.toString());
    Typed json = Typed.at(data, "ask", "worst-sites", "--limit", "1", "--format", "json");
    assertTrue(json.out().contains("\"site_id\" : \"S02\""), json.toString());
    Path parquet = data.resolve("sites.parquet");
    assertEquals(
        ExitCode.FAILED, Typed.at(data, "ask", "worst-sites", "--format", "parquet").code());
    Typed written =
        Typed.at(data, "ask", "worst-sites", "--format", "parquet", "--out", parquet.toString());
    assertEquals(ExitCode.DONE, written.code(), written.toString());
    // Apache Parquet file format: a file begins and ends with PAR1.
    assertTrue(new String(Files.readAllBytes(parquet), ISO_8859_1).endsWith("PAR1"));
  }

  @Test
  @Order(1)
  void freeSqlAnswersASelectAndRefusesTheRest() {
    Typed counted = Typed.at(data, "ask", "--sql", "select count(*) as n from assembly");
    assertTrue(counted.out().lines().anyMatch(l -> l.equals("17")), counted.toString());
    Typed refused = Typed.at(data, "ask", "--sql", "copy assembly to '" + data + "/x.csv'");
    assertEquals(ExitCode.FAILED, refused.code());
    assertTrue(refused.err().startsWith("The query is refused"), refused.toString());
    assertFalse(Files.exists(data.resolve("x.csv")));
  }

  @Test
  @Order(1)
  void asOfTheDayBeforeNothingWasKnown() {
    String yesterday = LocalDate.now().minusDays(1).toString();
    Typed then = Typed.at(data, "ask", "worst-sites", "--as-of", yesterday);
    assertTrue(then.out().contains("no events yet"), then.toString());
    String tomorrow = LocalDate.now().plusDays(1).toString();
    assertEquals(
        Typed.at(data, "ask", "pass-share", "--format", "csv").out(),
        Typed.at(data, "ask", "pass-share", "--format", "csv", "--as-of", tomorrow).out());
  }

  @Test
  @Order(1)
  void theNotebookRunsFromTopToBottom(@TempDir Path scratch) throws Exception {
    assumeTrue(Notebook.canRun(), "there is no python3 on the PATH");
    Path file = SAMPLES.resolveSibling("notebooks").resolve("first-look.ipynb");
    Typed run = new Notebook(file).run(data, scratch);
    assertEquals(0, run.code(), run.toString());
    // sample-events/README.md, "First-test pass share": 53 of 65.
    assertTrue(run.out().lines().anyMatch(l -> l.matches("all .* 65 +53 .*")), run.toString());
    assertTrue(run.out().contains("Nullhaven Library"), run.toString());
  }

  @Test
  @Order(2)
  void importingTwiceChangesNothing() {
    Typed log = Typed.at(data, "ask", "history", "--assembly", "NH-02");
    Typed again = imported();
    assertEquals(
        5,
        again.out().lines().filter(l -> l.matches("  new in the log +0")).count(),
        again.toString());
    assertEquals(log.out(), Typed.at(data, "ask", "history", "--assembly", "NH-02").out());
  }

  @Test
  @Order(2)
  void aRowThatIsPutRightLeavesTheListOfRejectedRows() throws IOException {
    Path mended = Files.createDirectories(data.resolve("mended")).resolve("rejected.csv");
    String rows = Files.readString(SAMPLES.resolve("awkward/rejected.csv"));
    Files.writeString(mended, rows.replace("2024-02-30", "2024-02-29"));
    Typed before = Typed.at(data, "ask", "rejected");
    assertTrue(before.out().contains("'2024-02-30' is not a day"), before.toString());

    Typed again = Typed.at(data, "import", mended.toString());
    assertEquals(ExitCode.IN_PART, again.code(), again.toString());
    await(() -> !Typed.at(data, "ask", "rejected").out().contains("'2024-02-30'"));
    Typed after = Typed.at(data, "ask", "rejected");
    assertTrue(after.out().contains("left out: 1 that was put"), after.toString());
    assertTrue(after.out().contains("'rutine' is not known here"), after.toString());
  }

  /** What was said of NH-17 before its visit of 2025, as CSV. */
  private static String said;

  private static String saidOfFirstForecast() {
    Typed typed =
        Typed.at(
            data,
            "ask",
            "--format",
            "csv",
            "--sql",
            "select ledger_id, issued_at, fit_cut_id, basis_event_id, probability_at_once,"
                + " probability6_months, probability12_months, probability24_months, driven_by"
                + " from frozen_forecast where assembly_id = 'NH-17' order by issued_at limit 1");
    assertEquals(ExitCode.DONE, typed.code(), typed.toString());
    return typed.out();
  }

  @Test
  @Order(2)
  void aForecastIsIssuedOnceBeforeTheNextTest() {
    await(() -> saidOfFirstForecast().lines().count() == 2);
    said = saidOfFirstForecast();
    assertEquals(ExitCode.DONE, Typed.at(data, "fit").code());
    assertEquals(said, saidOfFirstForecast());
  }

  /** I8 on the running engine: the outcome is added, and what was said stays as it was said. */
  @Test
  @Order(4)
  void theOutcomeIsHeldAgainstTheForecastAsItWasIssued() {
    await(
        () ->
            Typed.at(data, "ask", "forecasts-scored")
                .out()
                .contains("1 forecasts with an outcome, 1 failed"));
    assertEquals(said, saidOfFirstForecast());
  }

  @Test
  @Order(9)
  void nothingHasChangedTheForecastSinceItWasIssued() {
    assertEquals(said, saidOfFirstForecast());
    assertTrue(
        Typed.at(data, "ask", "forecasts-scored")
            .out()
            .contains("1 forecasts with an outcome, 1 failed"));
  }

  @Test
  @Order(3)
  void aTypedVisitIsJudgedAndShowsUp() throws IOException {
    Path visit =
        Files.writeString(
            data.resolve("visit.json"),
            """
            {
              "assembly_id": "NH-17", "date": "2025-02-10", "report_number": "R2025-001",
              "tester_id": "T1", "gauge_id": "G1", "gauge_calibrated_on": "2025-01-10",
              "found_check1_psid": 0.4, "found_check2_psid": 1.7, "found_verdict": "failed",
              "repair_check1_action": "cleaned", "repair_check1_mechanism": "debris",
              "left_check1_psid": 1.8, "left_check2_psid": 1.7, "left_verdict": "passed"
            }
            """);
    Typed tried = Typed.at(data, "record", "--file", visit.toString(), "--dry-run");
    assertTrue(tried.out().contains("as found, 2025-02-10: FAILED"), tried.toString());
    assertTrue(tried.out().contains("as left, 2025-02-10: PASSED"), tried.toString());
    assertTrue(tried.out().contains("Not recorded: tester's certificate"), tried.toString());
    assertFalse(history("NH-17").contains("R2025-001"));

    Typed recorded = Typed.at(data, "record", "--file", visit.toString(), "--yes");
    assertEquals(3, recorded.out().lines().filter(l -> l.startsWith("Appended: ")).count());
    await(() -> history("NH-17").contains("R2025-001"));
  }

  @Test
  @Order(4)
  void aCorrectionAndAVoidTakeEffect() throws IOException {
    Path right =
        Files.writeString(
            data.resolve("right.json"),
            """
            {"event": "service", "assembly_id": "NH-17", "date": "2025-03-01",
             "service_state": "off"}
            """);
    assertEquals(ExitCode.FAILED, Typed.at(data, "void", "no-such-id", "--why", "x").code());
    Typed first = Typed.at(data, "record", "--file", right.toString(), "--yes");
    String id =
        first.out().lines().filter(l -> l.startsWith("Appended: ")).findFirst().orElseThrow();
    String eventId = id.substring(id.lastIndexOf(' ') + 1);
    await(() -> history("NH-17").contains("2025-03-01"));

    Files.writeString(right, Files.readString(right).replace("2025-03-01", "2025-03-05"));
    Typed corrected =
        Typed.at(
            data, "correct", eventId, "--with", right.toString(), "--why", "wrong day", "--yes");
    assertEquals(ExitCode.DONE, corrected.code(), corrected.toString());
    await(() -> history("NH-17").contains("2025-03-05"));
    assertFalse(history("NH-17").contains("2025-03-01"));

    Typed voided = Typed.at(data, "void", eventId, "--why", "other assembly", "--yes");
    assertEquals(ExitCode.DONE, voided.code(), voided.toString());
    await(() -> !history("NH-17").contains("2025-03-05"));
  }

  @Test
  @Order(5)
  void aRebuildGivesTheSameAnswersByteForByte() {
    assertEquals(ExitCode.DONE, Typed.at(data, "fit").code());
    Map<String, String> before = settledAnswers();
    int generation = engine().generation();

    Typed rebuilt = Typed.at(data, "rebuild");

    assertEquals(ExitCode.DONE, rebuilt.code(), rebuilt.toString());
    assertEquals(generation + 1, engine().generation());
    awaitAnswers(before);
  }

  @Test
  @Order(6)
  void aSecondEngineOnTheFolderSaysSoAndStops() {
    Typed second = Typed.at(data, "start");
    assertEquals(ExitCode.FAILED, second.code());
    assertTrue(second.err().contains("An engine already runs on " + data), second.err());
    Problem refused = assertThrows(Problem.class, () -> Engine.run(new DataFolder(data)));
    assertTrue(refused.getMessage().contains("(process " + engine().pid() + ")"));
  }

  @Test
  @Order(7)
  void aKilledEngineGoesOnWhereItWas() {
    Map<String, String> before = settledAnswers();
    ProcessHandle killed = engine().process(new DataFolder(data)).orElseThrow();
    ProcessHandle orphan = broker();
    killed.destroyForcibly();
    killed.onExit().join();

    Typed started = Typed.at(data, "start");

    assertEquals(ExitCode.DONE, started.code(), started.toString());
    assertFalse(orphan.isAlive());
    assertNotEquals(killed.pid(), engine().pid());
    awaitAnswers(before);
  }

  @Test
  @Order(8)
  void otherCriteriaJudgeEveryReportAnew() throws IOException {
    String strict =
        Files.readString(SAMPLES.resolve("criteria.csv"))
            .replace(",at_least,1.0,", ",at_least,1.6,");
    Path file = Files.writeString(data.resolve("strict.csv"), strict);
    String before = Typed.at(data, "ask", "pass-share").out();

    Typed broken = Typed.at(data, "criteria", "use", SAMPLES.resolve("visits.csv").toString());
    assertEquals(ExitCode.FAILED, broken.code(), broken.toString());
    Typed used = Typed.at(data, "criteria", "use", file.toString());

    assertEquals(ExitCode.DONE, used.code(), used.toString());
    assertNotEquals(before, Typed.at(data, "ask", "pass-share").out());
    assertEquals(
        ExitCode.DONE,
        Typed.at(data, "criteria", "use", SAMPLES.resolve("criteria.csv").toString()).code());
    await(() -> before.equals(Typed.at(data, "ask", "pass-share").out()));
  }

  @Test
  @Order(9)
  void anotherBuildMakesItsOwnResultsAtTheNextStart() throws IOException {
    Map<String, String> before = settledAnswers();
    int generation = engine().generation();
    String share = Typed.at(data, "ask", "pass-share").out();
    assertEquals(ExitCode.DONE, Typed.at(data, "stop").code());
    Path file = data.resolve("engine").resolve("generation");
    String written = Files.readString(file);
    Files.writeString(file, written.replaceFirst("codeStamp=.*", "codeStamp=another"));
    assertNotEquals(written, Files.readString(file));

    assertEquals(ExitCode.DONE, Typed.at(data, "start").code());

    await(
        () -> {
          assertEquals(share, Typed.at(data, "ask", "pass-share").out(), "answers all the while");
          return engine().generation() == generation + 1;
        });
    awaitAnswers(before);
    await(() -> !Files.exists(data.resolve("checkpoints").resolve("generation-" + generation)));
  }

  @Test
  @Order(10)
  void stopLeavesNoProcessAndAnswersStay() {
    String before = history("NH-02");
    ProcessHandle engine = engine().process(new DataFolder(data)).orElseThrow();
    ProcessHandle broker = broker();
    assertEquals(ExitCode.DONE, Typed.at(data, "status").code());

    Typed stopped = Typed.at(data, "stop");

    assertTrue(stopped.out().contains("Stopped the engine of " + data), stopped.toString());
    assertFalse(engine.isAlive());
    assertFalse(broker.isAlive());
    assertEquals(ExitCode.IN_PART, Typed.at(data, "status").code());
    assertEquals(before, history("NH-02"));
  }

  private static EngineState engine() {
    return new EngineDoor(new DataFolder(data)).running().orElseThrow();
  }

  private static ProcessHandle broker() {
    return BrokerState.read(data).flatMap(s -> s.process(data)).orElseThrow();
  }

  private static String history(String assembly) {
    return Typed.at(data, "ask", "history", "--assembly", assembly).out();
  }

  /** The answers once two looks in a row find them alike. */
  private static Map<String, String> settledAnswers() {
    Map<String, String> last = allAnswers();
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (System.nanoTime() < deadline) {
      pause(Duration.ofSeconds(3));
      Map<String, String> next = allAnswers();
      if (next.equals(last)) {
        return next;
      }
      last = next;
    }
    throw new AssertionError("The answers do not settle: " + last);
  }

  private static Map<String, String> allAnswers() {
    Map<String, String> answers = new TreeMap<>();
    Questions.all()
        .forEach(
            question -> {
              String[] words =
                  switch (question.name()) {
                    case "history", "assembly", "clean-or-replace" ->
                        new String[] {"ask", question.name(), "--assembly", "NH-17"};
                    case "what-to-bring" -> new String[] {"ask", question.name(), "--site", "S03"};
                    case "annual-summary" ->
                        new String[] {"ask", question.name(), "--year", "2022"};
                    case "cluster" -> new String[] {"ask", question.name(), "--number", "1"};
                    case "water" -> new String[] {"ask", question.name(), "--zone", "Z-NORTH"};
                    default -> new String[] {"ask", question.name()};
                  };
              Typed typed = Typed.at(data, words);
              assertEquals(ExitCode.DONE, typed.code(), typed.toString());
              // The question log names the generation, which a rebuild counts up on purpose.
              String text = typed.out().replaceAll("(?m)^Generation g\\d+,", "Generation,");
              answers.put(question.name(), text);
            });
    return answers;
  }

  private static void awaitAnswers(Map<String, String> expected) {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    Map<String, String> now = allAnswers();
    while (!now.equals(expected) && System.nanoTime() < deadline) {
      pause(Duration.ofMillis(500));
      now = allAnswers();
    }
    for (String question : expected.keySet()) {
      assertEquals(expected.get(question), now.get(question), question);
    }
  }

  private static void await(Supplier<Boolean> condition) {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!condition.get()) {
      assertTrue(System.nanoTime() < deadline, "It did not come about in " + PATIENCE);
      pause(Duration.ofMillis(200));
    }
  }

  private static void pause(Duration d) {
    try {
      TimeUnit.MILLISECONDS.sleep(d.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}

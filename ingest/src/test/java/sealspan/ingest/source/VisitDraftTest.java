package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.ingest.validate.EventDraft;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Validation;
import sealspan.ingest.validate.Validator;
import sealspan.ingest.validate.VisitGaps;

/** One visit recorded by hand. */
class VisitDraftTest {
  private static final Intake INTAKE =
      new Intake("record", LocalDate.of(2025, 4, 17), null, LoggedEvent.Arrival.LIVE);

  private static List<LoggedEvent> events(EventDraft draft) {
    Validation validation = new Validator(INTAKE).validate(draft);
    if (validation instanceof Validation.Accepted accepted) {
      return accepted.events();
    }
    throw new AssertionError(validation);
  }

  private static List<LoggedEvent> ofJson(String json) {
    Item item = VisitDraft.ofJson("visit.json", json);
    if (item instanceof Item.Draft draft) {
      return events(draft.draft());
    }
    throw new AssertionError(item);
  }

  private static Map<String, String> interview(
      VisitQuestions questions, Map<String, String> prepared) {
    Map<String, String> answers = new LinkedHashMap<>();
    for (VisitQuestions.Question question = questions.next(answers);
        question != null;
        question = questions.next(answers)) {
      answers.put(question.column(), prepared.getOrDefault(question.column(), ""));
    }
    return answers;
  }

  @Test
  void aVisitInJsonYieldsItsEvents() {
    List<LoggedEvent> events =
        ofJson(
            """
            {"assembly_id": "BF-1", "date": "2025-04-17",
             "found": {"check1_psid": 0.8, "check2_psid": 1.4, "verdict": "failed"},
             "repair": {"check1": {"action": "cleaned", "mechanism": "debris"}},
             "left": {"check1_psid": 1.9, "check2_psid": 1.4, "verdict": "passed"}}
            """);
    assertEquals(3, events.size());
    assertTrue(events.stream().allMatch(event -> event.arrival() == LoggedEvent.Arrival.LIVE));
  }

  @Test
  void answersYieldTheSameEventsAsJson() throws SourceException {
    Map<String, String> answers =
        interview(
            new VisitQuestions(AssemblyType.DC, 1),
            Map.of(
                "assembly_id",
                "BF-1",
                "date",
                "2025-04-17",
                "found_check1_flow_psid",
                "0.8",
                "found_verdict",
                "failed",
                VisitQuestions.WAS_REPAIRED,
                "yes",
                "repair_check1_action",
                "cleaned",
                "left_check1_flow_psid",
                "1.9"));
    assertEquals(
        ofJson(
            """
            {"assembly_id": "BF-1", "date": "2025-04-17",
             "found": {"check1_flow_psid": 0.8, "verdict": "failed"},
             "repair": {"check1_action": "cleaned"},
             "left": {"check1_flow_psid": 1.9}}
            """),
        events(VisitDraft.ofAnswers(answers)));
  }

  @Test
  void withoutARepairNoRetestIsAskedFor() {
    Map<String, String> answers =
        interview(
            new VisitQuestions(AssemblyType.RP, 1), Map.of(VisitQuestions.WAS_REPAIRED, "no"));
    assertTrue(answers.keySet().stream().noneMatch(column -> column.startsWith("left_")));
    assertTrue(answers.containsKey("found_relief_psid"));
    assertTrue(answers.containsKey("found_check1_static_psid"));
  }

  @Test
  void theSingleCheckOfABypassIsReadInTheDirectionOfFlow() throws SourceException {
    Map<String, String> answers =
        interview(
            new VisitQuestions(AssemblyType.RPDA_II, 1),
            Map.of(
                "assembly_id",
                "BF-1",
                "date",
                "2025-04-17",
                "found_check1_static_psid",
                "8.0",
                "bypass_found_check1_flow_psid",
                "1.2"));
    TestPerformed test = (TestPerformed) events(VisitDraft.ofAnswers(answers)).get(0).event();
    assertEquals(
        List.of(Measure.STATIC_DROP, Measure.DIRECTION_OF_FLOW),
        test.readings().stream().map(reading -> reading.measure()).toList());
  }

  @Test
  void whatIsMissingIsSaidInWords() {
    List<LoggedEvent> events =
        ofJson(
            """
            {"assembly_id": "BF-1", "date": "2025-04-17", "tester_id": "T-1",
             "found": {"check1_psid": 8.0, "relief_psid": 27, "shutoff2": "leaked"},
             "repair": {"check1": {"action": "disc_replaced"}}}
            """);
    List<String> gaps = VisitGaps.of(events, AssemblyType.RP, 1);
    assertTrue(gaps.contains("As found: the gauge is missing (gauge_id)."), gaps.toString());
    assertTrue(
        gaps.contains("As found: check2 has no reading; it counts as unknown, never as passed."),
        gaps.toString());
    assertTrue(
        gaps.contains(
            "The repair has no as-left test after it; the assembly counts as not passed."));
    assertTrue(gaps.stream().anyMatch(gap -> gap.contains("relief valve reads 27 psi")));
    assertTrue(gaps.stream().anyMatch(gap -> gap.contains("no compensating step")));
    assertTrue(gaps.stream().anyMatch(gap -> gap.contains("why the seal of check1 was replaced")));
    assertTrue(gaps.stream().noneMatch(gap -> gap.contains("the tester is missing")));
  }

  @Test
  void aReadingOfAPartThatTheTypeLacksIsSaid() {
    List<LoggedEvent> events =
        ofJson(
            "{\"assembly_id\": \"BF-1\", \"date\": \"2025-04-17\", \"found_air_inlet_psid\": 1.2}");
    assertTrue(
        VisitGaps.of(events, AssemblyType.DC, 1)
            .contains("As found: there is a reading of air inlet, which a dc does not have."));
  }

  @Test
  void aBrokenTextSaysWhere() {
    Item item = VisitDraft.ofJson("visit.json", "{\"assembly_id\": ");
    assertTrue(
        item instanceof Item.Broken broken
            && broken.problem().wrong().startsWith("This is not a JSON object"),
        item.toString());
  }

  @Test
  void repairsAreAskedPartByPart() throws SourceException {
    Map<String, String> answers =
        interview(
            new VisitQuestions(AssemblyType.DCDA, 2),
            Map.of(
                "assembly_id",
                "BF-1",
                "date",
                "2025-04-17",
                VisitQuestions.WAS_REPAIRED,
                "y",
                "main2_repair_check2_action",
                "cleaned",
                "main2_repair_check2_mechanism",
                "debris",
                "bypass_repair_check1_action",
                "flushed"));
    RepairPerformed repair = (RepairPerformed) events(VisitDraft.ofAnswers(answers)).get(0).event();
    assertEquals(
        List.of("main2.check2", "bypass.check1"),
        repair.items().stream().map(item -> item.at().text()).toList());
  }
}

package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.event.LoggedEvent;
import sealspan.ingest.validate.EventDraft;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Validation;
import sealspan.ingest.validate.Validator;

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
  void aBrokenTextSaysWhere() {
    Item item = VisitDraft.ofJson("visit.json", "{\"assembly_id\": ");
    assertTrue(
        item instanceof Item.Broken broken
            && broken.problem().wrong().startsWith("This is not a JSON object"),
        item.toString());
  }
}

package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sealspan.event.EventCorrected;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

class EntryFormTest {
  private static final Instant NOW = Instant.parse("2024-06-01T12:00:00Z");

  /** What is read back tells an entry apart exactly as what was written did. */
  private static <T> EntryForm.Mark assertMarkHolds(EntryForm<T> form, T entry) {
    T named = form.named(entry);
    byte[] content = form.content(named);
    T stored = form.stored(named, NOW);
    byte[] value = form.value(named, content, NOW);
    Map<String, String> headers = new HashMap<>();
    form.headers(named, content, headers::put);
    form.headersOf(NOW, headers::put);
    EntryForm.Mark mark = form.mark(value, headers::get);
    assertEquals(new EntryForm.Mark(form.id(stored), form.digest(named, content)), mark);
    assertEquals(stored, form.read(value, headers::get));
    return mark;
  }

  @Test
  void marksOfEventsHoldAndFollowTheContentOnly() {
    EventForm form = new EventForm();
    LoggedEvent event = SampleEvents.round(1, "passed");
    LoggedEvent other = new LoggedEvent("x", "y", event.event(), null, null, null, null);
    EntryForm.Mark mark = assertMarkHolds(form, event);
    assertEquals(mark.digest(), assertMarkHolds(form, other).digest());
    assertNotEquals(mark.digest(), assertMarkHolds(form, SampleEvents.round(1, "failed")).digest());
  }

  @Test
  void marksOfCorrectionsHold() {
    Moment when = Moment.on(LocalDate.of(2024, 5, 1));
    LoggedEvent target = SampleEvents.round(1, "passed");
    EventCorrected correction =
        new EventCorrected(target.id(), when, "P-1", "misread", target.event());
    assertMarkHolds(new EventForm(), new LoggedEvent("c", "s", correction, null, null, null, null));
  }

  @Test
  void marksOfRowsAndDecisionsHold() {
    assertMarkHolds(
        new QuarantineForm(),
        new QuarantinedRow(null, "s", "f", 1, null, "REJECTED", "why", "row", null, null));
    assertMarkHolds(new LedgerForm(), new LedgerEntry(null, "CUT_FITTED", "1,2", NOW, "engine"));
  }
}

package sealspan.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.event.LoggedEvent.ReportedOrigin;

class EventHeadersTest {
  private static final Moment AFTERNOON =
      new Moment(LocalDate.of(2024, 7, 1), 14 * 60, "America/Denver");
  private static final Instant RECORDED = Instant.parse("2024-07-03T08:00:00.123Z");

  private static LoggedEvent event(Moment when) {
    return new LoggedEvent(
        "id-1",
        "form/Düne 7+100%",
        new AssemblyRemoved("A 1", when, null, null),
        Instant.parse("2024-07-02T00:00:00Z"),
        ReportedOrigin.NOT_RECORDED,
        RECORDED,
        Arrival.IMPORTED);
  }

  /**
   * Outside check: attribute names, their {@code ce_} prefix, {@code content-type} and the rule for
   * extension names (lower-case letters and digits) are those of CloudEvents 1.0.2 and its Kafka
   * protocol binding, section 3.2.
   */
  @Test
  void headersAreThoseOfTheCloudEventsBinding() {
    Map<String, String> headers = EventHeaders.of(event(AFTERNOON), 0x0FL);
    assertEquals(
        List.of(
            "ce_specversion=1.0",
            "ce_id=id-1",
            "ce_source=form/D%C3%BCne%207+100%25",
            "ce_type=sealspan.event.AssemblyRemoved",
            "ce_subject=assembly/A 1",
            "content-type=application/avro",
            "ce_dataschema=urn:sealspan:schema:sealspan.event.AssemblyRemoved:000000000000000f",
            "ce_time=2024-07-01T20:00:00Z",
            "ce_reportedtime=2024-07-02T00:00:00Z",
            "ce_reportedorigin=not_recorded",
            "ce_arrival=imported",
            "ce_recordedtime=2024-07-03T08:00:00.123Z"),
        headers.entrySet().stream().map(h -> h.getKey() + "=" + h.getValue()).toList());
    assertTrue(
        headers.keySet().stream().allMatch(n -> n.matches("ce_[a-z0-9]+|content-type")),
        headers.toString());
  }

  @Test
  void comesBackAsItWasWritten() {
    LoggedEvent full = event(AFTERNOON);
    assertEquals(full, EventHeaders.read(EventHeaders.of(full, 1)::get, full.event()));

    LoggedEvent sparse = new LoggedEvent("id", "s", full.event(), null, null, RECORDED, null);
    assertEquals(sparse, EventHeaders.read(EventHeaders.of(sparse, 1)::get, full.event()));
  }

  @Test
  void aDateAloneIsNoInstant() {
    Moment day = Moment.on(LocalDate.of(2024, 7, 1));
    assertFalse(EventHeaders.of(event(day), 1).containsKey("ce_time"));
  }

  @Test
  void refusesWhatIsNotWellFormed() {
    AssemblyEvent content = event(AFTERNOON).event();
    assertThrows(
        IllegalArgumentException.class,
        () -> EventHeaders.read(Map.of("ce_id", "x")::get, content));
    Map<String, String> headers = new HashMap<>(EventHeaders.of(event(AFTERNOON), 1));
    headers.put("ce_recordedtime", "yesterday");
    assertThrows(IllegalArgumentException.class, () -> EventHeaders.read(headers::get, content));
    assertThrows(
        IllegalArgumentException.class,
        () -> EventHeaders.of(new LoggedEvent("i", "s", content, null, null, null, null), 1));
  }
}

package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sealspan.avro.EventCodec;
import sealspan.event.AssemblyRemoved;
import sealspan.event.LoggedEvent;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.event.LoggedEvent.ReportedOrigin;
import sealspan.event.Moment;

class EventBytesTest {
  private static final AssemblyRemoved REMOVED =
      new AssemblyRemoved("BF-1", Moment.on(LocalDate.of(2031, 5, 6)), null, "ö, scrapped");

  @Test
  void whatWasPackedComesBack() {
    LoggedEvent whole =
        new LoggedEvent(
            "id-ä",
            "a file.csv",
            REMOVED,
            Instant.parse("1969-12-31T23:59:59.999999999Z"),
            ReportedOrigin.ASSUMED,
            Instant.parse("2031-05-07T08:00:00.123Z"),
            Arrival.IMPORTED);
    LoggedEvent bare = new LoggedEvent("", "", REMOVED, null, null, null, null);
    for (LoggedEvent event : new LoggedEvent[] {whole, bare}) {
      byte[] packed = EventBytes.pack(event, EventCodec.encode(REMOVED));
      assertEquals(event, EventBytes.unpack(packed));
      assertArrayEquals(packed, EventBytes.pack(event, EventCodec.encode(REMOVED)));
    }
  }

  @Test
  void damagedContentIsToldWithTheEvent() {
    byte[] packed =
        EventBytes.pack(
            new LoggedEvent("id-7", "a file.csv", REMOVED, null, null, null, null),
            EventCodec.encode(REMOVED));
    byte[] cutOff = Arrays.copyOf(packed, packed.length - 3);
    JobException told = assertThrows(JobException.class, () -> EventBytes.unpack(cutOff));
    assertTrue(told.getMessage().contains("id-7"), told.getMessage());
  }
}

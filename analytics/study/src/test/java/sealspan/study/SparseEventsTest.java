package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.Story;
import sealspan.avro.AnyRecord;
import sealspan.avro.TableCodec;
import sealspan.event.AssemblyEvent;
import sealspan.event.EventCorrected;
import sealspan.event.LoggedEvent;
import sealspan.table.AssemblyRows;
import sealspan.table.ZoneRows;

/** Whatever a log holds, a history is worked out; nothing that is missing stops it. */
class SparseEventsTest {
  private static final Class<?>[] TYPES = AssemblyEvent.class.getPermittedSubclasses();

  @Test
  void noEventHoweverSparseOrOddStopsAHistory() {
    AcceptanceCriteria criteria = AcceptanceCriteria.shipped();
    int rounds = 0;
    int repairs = 0;
    int samples = 0;
    for (long seed = 0; seed < 120; seed++) {
      List<LoggedEvent> events = events(seed);
      for (int i = 0; i < 2; i++) {
        String id = "Düse " + i;
        AssemblyRows rows = AssemblyTables.of(id, events, criteria, LatestFits.none(), seed);
        assertEquals(rows, TableCodec.decode(TableCodec.encode(rows), AssemblyRows.class));
        rounds += rows.tests().size();
        repairs += rows.repairs().size();
        ZoneRows zone = ZoneTables.of(id, events, seed);
        assertEquals(zone, TableCodec.decode(TableCodec.encode(zone), ZoneRows.class));
        samples += zone.samples().size();
      }
    }
    assertTrue(
        rounds > 300 && repairs > 300 && samples > 300, rounds + " " + repairs + " " + samples);
  }

  private static List<LoggedEvent> events(long seed) {
    AnyRecord any = new AnyRecord(seed, seed % 3 * .2, 2);
    Random random = new Random(seed);
    List<LoggedEvent> events = new ArrayList<>();
    while (events.size() < 120) {
      Class<?> type = TYPES[random.nextInt(TYPES.length)];
      AssemblyEvent event = any.of(type.asSubclass(AssemblyEvent.class));
      if (canBeLogged(event)) {
        Instant at = random.nextInt(5) == 0 ? null : Instant.ofEpochSecond(random.nextInt(1000));
        events.add(Story.logged("Düse " + random.nextInt(100), event, at));
      }
    }
    return events;
  }

  /** An event about nothing, or of no day, has neither key nor time and so is in no log. */
  private static boolean canBeLogged(AssemblyEvent event) {
    AssemblyEvent content = event instanceof EventCorrected e ? e.replacement() : event;
    try {
      return content != null
          && content.when() != null
          && event.when() != null
          && event.subject() != null;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }
}

package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.event.LoggedEvent;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;

/** JSON Lines, whose members are named as the columns of a table. */
class JsonLinesTest {
  @TempDir Path folder;

  private Intaken take(String... lines) throws Exception {
    return Intaken.ofText(folder, "events.jsonl", String.join("\n", lines));
  }

  @Test
  void aLineSaysWhatARowSays() throws Exception {
    Intaken json =
        take(
            "{\"event\":\"test\",\"assembly_id\":\"BF-1\",\"date\":\"2025-04-17\","
                + "\"phase\":\"as_found\",\"check1_psid\":8.20,\"relief_psid\":\"did not open\"}");
    Intaken table =
        Intaken.ofText(
            folder,
            "events.csv",
            "event,assembly_id,date,phase,check1_psid,relief_psid\n"
                + "test,BF-1,2025-04-17,as_found,8.20,did not open\n");
    assertEquals(table.events, json.events);
  }

  @Test
  void objectsInsideNameTheirMembersAndArraysAreLists() throws Exception {
    Intaken in =
        take(
            "{\"assembly_id\":\"BF-1\",\"date\":\"2025-04-17\",\"found\":{\"check1_psid\":0.8},"
                + "\"repair\":{\"check1\":{\"action\":[\"cleaned\",\"disc_replaced\"]},"
                + "\"crew_ids\":[\"T-1\",\"T-2\"]},\"remarks\":null}");
    assertEquals(1, in.all(TestPerformed.class).size());
    assertEquals(List.of("T-1", "T-2"), in.only(RepairPerformed.class).crewIds());
    assertEquals(2, in.only(RepairPerformed.class).items().size());
  }

  @Test
  void aMemberThatIsThereTwiceIsRefused() throws Exception {
    Intaken in = take("{\"event\":\"test\",\"event\":\"repair\"}");
    assertEquals(1, in.summary.rejectedRows());
    assertTrue(in.rows.get(0).reason().contains("not a JSON object"), in.rows.toString());
  }

  @Test
  void anIdThatIsGivenIsKept() throws Exception {
    Intaken in =
        take(
            "{\"event\":\"service\",\"event_id\":\"E-77\",\"assembly_id\":\"BF-1\","
                + "\"date\":\"2025-10-01\",\"service_state\":\"winterized\"}");
    LoggedEvent event = in.events.get(0);
    assertEquals("E-77", event.id());
  }
}

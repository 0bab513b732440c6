package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** I9 on the running engine: an alarm is raised, entered, closed, and raised again by a rebuild. */
@Timeout(value = 8, unit = TimeUnit.MINUTES)
class AlarmsOnEngineTest {
  private static final Path SAMPLES = Path.of(System.getProperty("sealspan.home"), "sample-events");

  @TempDir Path data;

  @AfterEach
  void stop() {
    Typed.at(data, "stop");
  }

  @Test
  void anAlarmIsRaisedEnteredClosedAndRaisedAgainByARebuild() throws IOException {
    Files.copy(SAMPLES.resolve("criteria.csv"), data.resolve("criteria.csv"));
    Typed history =
        Typed.at(
            data,
            "import",
            SAMPLES.resolve("events.jsonl").toString(),
            SAMPLES.resolve("visits.csv").toString());
    assertEquals(ExitCode.IN_PART, history.code(), history.toString());
    Typed.at(data, "fit");
    Settled.until(() -> !sql("select 1 from ledger where kind = 'WATCH_MODEL_FROZEN'").isEmpty());
    Settled.until(() -> !sql("select 1 from watch_state").isEmpty());

    Typed fouled = Typed.at(data, "import", fouledVisits().toString());
    assertEquals(ExitCode.DONE, fouled.code(), fouled.toString());
    String entered =
        "select split_part(content, chr(9), 2) from ledger where kind = 'ALARM_RAISED'";
    Settled.until(() -> sql(entered).size() >= 2);
    List<String> ids = sql(entered + " order by 1");
    assertTrue(ids.size() >= 2, Typed.at(data, "ask", "alarms").toString());

    Typed asked = Typed.at(data, "ask", "alarms");
    assertTrue(asked.out().contains("as known then") && asked.out().contains("restated"));
    assertTrue(asked.out().contains("A false alarm comes once in"), asked.toString());
    assertEquals(ExitCode.FAILED, close("A-no-such-alarm").code());
    Typed closed = close(ids.get(0));
    assertEquals(ExitCode.DONE, closed.code(), closed.toString());
    Settled.until(() -> Typed.at(data, "ask", "alarms").out().contains("strainer cleaned"));
    assertTrue(Typed.at(data, "ask", "alarms").out().contains("strainer cleaned (p-3)"));

    List<String> before = alarms();
    Typed rebuilt = Typed.at(data, "rebuild");
    assertEquals(ExitCode.DONE, rebuilt.code(), rebuilt.toString());
    Settled.until(() -> alarms().equals(before));
    assertEquals(before, alarms());
    assertEquals(ids, sql(entered + " order by 1"));
  }

  private Typed close(String id) {
    return Typed.at(data, "alarm", "close", id, "--why", "strainer cleaned", "--by", "p-3");
  }

  private List<String> alarms() {
    return sql("select columns(*) from watch_alarm order by run, raised_at, alarm_id");
  }

  private List<String> sql(String select) {
    Typed typed = Typed.at(data, "ask", "--format", "csv", "--sql", select);
    return typed.out().lines().skip(1).toList();
  }

  /** One assembly fouled again and again, of late. */
  private Path fouledVisits() throws IOException {
    StringBuilder rows =
        new StringBuilder(
            "assembly_id,date,report_number,purpose,found_check1_psid,found_check2_psid,"
                + "repair_check1_action,repair_check1_mechanism,left_check1_psid,left_check2_psid\n");
    LocalDate today = LocalDate.now(ZoneOffset.UTC);
    for (int i = 0; i < 12; i++) {
      rows.append("NH-17,")
          .append(today.minusDays(60 - 4L * i))
          .append(",RX-")
          .append(i)
          .append(",routine,0.4,1.7,cleaned,debris,1.8,1.7\n");
    }
    return Files.writeString(data.resolve("fouled.csv"), rows);
  }
}

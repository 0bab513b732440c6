package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.writer.Published;
import sealspan.study.watch.WatchModel;
import sealspan.study.watch.WatchSite;
import sealspan.table.Bundle;
import sealspan.table.FoulingCoefficientRow;
import sealspan.table.FoulingFitRow;
import sealspan.table.FoulingRows;
import sealspan.table.LedgerEntry;

/** What of the watch is still to be entered in the ledger, as a snapshot tells it. */
class WatchDecisionsTest {
  private static final Instant SOON = HandMadeWatch.FROZEN.plus(Duration.ofDays(27));

  @TempDir Path folder;

  private void publish(List<LedgerEntry> ledger, int visits) throws Exception {
    List<Bundle> bundles = new ArrayList<>(HandMade.bundles());
    bundles.removeIf(b -> b.key().equals(FoulingRows.KEY) || b.key().equals("watch/all"));
    bundles.add(HandMadeWatch.rows());
    bundles.add(fouling(visits));
    Published.in(folder, bundles, HandMade.quarantined(), ledger, HandMadeEvents.all());
  }

  private static FoulingRows fouling(int visits) {
    FoulingFitRow fit =
        new FoulingFitRow(
            "0:9",
            "0:9",
            Instant.EPOCH,
            "7",
            "rule",
            visits,
            3,
            2,
            0,
            visits,
            2,
            0,
            LocalDate.of(2022, 4, 4),
            LocalDate.of(2024, 4, 4),
            9_000,
            "POOLED",
            null,
            "too few");
    return new FoulingRows(
        "all",
        1,
        fit,
        List.of(new FoulingCoefficientRow("constant", -2.5, null, null)),
        null,
        List.of(),
        List.of(),
        List.of());
  }

  @Test
  void theFirstModelIsDueAtOnceWithThePlacesOfTheSnapshot() throws Exception {
    publish(HandMade.ledger().subList(0, 1), 30);
    DueWatchModel due = DueWatchModel.read(folder, "0:9", null, SOON);
    assertTrue(due.fitted());
    WatchModel model = due.model();
    assertEquals("7", model.codeVersion());
    assertEquals(30, model.visits());
    assertEquals(-2.5, model.coefficients().get(0).value());
    assertTrue(model.sites().stream().map(WatchSite::siteId).toList().contains("S1"));
    assertEquals(WatchModel.thresholdFor(model.testsPerYear()), model.threshold());
    assertFalse(DueWatchModel.read(folder, "0:8", null, SOON).fitted());
    assertFalse(DueWatchModel.read(folder, "0:9", "not seen yet", SOON).fitted());
  }

  @Test
  void anotherIsDueAfterFourWeeksOrWithTwiceTheVisits() throws Exception {
    List<LedgerEntry> ledger = HandMadeWatch.ledger();
    publish(ledger, 79);
    assertNull(DueWatchModel.read(folder, "0:9", "m-1", SOON).model());
    assertEquals(
        "0:9",
        DueWatchModel.read(folder, "0:9", "m-1", SOON.plus(Duration.ofDays(1))).model().cutId());
    publish(ledger, 80);
    assertEquals("0:9", DueWatchModel.read(folder, "0:9", "m-1", SOON).model().cutId());
  }

  @Test
  void anAlarmIsNewUntilTheLedgerHoldsIt() throws Exception {
    publish(HandMadeWatch.ledger(), 30);
    NewAlarms alarms = NewAlarms.read(folder);
    assertEquals(List.of(HandMadeWatch.rows().alarms().get(2)), alarms.alarms());
    assertTrue(RaisedAlarms.isRaised(folder, "A-1"));
    assertFalse(RaisedAlarms.isRaised(folder, "A-3"));
  }
}

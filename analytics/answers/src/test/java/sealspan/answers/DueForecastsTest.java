package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.writer.Published;
import sealspan.study.IssuedForecast;
import sealspan.table.LedgerEntry;

/** Which forecasts of a snapshot are still to be issued. */
class DueForecastsTest {
  @TempDir Path folder;

  private DueForecasts due(List<LedgerEntry> ledger, String lastIssued) throws Exception {
    Published.in(folder, HandMade.bundles(), HandMade.quarantined(), ledger, HandMadeEvents.all());
    return DueForecasts.read(folder, "cut-1", lastIssued);
  }

  @Test
  void whatWasNotIssuedIsDueOnce() throws Exception {
    DueForecasts first = due(HandMade.ledger(), null);
    assertEquals(1, first.forecasts().size());
    IssuedForecast one = first.forecasts().get(0);
    assertEquals("A2", one.assemblyId());
    assertEquals("u3", one.basisEventId());
    assertEquals(0.27, one.after12Months());
    assertEquals(0.08, one.after6Months());
    assertEquals("DC", one.type());
    // Two assemblies are not scored with that fit, so more may follow.
    assertFalse(first.scored());
    assertEquals(List.of(), DueForecasts.read(folder, "cut-2", null).forecasts());
    assertEquals(List.of(), DueForecasts.read(folder, "cut-1", "not seen yet").forecasts());
  }

  @Test
  void whatTheLedgerHoldsIsNotDueAgain() throws Exception {
    List<LedgerEntry> ledger = new ArrayList<>(HandMade.ledger());
    String content = IssuedForecast.content(due(ledger, null).forecasts());
    ledger.add(new LedgerEntry("f-1", IssuedForecast.KIND, content, Instant.now(), "engine"));
    assertEquals(List.of(), due(ledger, "f-1").forecasts());
  }
}

package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import sealspan.event.LoggedEvent;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** What every log promises, whoever keeps it. Each test finds the logs empty. */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
abstract class LogContract {
  private static final Instant NOON = Instant.parse("2024-06-01T12:00:00Z");

  /** A client of the one log of events; a log in memory has one client only. */
  abstract EventLog events(InstantSource clock);

  abstract Quarantine quarantine(InstantSource clock);

  abstract Ledger ledger(InstantSource clock);

  private EventLog events() {
    return events(InstantSource.fixed(NOON));
  }

  @Test
  void givesBackWhatWasAppendedWithItsPlaceAndRecordedTime() {
    List<LoggedEvent> handedIn = SampleEvents.rounds(0, 500);
    try (EventLog log = events()) {
      List<Receipt<LoggedEvent>> receipts = log.append(handedIn);
      Map<Place, Recorded<LoggedEvent>> read = byPlace(log, Cut.START, log.end());

      assertEquals(500, receipts.size());
      assertEquals(500, read.size());
      for (int i = 0; i < 500; i++) {
        Recorded<LoggedEvent> recorded = appended(receipts.get(i));
        assertEquals(handedIn.get(i).recorded(NOON), recorded.entry());
        assertEquals(NOON, recorded.recordedAt());
        assertEquals(recorded, read.get(recorded.place()));
      }
    }
  }

  @Test
  void keepsTheEventsOfOneSubjectInOrderInOnePartition() {
    List<LoggedEvent> handedIn = SampleEvents.rounds(0, 12_000);
    try (EventLog log = events()) {
      log.append(handedIn);
      Map<String, List<Place>> bySubject = new HashMap<>();
      Map<String, List<String>> ids = new HashMap<>();
      log.read(
          Cut.START,
          log.end(),
          r -> {
            String key = r.entry().event().subject().key();
            bySubject.computeIfAbsent(key, k -> new ArrayList<>()).add(r.place());
            ids.computeIfAbsent(key, k -> new ArrayList<>()).add(r.entry().id());
          });

      Map<String, List<String>> expected = new HashMap<>();
      handedIn.forEach(
          e ->
              expected
                  .computeIfAbsent(e.event().subject().key(), k -> new ArrayList<>())
                  .add(e.id()));
      assertEquals(expected, ids);
      for (List<Place> places : bySubject.values()) {
        assertEquals(1, places.stream().map(Place::partition).distinct().count());
        assertEquals(places.stream().map(Place::offset).sorted().toList(), offsets(places));
      }
    }
  }

  @Test
  void appendsAnEventOnceHoweverOftenItIsHandedIn() {
    LoggedEvent event = SampleEvents.round(1, "passed");
    LoggedEvent otherEnvelope =
        new LoggedEvent(
            event.id(), "another file", event.event(), null, null, NOON, LoggedEvent.Arrival.LIVE);
    try (EventLog log = events()) {
      List<Receipt<LoggedEvent>> first = log.append(List.of(event, event));
      Place place = appended(first.get(0)).place();
      Cut end = log.end();
      List<Receipt<LoggedEvent>> second = log.append(List.of(otherEnvelope, event));

      assertEquals(new Receipt.Duplicate<LoggedEvent>(place), first.get(1));
      assertEquals(new Receipt.Duplicate<LoggedEvent>(place), second.get(0));
      assertEquals(new Receipt.Duplicate<LoggedEvent>(place), second.get(1));
      assertEquals(end, log.end());
    }
  }

  @Test
  void refusesAnotherContentUnderAnIdAndNamesWhatIsThere() {
    LoggedEvent original = SampleEvents.round(1, "passed");
    LoggedEvent edited = SampleEvents.round(1, "passed, box flooded");
    assertEquals(original.id(), edited.id());
    try (EventLog log = events()) {
      log.append(SampleEvents.rounds(2, 300));
      List<Receipt<LoggedEvent>> together = log.append(List.of(original, edited));
      Recorded<LoggedEvent> there = appended(together.get(0));
      Cut end = log.end();
      List<Receipt<LoggedEvent>> later = log.append(List.of(edited, original));

      assertEquals(new Receipt.Conflict<>(there), together.get(1));
      assertEquals(new Receipt.Conflict<>(there), later.get(0));
      assertEquals(new Receipt.Duplicate<LoggedEvent>(there.place()), later.get(1));
      assertEquals(end, log.end());
    }
  }

  @Test
  void whatIsOnItsWayCountsAsThere() {
    LoggedEvent original = SampleEvents.round(1, "passed");
    LoggedEvent edited = SampleEvents.round(1, "passed, box flooded");
    try (EventLog log = events()) {
      AppendLog.Sending<LoggedEvent> first =
          log.send(List.of(log.ready(original), log.ready(SampleEvents.round(2, "passed"))));
      AppendLog.Sending<LoggedEvent> second =
          log.send(List.of(log.ready(SampleEvents.round(3, "passed")), log.ready(edited)));
      AppendLog.Sending<LoggedEvent> third = log.send(List.of(log.ready(original)));

      List<Receipt<LoggedEvent>> last = third.receipts();
      Recorded<LoggedEvent> there = appended(first.receipts().get(0));
      assertEquals(List.of(new Receipt.Duplicate<LoggedEvent>(there.place())), last);
      assertInstanceOf(Receipt.Appended.class, second.receipts().get(0));
      assertEquals(new Receipt.Conflict<>(there), second.receipts().get(1));
      assertEquals(ids(SampleEvents.rounds(1, 4)), ids(log, Cut.START, log.end()));
    }
  }

  @Test
  void neverDecreasesRecordedTimeEvenIfTheClockIsSetBack() {
    Instant[] now = {NOON};
    try (EventLog log = events(() -> now[0])) {
      log.append(SampleEvents.rounds(0, 10));
      now[0] = NOON.minus(Duration.ofDays(3));
      assertEquals(NOON, appended(log.append(SampleEvents.rounds(10, 11)).get(0)).recordedAt());
      now[0] = NOON.plusMillis(5);
      assertEquals(
          NOON.plusMillis(5),
          appended(log.append(SampleEvents.rounds(11, 12)).get(0)).recordedAt());
    }
  }

  @Test
  void takesARecordedTimeFarAheadOfTheClock() {
    Instant ahead =
        Instant.now().plus(Duration.ofDays(400)).truncatedTo(java.time.temporal.ChronoUnit.MILLIS);
    try (EventLog log = events(InstantSource.fixed(ahead))) {
      assertEquals(ahead, appended(log.append(SampleEvents.rounds(0, 1)).get(0)).recordedAt());
      assertEquals(1, byPlace(log, Cut.START, log.end()).size());
    }
  }

  @Test
  void readsExactlyWhatLiesBetweenTwoCuts() {
    try (EventLog log = events()) {
      assertEquals(0, byPlace(log, Cut.START, log.end()).size());
      log.append(SampleEvents.rounds(0, 100));
      Cut first = log.end();
      log.append(SampleEvents.rounds(100, 250));
      Cut second = log.end();
      log.append(SampleEvents.rounds(250, 300));

      assertEquals(ids(SampleEvents.rounds(0, 100)), ids(log, Cut.START, first));
      assertEquals(ids(SampleEvents.rounds(100, 250)), ids(log, first, second));
      assertEquals(Set.of(), ids(log, second, second));
      assertTrue(second.covers(first) && !first.covers(second));
      assertEquals(second, Cut.parse(second.text()));
    }
  }

  @Test
  void aReaderFollowsTheLogAsItGrows() {
    try (EventLog log = events()) {
      log.append(SampleEvents.rounds(0, 100));
      try (LogReader<LoggedEvent> reader = log.reader(log.end())) {
        assertEquals(List.of(), reader.poll(Duration.ofMillis(100)));
        log.append(SampleEvents.rounds(100, 150));
        Set<String> seen = new HashSet<>();
        while (seen.size() < 50) {
          reader.poll(Duration.ofSeconds(1)).forEach(r -> seen.add(r.entry().id()));
        }
        assertEquals(ids(SampleEvents.rounds(100, 150)), seen);
        assertEquals(log.end(), reader.position());
      }
    }
  }

  @Test
  void listsARejectedRowOnceWhateverTheFileIsCalled() {
    try (Quarantine quarantine = quarantine(InstantSource.fixed(NOON))) {
      QuarantinedRow row = rejected("tests.csv", 17, "A-1;2024-13-01", "no such month");
      Recorded<QuarantinedRow> first = appended(quarantine.append(List.of(row)).get(0));
      List<Receipt<QuarantinedRow>> again =
          quarantine.append(
              List.of(
                  row,
                  rejected("tests (1).csv", 18, "A-1;2024-13-01", "no such month"),
                  rejected("tests.csv", 17, "A-1;2024-13-01", "no such assembly")));

      assertEquals(NOON, first.entry().firstSeenAt());
      assertEquals(17, first.entry().line());
      assertInstanceOf(Receipt.Duplicate.class, again.get(0));
      assertInstanceOf(Receipt.Duplicate.class, again.get(1));
      assertFalse(appended(again.get(2)).entry().id().equals(first.entry().id()));
      List<QuarantinedRow> listed = new ArrayList<>();
      quarantine.read(Cut.START, quarantine.end(), r -> listed.add(r.entry()));
      assertEquals(List.of(first.entry(), appended(again.get(2)).entry()), listed);
    }
  }

  @Test
  void tellsWhichRowsWerePutRightAndListsOneThatComesBack() {
    try (Quarantine quarantine = quarantine(InstantSource.fixed(NOON))) {
      QuarantinedRow mended = rejected("tests.csv", 17, "A-1;2024-13-01", "no such month");
      QuarantinedRow kept = rejected("tests.csv", 18, "A-2;2024-13-01", "no such month");
      QuarantinedRow elsewhere = rejected("other.csv", 18, "A-3;2024-13-01", "no such month");
      for (QuarantinedRow row : List.of(mended, kept, elsewhere)) {
        appended(quarantine.append(List.of(row)).get(0));
      }

      assertEquals(List.of(mended), imported(quarantine, List.of(kept)));
      assertEquals(List.of(kept), standing(quarantine));
      assertEquals(List.of(), imported(quarantine, List.of(kept)));
      assertEquals(List.of(), imported(quarantine, List.of(kept, mended)));
      assertEquals(List.of(kept, mended), standing(quarantine));
      assertEquals(List.of(kept, mended), imported(quarantine, List.of()));
      assertEquals(List.of(), standing(quarantine));
    }
  }

  /** Imports tests.csv with some complaints; the rows that were put right by that. */
  private static List<QuarantinedRow> imported(
      Quarantine quarantine, List<QuarantinedRow> complaints) {
    List<QuarantinedRow> before = standing(quarantine);
    StandingRows rows = StandingRows.of(quarantine, "utility", List.of("tests.csv"));
    quarantine.append(complaints.stream().map(rows::complainedOf).toList());
    quarantine.append(rows.putRight("tests.csv"));
    List<QuarantinedRow> after = standing(quarantine);
    return before.stream().filter(row -> !after.contains(row)).toList();
  }

  /** What stands of tests.csv, as it was handed in. */
  private static List<QuarantinedRow> standing(Quarantine quarantine) {
    Map<String, QuarantinedRow> rows = new LinkedHashMap<>();
    quarantine.read(
        Cut.START,
        quarantine.end(),
        r -> {
          QuarantinedRow row = r.entry();
          if (row.putsRight() != null) {
            rows.remove(row.putsRight());
          } else if (row.file().equals("tests.csv")) {
            rows.put(row.id(), rejected(row.file(), row.line(), row.rowText(), row.reason()));
          }
        });
    return List.copyOf(rows.values());
  }

  @Test
  void keepsTroubleOfTwoFilesApartWhereThereIsNoRow() {
    try (Quarantine quarantine = quarantine(InstantSource.fixed(NOON))) {
      List<Receipt<QuarantinedRow>> receipts =
          quarantine.append(
              List.of(
                  rejected("a.csv", 1, "", "the file is empty"),
                  rejected("b.csv", 1, "", "the file is empty"),
                  rejected("b.csv", 1, "", "the file is empty")));
      assertInstanceOf(Receipt.Appended.class, receipts.get(1));
      assertInstanceOf(Receipt.Duplicate.class, receipts.get(2));
    }
  }

  @Test
  void shortensARowThatSwallowedHalfAFile() {
    try (Quarantine quarantine = quarantine(InstantSource.fixed(NOON))) {
      QuarantinedRow row = rejected("a.csv", 2, "x".repeat(20_000_000), "a quote is not closed");
      QuarantinedRow kept = appended(quarantine.append(List.of(row)).get(0)).entry();
      assertTrue(kept.rowText().startsWith("xxx"));
      assertTrue(kept.rowText().endsWith("[... 20000000 characters in all]"));
      assertTrue(kept.rowText().length() < 101_000);
      assertInstanceOf(Receipt.Duplicate.class, quarantine.append(List.of(row)).get(0));
    }
  }

  @Test
  void entersADecisionOnceAndKeepsTheOrder() {
    try (Ledger ledger = ledger(InstantSource.fixed(NOON))) {
      LedgerEntry table = new LedgerEntry(null, "CRITERIA_ADOPTED", "type,limit", NOON, "cli");
      LedgerEntry cut = new LedgerEntry(null, "CUT_FITTED", "5,7,1", NOON, "engine");
      Recorded<LedgerEntry> first = appended(ledger.append(List.of(table)).get(0));
      List<Receipt<LedgerEntry>> more = ledger.append(List.of(cut, table));

      assertEquals(new Receipt.Duplicate<LedgerEntry>(first.place()), more.get(1));
      List<String> kinds = new ArrayList<>();
      ledger.read(Cut.START, ledger.end(), r -> kinds.add(r.entry().kind()));
      assertEquals(List.of("CRITERIA_ADOPTED", "CUT_FITTED"), kinds);
      assertEquals(32, first.entry().id().length());
    }
  }

  @Test
  void anEmptyAppendChangesNothing() {
    try (EventLog log = events()) {
      Cut end = log.end();
      assertEquals(List.of(), log.append(List.of()));
      assertEquals(end, log.end());
    }
  }

  static <T> Recorded<T> appended(Receipt<T> receipt) {
    if (receipt instanceof Receipt.Appended<T> appended) {
      return appended.recorded();
    }
    throw new AssertionError("Not appended: " + receipt);
  }

  static Set<String> ids(List<LoggedEvent> events) {
    Set<String> ids = new HashSet<>();
    events.forEach(e -> ids.add(e.id()));
    return ids;
  }

  static Set<String> ids(EventLog log, Cut from, Cut to) {
    Set<String> ids = new HashSet<>();
    log.read(from, to, r -> assertTrue(ids.add(r.entry().id()), "an id stands in the log twice"));
    return ids;
  }

  private static Map<Place, Recorded<LoggedEvent>> byPlace(EventLog log, Cut from, Cut to) {
    Map<Place, Recorded<LoggedEvent>> read = new HashMap<>();
    log.read(from, to, r -> read.put(r.place(), r));
    return read;
  }

  private static List<Long> offsets(List<Place> places) {
    return places.stream().map(Place::offset).toList();
  }

  private static QuarantinedRow rejected(String file, long line, String row, String reason) {
    return new QuarantinedRow(
        null, "utility", file, line, "when", "REJECTED", reason, row, null, null);
  }
}

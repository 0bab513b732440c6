package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.writer.Published;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.study.BatchTables;
import sealspan.study.FitCut;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.table.Bundle;
import sealspan.table.LedgerEntry;

/** Answers as of an earlier day against answers published on that day; an invented fleet. */
class AsOfTest {
  private static final ZoneId UTC = ZoneOffset.UTC;
  private static final int SEGMENT_EVENTS = 300;

  @TempDir static Path now;
  @TempDir static Path then;
  private static List<LoggedEvent> events;
  private static LocalDate middle;
  private static LocalDate last;

  @BeforeAll
  static void publish() throws Exception {
    events = recorded(new PracticeFleet(PracticeParameters.usual(20250101, 60)));
    last = day(events.size() - 1);
    middle = day(events.size() / 2);
    List<LoggedEvent> byMiddle =
        events.stream().filter(e -> e.recordedAt().isBefore(endOf(middle))).toList();
    int first = byMiddle.size() - 10;
    LedgerEntry early = cut("cut-a", first, endOf(middle).minusSeconds(5));
    LedgerEntry late = cut("cut-b", events.size(), endOf(last).minusSeconds(5));
    publish(
        now,
        events,
        List.of(early, late),
        new FitCut("cut-b", "0:" + events.size(), events.get(events.size() - 1).recordedAt(), 2),
        events.size());
    publish(
        then,
        byMiddle,
        List.of(early),
        new FitCut("cut-a", "0:" + first, events.get(first - 1).recordedAt(), 1),
        first);
  }

  private static void publish(
      Path folder, List<LoggedEvent> in, List<LedgerEntry> ledger, FitCut cut, int fitted)
      throws Exception {
    List<Bundle> bundles =
        BatchTables.of(in, in.subList(0, fitted), AcceptanceCriteria.shipped(), cut);
    Published.in(folder, bundles, List.of(), ledger, in, SEGMENT_EVENTS);
  }

  /** Recorded time as the log would set it: when reported, never decreasing. */
  private static List<LoggedEvent> recorded(PracticeFleet fleet) {
    List<LoggedEvent> all =
        new ArrayList<>(fleet.events().sorted(Comparator.comparing(AsOfTest::reported)).toList());
    List<LoggedEvent> recorded = new ArrayList<>();
    for (LoggedEvent event : all) {
      recorded.add(event.recorded(reported(event)));
    }
    return recorded;
  }

  private static Instant reported(LoggedEvent event) {
    return event.reportedAt() != null ? event.reportedAt() : event.event().when().instant();
  }

  private static LedgerEntry cut(String id, int offset, Instant decidedAt) {
    return new LedgerEntry(id, "CUT_FITTED", "0:" + offset, decidedAt, "engine");
  }

  private static LocalDate day(int event) {
    return LocalDate.ofInstant(events.get(event).recordedAt(), UTC);
  }

  private static Instant endOf(LocalDate day) {
    return day.plusDays(1).atStartOfDay(UTC).toInstant();
  }

  @Test
  void asOfTheLastDayTheAnswersAreThoseOfTheSnapshot() {
    try (Answers published = Answers.open(now);
        Answers worked = Answers.openAsOf(now, new AsOf(last, UTC), Progress.NONE)) {
      assertEquals(everything(published), everything(worked));
    }
  }

  @Test
  void asOfAnEarlierDayTheAnswersAreThoseThatWerePublishedThen() {
    List<String> steps = new ArrayList<>();
    try (Answers published = Answers.open(then);
        Answers worked =
            Answers.openAsOf(now, new AsOf(middle, UTC), (step, done, all) -> steps.add(step))) {
      Map<String, Object> expected = everything(published);
      assertEquals(expected, everything(worked));
      try (Answers today = Answers.open(now)) {
        assertNotEquals(expected, everything(today));
      }
      String asOf = worked.ask(Questions.named("log"), Map.of()).asOf();
      assertTrue(asOf.startsWith(middle + " (end of the day in Z): "), asOf);
      assertTrue(steps.containsAll(List.of("reading events", "filling tables")));
    }
  }

  @Test
  void aDayEndsInTheTimeZoneOfTheUtility() {
    Instant end = new AsOf(LocalDate.of(2025, 3, 31), ZoneId.of("America/Denver")).end();
    assertEquals(Instant.parse("2025-04-01T06:00:00Z"), end);
  }

  @Test
  void beforeTheFirstEventThereIsNothing() {
    AsOf before = new AsOf(day(0).minusDays(1), UTC);
    try (Answers answers = Answers.openAsOf(now, before, Progress.NONE)) {
      Answer answer = answers.ask(Questions.named("worst-assemblies"), Map.of());
      assertEquals(List.of(), answer.table().rows());
      assertTrue(answer.asOf().endsWith("no events yet"), answer.asOf());
    }
  }

  @Test
  void saysThatNothingWasPublished(@TempDir Path empty) {
    AnswersException e = assertThrows(AnswersException.class, () -> Answers.open(empty));
    assertTrue(e.getMessage().contains("There are no answers in " + empty), e.getMessage());
  }

  /** Rows and notes of every question, asked with values that the fleet has. */
  private static Map<String, Object> everything(Answers answers) {
    Map<String, Object> all = new LinkedHashMap<>();
    List<List<Object>> worst =
        answers.ask(Questions.named("worst-assemblies"), Map.of("limit", "1")).table().rows();
    for (Question question : Questions.all()) {
      Map<String, String> filters = new LinkedHashMap<>();
      for (FilterUse use : question.filters()) {
        if (use.need() == FilterUse.Need.REQUIRED) {
          filters.put(
              use.filter().label(),
              switch (use.filter()) {
                case ASSEMBLY -> worst.get(0).get(0).toString();
                case SITE -> worst.get(0).get(1).toString();
                case YEAR -> "" + (middle.getYear() - 1);
                case NUMBER -> "1";
                default -> "Z01";
              });
        }
      }
      Answer answer = answers.ask(question, filters);
      all.put(question.name(), List.of(answer.table().rows(), answer.notes()));
    }
    return all;
  }
}

package sealspan.jobs;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;

/** Invented logs, seeded. */
final class SomeEvents {
  private static final Instant BEGIN = Instant.parse("2024-01-01T00:00:00Z");

  private SomeEvents() {}

  /**
   * A small invented fleet in any order, a part of it repeated as it was, a part recorded again
   * later, and a part taken back.
   */
  static List<LoggedEvent> of(long seed, int positions) {
    Random random = new Random(seed);
    List<LoggedEvent> events = new ArrayList<>(inOrder(seed, positions));
    for (LoggedEvent event : List.copyOf(events)) {
      int fate = random.nextInt(20);
      if (fate == 0) {
        events.add(event);
      } else if (fate == 1) {
        events.add(event.recorded(event.recordedAt().plusSeconds(86_400)));
      } else if (fate == 2) {
        events.add(voided(event));
      }
    }
    Collections.shuffle(events, random);
    return events;
  }

  private static LoggedEvent voided(LoggedEvent event) {
    Moment when = event.event().when();
    return new LoggedEvent(
        "void of " + event.id(),
        "test",
        new EventVoided(event.id(), event.event().subject(), when, "p-1", "entered by mistake"),
        null,
        null,
        event.recordedAt().plusSeconds(172_800),
        event.arrival());
  }

  /** The same fleet as it was recorded. */
  static List<LoggedEvent> inOrder(long seed, int positions) {
    List<LoggedEvent> events = new ArrayList<>();
    new PracticeFleet(PracticeParameters.usual(seed, positions))
        .events()
        .forEach(e -> events.add(e.recorded(BEGIN.plusSeconds(events.size()))));
    return events;
  }

  /**
   * A small invented fleet whose events were recorded a day after they happened, some of them a
   * month later, with some taken back later still; in order of recording.
   */
  static List<LoggedEvent> live(long seed, int positions) {
    Random random = new Random(seed);
    List<LoggedEvent> events = new ArrayList<>();
    for (LoggedEvent event : inOrder(seed, positions)) {
      long after = 86_400L * (random.nextInt(10) == 0 ? 30 : 1) + events.size();
      Instant day = event.event().when().day().atStartOfDay().toInstant(ZoneOffset.UTC);
      events.add(event.recorded(day.plusSeconds(after)));
      if (random.nextInt(15) == 0) {
        events.add(voided(events.get(events.size() - 1)));
      }
    }
    events.sort(Comparator.comparing(LoggedEvent::recordedAt));
    return events;
  }
}

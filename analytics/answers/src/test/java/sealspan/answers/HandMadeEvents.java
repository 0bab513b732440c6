package sealspan.answers;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyRemoved;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.event.WaterDisturbed;

/** Some events for the log of the small invented utility. */
public final class HandMadeEvents {
  private HandMadeEvents() {}

  /** A water event recorded in 2023 and two removals recorded in 2024 and 2025. */
  public static List<LoggedEvent> all() {
    return List.of(
        event(
            "d1",
            new WaterDisturbed(
                "Z1",
                Moment.on(LocalDate.of(2023, 3, 15)),
                LocalDate.of(2023, 3, 17),
                null,
                WaterDisturbed.Kind.MAIN_BREAK,
                null,
                null,
                null),
            "2023-03-20T10:00:00Z"),
        event("q1", removed("A4", 2023, 10, 1), "2024-01-05T09:00:00Z"),
        event("q2", removed("A9", 2025, 2, 1), "2025-03-01T08:00:00Z"));
  }

  private static AssemblyEvent removed(String id, int year, int month, int day) {
    return new AssemblyRemoved(id, Moment.on(LocalDate.of(year, month, day)), null, null);
  }

  private static LoggedEvent event(String id, AssemblyEvent event, String recordedAt) {
    return new LoggedEvent(
        id,
        "hand.csv",
        event,
        null,
        LoggedEvent.ReportedOrigin.NOT_RECORDED,
        Instant.parse(recordedAt),
        LoggedEvent.Arrival.IMPORTED);
  }
}

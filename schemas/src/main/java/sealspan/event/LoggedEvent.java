package sealspan.event;

import java.time.Instant;
import java.util.Objects;

/**
 * An event with its envelope, as the log keeps it.
 *
 * @param id stable id: given by the source, or a UUIDv5 of the natural key
 * @param source where it comes from, such as a file's name or a system's URI
 * @param event what happened
 * @param reportedAt when the programme received it; null where neither known nor assumed
 * @param reportedOrigin whether the reported time was given or is assumed from a usual lag
 * @param recordedAt when the log took it in; null before it is appended
 * @param arrival whether it was taken in as it happened or with imported history
 */
public record LoggedEvent(
    String id,
    String source,
    AssemblyEvent event,
    Instant reportedAt,
    ReportedOrigin reportedOrigin,
    Instant recordedAt,
    Arrival arrival) {

  /** Where the reported time comes from. */
  public enum ReportedOrigin {
    GIVEN,
    ASSUMED,
    NOT_RECORDED
  }

  /** How an event came in. */
  public enum Arrival {
    LIVE,
    IMPORTED
  }

  public LoggedEvent {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(event, "event");
  }

  /** The same event with the time at which the log took it in. */
  public LoggedEvent recorded(Instant at) {
    return new LoggedEvent(id, source, event, reportedAt, reportedOrigin, at, arrival);
  }
}

package sealspan.app.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import sealspan.answers.KnownEvents;
import sealspan.app.Problem;
import sealspan.app.engine.DataFolder;
import sealspan.event.AssemblyEvent;
import sealspan.event.LoggedEvent;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.event.LoggedEvent.ReportedOrigin;
import sealspan.event.Moment;
import sealspan.event.NaturalKey;

/** What corrections and voids have in common. */
final class Amendment {
  private Amendment() {}

  /**
   * The event that is amended.
   *
   * @throws Problem when no event of that id is known
   */
  static LoggedEvent target(DataFolder folder, String id) {
    try (KnownEvents events = KnownEvents.open(folder.root())) {
      return events
          .withId(id)
          .orElseThrow(
              () ->
                  new Problem(
                      "No event has the id "
                          + id
                          + ". The ids of an assembly's events are listed by: sealspan ask history"
                          + " --assembly ID"));
    }
  }

  /** The moment of deciding, on this machine's clock and in its zone. */
  static Moment today() {
    return new Moment(LocalDate.now(), null, ZoneId.systemDefault().getId());
  }

  /** The amendment with its envelope. */
  static LoggedEvent logged(AssemblyEvent amendment, String source) {
    return new LoggedEvent(
        NaturalKey.idOf(source, amendment),
        source,
        amendment,
        null,
        ReportedOrigin.NOT_RECORDED,
        Instant.now(),
        Arrival.LIVE);
  }
}

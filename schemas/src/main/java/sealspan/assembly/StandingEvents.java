package sealspan.assembly;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;

/** The events of a subject that hold, for subjects whose history needs no more folding. */
public final class StandingEvents {
  private static final Comparator<StandingEvent> IN_TIME =
      Comparator.comparing((StandingEvent e) -> e.event().when().day())
          .thenComparing(
              e -> e.event().when().minuteOfDay(), Comparator.nullsFirst(Comparator.naturalOrder()))
          .thenComparing(StandingEvent::id);

  private StandingEvents() {}

  /**
   * The standing events of one subject, by day, minute and event id.
   *
   * @param subject the subject; events of others are passed over
   * @param events events in any order, with any repetition
   */
  public static List<StandingEvent> of(Subject subject, Collection<LoggedEvent> events) {
    List<StandingEvent> own = new ArrayList<>();
    for (StandingEvent event : EventResolution.of(events).standing()) {
      if (event.event().subject().equals(subject)) {
        own.add(event);
      }
    }
    own.sort(IN_TIME);
    return own;
  }

  static Comparator<StandingEvent> inTime() {
    return IN_TIME;
  }
}

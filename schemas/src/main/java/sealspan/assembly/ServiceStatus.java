package sealspan.assembly;

import java.time.LocalDate;
import java.util.List;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyRemoved;
import sealspan.event.ServiceStateChanged;

/**
 * Whether an assembly is in place and in service, after its last event.
 *
 * @param state the state
 * @param removedOn day of removal; null while it is in place
 */
public record ServiceStatus(State state, LocalDate removedOn) {
  /** Service states. */
  public enum State {
    IN_SERVICE,
    WINTERISED,
    OFF,
    REMOVED
  }

  /** The status after the events, which are in canonical order. */
  static ServiceStatus of(List<StandingEvent> ordered) {
    State state = State.IN_SERVICE;
    LocalDate removedOn = null;
    for (StandingEvent event : ordered) {
      if (event.event() instanceof ServiceStateChanged changed
          && changed.state() != null
          && removedOn == null) {
        state = State.valueOf(changed.state().name());
      } else if (event.event() instanceof AssemblyRemoved removed) {
        state = State.REMOVED;
        removedOn = removed.when().day();
      } else if (event.event() instanceof AssemblyInstalled) {
        state = State.IN_SERVICE;
        removedOn = null;
      }
    }
    return new ServiceStatus(state, removedOn);
  }
}

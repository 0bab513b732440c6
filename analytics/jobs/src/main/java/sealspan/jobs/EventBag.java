package sealspan.jobs;

import java.util.ArrayList;
import java.util.List;
import org.apache.flink.api.common.state.ListState;
import org.apache.flink.api.common.state.ListStateDescriptor;
import sealspan.event.LoggedEvent;

/**
 * The set of events that one key has seen, in keyed state. The same event with the same envelope
 * counts once; under one id there may be several, which is for the history to judge.
 */
final class EventBag {
  static final ListStateDescriptor<byte[]> STATE = DistinctBytes.named("events");

  private final DistinctBytes events;

  EventBag(ListState<byte[]> events) {
    this.events = new DistinctBytes(events);
  }

  /** Takes in an event of the current key. */
  void add(Addressed event) throws Exception {
    events.add(event.packed);
  }

  /** Whether the current key has seen no event. */
  boolean isEmpty() throws Exception {
    return packed().isEmpty();
  }

  /** The events of the current key, packed, in no order. */
  List<byte[]> packed() throws Exception {
    return events.all();
  }

  /** The events of the current key, in no order. */
  List<LoggedEvent> events() throws Exception {
    List<LoggedEvent> unpacked = new ArrayList<>();
    for (byte[] packed : packed()) {
      unpacked.add(EventBytes.unpack(packed));
    }
    return unpacked;
  }
}

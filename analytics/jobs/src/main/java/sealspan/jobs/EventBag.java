package sealspan.jobs;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.flink.api.common.state.MapState;
import org.apache.flink.api.common.state.MapStateDescriptor;
import org.apache.flink.api.common.typeinfo.PrimitiveArrayTypeInfo;
import org.apache.flink.api.common.typeinfo.Types;
import sealspan.event.LoggedEvent;

/**
 * The set of events that one key has seen, in keyed state: by event id all that came under it,
 * which is one but for duplicates and conflicts. The same event with the same envelope counts once,
 * so a log that repeats itself does not make the state grow.
 */
final class EventBag {
  static final MapStateDescriptor<String, byte[]> STATE =
      new MapStateDescriptor<>(
          "events", Types.STRING, PrimitiveArrayTypeInfo.BYTE_PRIMITIVE_ARRAY_TYPE_INFO);

  private static final int LENGTH_BYTES = 4;

  private final MapState<String, byte[]> byId;

  EventBag(MapState<String, byte[]> byId) {
    this.byId = byId;
  }

  /** Takes in an event of the current key; tells whether it was new. */
  boolean add(Addressed event) throws Exception {
    byte[] known = byId.get(event.id);
    for (byte[] packed : known == null ? List.<byte[]>of() : split(known)) {
      if (Arrays.equals(packed, event.event)) {
        return false;
      }
    }
    byId.put(event.id, joined(known == null ? new byte[0] : known, event.event));
    return true;
  }

  /** Whether the current key has seen no event. */
  boolean isEmpty() throws Exception {
    return byId.isEmpty();
  }

  /** The events of the current key, packed, in no order. */
  List<byte[]> packed() throws Exception {
    List<byte[]> all = new ArrayList<>();
    for (byte[] underOneId : byId.values()) {
      all.addAll(split(underOneId));
    }
    return all;
  }

  /** The events of the current key, in no order. */
  List<LoggedEvent> events() throws Exception {
    List<LoggedEvent> events = new ArrayList<>();
    for (byte[] packed : packed()) {
      events.add(EventBytes.unpack(packed));
    }
    return events;
  }

  private static byte[] joined(byte[] known, byte[] added) {
    return ByteBuffer.allocate(known.length + LENGTH_BYTES + added.length)
        .put(known)
        .putInt(added.length)
        .put(added)
        .array();
  }

  private static List<byte[]> split(byte[] joined) {
    List<byte[]> parts = new ArrayList<>(1);
    for (ByteBuffer in = ByteBuffer.wrap(joined); in.hasRemaining(); ) {
      byte[] part = new byte[in.getInt()];
      in.get(part);
      parts.add(part);
    }
    return parts;
  }
}

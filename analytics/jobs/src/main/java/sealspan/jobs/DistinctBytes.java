package sealspan.jobs;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.flink.api.common.state.ListState;
import org.apache.flink.api.common.state.ListStateDescriptor;
import org.apache.flink.api.common.typeinfo.PrimitiveArrayTypeInfo;

/**
 * The different packed things that one key has seen, in keyed state. To add one is to append it
 * unseen, and to read them is one look for the key: a look for each of them, or a search through
 * all of a key, is what a long catch-up spends its time on. What came twice is dropped at reading,
 * so a log that repeats itself makes the state grow only until then.
 */
final class DistinctBytes {
  private final ListState<byte[]> state;

  DistinctBytes(ListState<byte[]> state) {
    this.state = state;
  }

  static ListStateDescriptor<byte[]> named(String name) {
    return new ListStateDescriptor<>(name, PrimitiveArrayTypeInfo.BYTE_PRIMITIVE_ARRAY_TYPE_INFO);
  }

  /** Takes one in for the current key. */
  void add(byte[] packed) throws Exception {
    state.add(packed);
  }

  /** Those of the current key, each once, in no order; not to be changed. */
  List<byte[]> all() throws Exception {
    List<byte[]> distinct = new ArrayList<>();
    Set<ByteBuffer> seen = new LinkedHashSet<>();
    boolean repeated = false;
    Iterable<byte[]> added = state.get();
    for (byte[] packed : added == null ? List.<byte[]>of() : added) {
      if (seen.add(ByteBuffer.wrap(packed))) {
        distinct.add(packed);
      } else {
        repeated = true;
      }
    }
    if (repeated) {
      state.update(distinct);
    }
    return distinct;
  }
}

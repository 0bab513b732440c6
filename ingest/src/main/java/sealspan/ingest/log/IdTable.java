package sealspan.ingest.log;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.LongBuffer;
import java.util.ArrayList;
import java.util.List;

/**
 * An open-addressing table of (hash of an id, digest of the content, place), three longs a slot. A
 * slot's number grows with the hash, so a table is copied into a larger one in order. Several
 * entries may have one hash.
 */
final class IdTable {
  static final int SLOT_BYTES = 3 * Long.BYTES;

  /** Slots of one buffer; a table of any size is a row of such buffers. */
  static final int CHUNK_SLOTS = 1 << 24;

  /** Found nothing. */
  static final long NONE = -1;

  private static final double FULLEST = 0.7;
  private static final int OFFSET_BITS = 48;

  private final List<LongBuffer> chunks;
  private final long capacity;
  private long count;

  IdTable(List<LongBuffer> chunks, long capacity, long count) {
    this.chunks = chunks;
    this.capacity = capacity;
    this.count = count;
  }

  /** An empty table on the heap with room for some entries. */
  static IdTable onHeap(long entries) {
    long capacity = capacityFor(entries);
    List<LongBuffer> chunks = new ArrayList<>();
    for (long left = capacity; left > 0; left -= CHUNK_SLOTS) {
      chunks.add(LongBuffer.allocate((int) Math.min(left, CHUNK_SLOTS) * 3));
    }
    return new IdTable(chunks, capacity, 0);
  }

  /** Slots that a table for some entries has. */
  static long capacityFor(long entries) {
    return (long) (entries / FULLEST) + 16;
  }

  /** Gives out every entry, in order of slots. */
  interface Visitor {
    void entry(long hash, long digest, long place);
  }

  long count() {
    return count;
  }

  long capacity() {
    return capacity;
  }

  boolean isFull() {
    return count >= capacity * FULLEST;
  }

  /**
   * A hash of an id, spread over 64 bits and never 0, which marks a free slot. Two ids may share
   * one: whoever relies on a match reads the entry.
   */
  static long hash(byte[] id) {
    long h = 0xcbf29ce484222325L;
    for (byte b : id) {
      h = (h ^ (b & 0xFF)) * 0x100000001b3L;
    }
    h = (h ^ (h >>> 30)) * 0xbf58476d1ce4e5b9L;
    h = (h ^ (h >>> 27)) * 0x94d049bb133111ebL;
    h ^= h >>> 31;
    return h == 0 ? 1 : h;
  }

  static long packed(Place place) {
    return ((long) place.partition() << OFFSET_BITS) | place.offset();
  }

  static Place unpacked(long place) {
    return new Place((int) (place >>> OFFSET_BITS), place & ((1L << OFFSET_BITS) - 1));
  }

  /** Place of the entry with this hash and digest, or {@link #NONE}. */
  long find(long hash, long digest) {
    for (long slot = first(hash); ; slot = next(slot)) {
      long h = get(slot, 0);
      if (h == 0) {
        return NONE;
      }
      if (h == hash && get(slot, 1) == digest) {
        return get(slot, 2);
      }
    }
  }

  /** Whether there is an entry with this hash. */
  boolean holds(long hash) {
    long slot = first(hash);
    while (get(slot, 0) != 0 && get(slot, 0) != hash) {
      slot = next(slot);
    }
    return get(slot, 0) != 0;
  }

  /** Adds the places of all entries with this hash to a list. */
  void places(long hash, List<Long> into) {
    for (long slot = first(hash); get(slot, 0) != 0; slot = next(slot)) {
      if (get(slot, 0) == hash) {
        into.add(get(slot, 2));
      }
    }
  }

  /** Adds an entry; the caller sees to it that it is not there and that the table is not full. */
  void put(long hash, long digest, long place) {
    long slot = first(hash);
    while (get(slot, 0) != 0) {
      slot = next(slot);
    }
    set(slot, 0, hash);
    set(slot, 1, digest);
    set(slot, 2, place);
    count++;
  }

  void each(Visitor visitor) {
    for (long slot = 0; slot < capacity; slot++) {
      if (get(slot, 0) != 0) {
        visitor.entry(get(slot, 0), get(slot, 1), get(slot, 2));
      }
    }
  }

  /** Cuts bytes into the buffers of a table. */
  interface Mapping {
    ByteBuffer map(long firstByte, long length) throws IOException;
  }

  static List<LongBuffer> chunks(long capacity, Mapping mapping) throws IOException {
    List<LongBuffer> chunks = new ArrayList<>();
    for (long slot = 0; slot < capacity; slot += CHUNK_SLOTS) {
      long slots = Math.min(capacity - slot, CHUNK_SLOTS);
      chunks.add(mapping.map(slot * SLOT_BYTES, slots * SLOT_BYTES).asLongBuffer());
    }
    return chunks;
  }

  private long first(long hash) {
    return ((hash >>> 32) * capacity) >>> 32;
  }

  private long next(long slot) {
    return slot + 1 == capacity ? 0 : slot + 1;
  }

  private long get(long slot, int field) {
    return chunks.get((int) (slot / CHUNK_SLOTS)).get((int) (slot % CHUNK_SLOTS) * 3 + field);
  }

  private void set(long slot, int field, long value) {
    chunks.get((int) (slot / CHUNK_SLOTS)).put((int) (slot % CHUNK_SLOTS) * 3 + field, value);
  }
}

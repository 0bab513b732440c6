package sealspan.ingest.log;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.LongBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The ids of a topic with the digests and places of their entries, up to some offsets. A file,
 * mapped into memory and never changed in place, holds the most; what came since is on the heap. A
 * file is always whole and says which topic and offsets it covers, so it may be lost, be old, or be
 * replaced by another process: the rest is read from the topic.
 */
final class IdIndex {
  private static final long MAGIC = 0x5345414c49445331L;
  private static final int HEADER_BYTES = 1 << 14;

  /** Fewer entries than this are sooner read again than written. */
  private static final long WORTH_SAVING = 10_000;

  /** Fewer entries than this, some 35 bytes each, are not written to save memory. */
  private static final long HEAP_AT_LEAST = 2_000_000;

  private static final int FILE_SHARE = 4;

  private final Path file;
  private final String topicIdentity;
  private final long[] covered;
  private IdTable base;
  private IdTable recent;
  private Instant latest;

  private IdIndex(Path file, String topicIdentity, long[] covered, IdTable base, Instant latest) {
    this.file = file;
    this.topicIdentity = topicIdentity;
    this.covered = covered;
    this.base = base;
    this.recent = IdTable.onHeap(1_000);
    this.latest = latest;
  }

  /**
   * Opens the index of a topic.
   *
   * @param topicIdentity tells this topic from every other, also from one of the same name
   * @param end end of each partition now; a file that covers more is of a longer log and not used
   */
  static IdIndex open(Path file, String topicIdentity, long[] end) throws IOException {
    if (Files.exists(file)) {
      try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
        IdIndex index = readFrom(channel, file, topicIdentity, end);
        if (index != null) {
          return index;
        }
      }
    }
    IdTable empty = IdTable.onHeap(0);
    return new IdIndex(file, topicIdentity, new long[end.length], empty, Instant.EPOCH);
  }

  private static IdIndex readFrom(FileChannel channel, Path file, String topicIdentity, long[] end)
      throws IOException {
    ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES);
    while (header.hasRemaining() && channel.read(header) >= 0) {
      continue; // A read may return less than was asked for.
    }
    header.flip();
    if (header.limit() < HEADER_BYTES || header.getLong() != MAGIC) {
      return null;
    }
    byte[] identity = new byte[header.getInt()];
    header.get(identity);
    if (!new String(identity, StandardCharsets.UTF_8).equals(topicIdentity)) {
      return null;
    }
    Instant latest = Instant.ofEpochMilli(header.getLong());
    long capacity = header.getLong();
    long count = header.getLong();
    long[] covered = new long[header.getInt()];
    for (int p = 0; p < covered.length; p++) {
      covered[p] = header.getLong();
      if (p >= end.length || covered[p] > end[p]) {
        return null;
      }
    }
    if (channel.size() != HEADER_BYTES + capacity * IdTable.SLOT_BYTES) {
      return null;
    }
    List<LongBuffer> chunks =
        IdTable.chunks(
            capacity,
            (at, length) -> channel.map(FileChannel.MapMode.READ_ONLY, HEADER_BYTES + at, length));
    IdTable base = new IdTable(chunks, capacity, count);
    return new IdIndex(file, topicIdentity, Arrays.copyOf(covered, end.length), base, latest);
  }

  /** Place of the entry with this id hash and digest; null when there is none. */
  Place find(long hash, long digest) {
    long place = recent.find(hash, digest);
    if (place == IdTable.NONE) {
      place = base.find(hash, digest);
    }
    return place == IdTable.NONE ? null : IdTable.unpacked(place);
  }

  /** Places of all entries whose id has this hash, the first in the log first. */
  List<Place> places(long hash) {
    List<Long> places = new ArrayList<>(0);
    base.places(hash, places);
    recent.places(hash, places);
    return places.isEmpty() ? List.of() : places.stream().map(IdTable::unpacked).toList();
  }

  /** Takes note of an entry; one that is known is left as it is. */
  void put(long hash, long digest, Place place, Instant recordedAt) throws IOException {
    if (find(hash, digest) == null) {
      add(hash, digest, place, recordedAt);
    } else {
      saw(recordedAt);
    }
  }

  private void saw(Instant recordedAt) {
    if (recordedAt.isAfter(latest)) {
      latest = recordedAt;
    }
  }

  /** Takes note of an entry that is not known. */
  void add(long hash, long digest, Place place, Instant recordedAt) throws IOException {
    saw(recordedAt);
    if (recent.count() >= Math.max(HEAP_AT_LEAST, base.count() / FILE_SHARE)) {
      save();
    }
    if (recent.isFull()) {
      IdTable larger = IdTable.onHeap(recent.count() * 2);
      recent.each(larger::put);
      recent = larger;
    }
    recent.put(hash, digest, IdTable.packed(place));
  }

  /** Offset of the first entry of a partition that the index does not cover. */
  long covered(int partition) {
    return covered[partition];
  }

  void cover(int partition, long next) {
    covered[partition] = Math.max(covered[partition], next);
  }

  /** Latest recorded time of the entries covered; the epoch for none. */
  Instant latest() {
    return latest;
  }

  long count() {
    return base.count() + recent.count();
  }

  void saveIfWorthwhile() throws IOException {
    if (recent.count() >= WORTH_SAVING) {
      save();
    }
  }

  /** Writes a new file beside the old, then swaps. */
  void save() throws IOException {
    Files.createDirectories(file.getParent());
    Path draft = Files.createTempFile(file.getParent(), file.getFileName().toString(), ".new");
    long capacity = IdTable.capacityFor(count());
    List<MappedByteBuffer> mapped = new ArrayList<>();
    IdTable merged;
    try (FileChannel channel =
        FileChannel.open(draft, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      merged =
          new IdTable(
              IdTable.chunks(
                  capacity,
                  (at, length) -> {
                    mapped.add(
                        channel.map(FileChannel.MapMode.READ_WRITE, HEADER_BYTES + at, length));
                    return mapped.get(mapped.size() - 1);
                  }),
              capacity,
              0);
      base.each(merged::put);
      recent.each(merged::put);
      mapped.forEach(MappedByteBuffer::force);
      channel.write(header(capacity), 0);
      channel.force(true);
    } catch (IOException e) {
      Files.deleteIfExists(draft);
      throw e;
    }
    Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    base = merged;
    recent = IdTable.onHeap(1_000);
  }

  private ByteBuffer header(long capacity) {
    byte[] identity = topicIdentity.getBytes(StandardCharsets.UTF_8);
    ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES);
    header.putLong(MAGIC).putInt(identity.length).put(identity);
    header.putLong(latest.toEpochMilli()).putLong(capacity).putLong(count());
    header.putInt(covered.length);
    for (long c : covered) {
      header.putLong(c);
    }
    return header.rewind();
  }
}

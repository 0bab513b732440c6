package sealspan.ingest.log;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.common.utils.Utils;

/** An append-only log in memory, which behaves as the one in Kafka does. */
abstract class InMemoryAppendLog<T> implements AppendLog<T> {
  private final EntryForm<T> form;
  private final RecordedClock clock;
  private final List<List<Recorded<T>>> partitions = new ArrayList<>();
  private final Map<String, Recorded<T>> byId = new HashMap<>();

  InMemoryAppendLog(EntryForm<T> form, InstantSource source) {
    this.form = form;
    this.clock = new RecordedClock(source);
    for (int p = 0; p < form.partitions(); p++) {
      partitions.add(new ArrayList<>());
    }
  }

  @Override
  public Ready<T> ready(T entry) {
    return Prepared.of(entry, form);
  }

  @Override
  public synchronized Sending<T> send(List<Ready<T>> entries) {
    Instant recordedAt = clock.next();
    List<Receipt<T>> receipts = new ArrayList<>(entries.size());
    for (Ready<T> entry : entries) {
      receipts.add(append(form.stored(((Prepared<T>) entry).named(), recordedAt), recordedAt));
    }
    notifyAll();
    return () -> receipts;
  }

  private Receipt<T> append(T stored, Instant recordedAt) {
    Recorded<T> there = byId.get(form.id(stored));
    if (there != null) {
      return digest(there.entry()) == digest(stored)
          ? new Receipt.Duplicate<>(there.place())
          : new Receipt.Conflict<>(there);
    }
    byte[] key = form.key(stored).getBytes(StandardCharsets.UTF_8);
    int p = Utils.toPositive(Utils.murmur2(key)) % partitions.size();
    Place place = new Place(p, partitions.get(p).size());
    Recorded<T> recorded = new Recorded<>(place, recordedAt, stored);
    partitions.get(p).add(recorded);
    byId.put(form.id(stored), recorded);
    return new Receipt.Appended<>(recorded);
  }

  private long digest(T stored) {
    return form.digest(stored, form.content(stored));
  }

  @Override
  public synchronized Cut end() {
    return Cut.of(partitions.stream().mapToLong(List::size).toArray());
  }

  @Override
  public LogReader<T> reader(Cut from) {
    return new Reader(KafkaRecords.padded(from, partitions.size()));
  }

  /** What lies behind some offsets; waits for it if there is nothing. */
  private synchronized List<Recorded<T>> after(long[] offsets, Duration limit) {
    long deadline = System.nanoTime() + limit.toNanos();
    while (true) {
      List<Recorded<T>> found = new ArrayList<>();
      for (int p = 0; p < offsets.length; p++) {
        List<Recorded<T>> all = partitions.get(p);
        found.addAll(all.subList((int) Math.min(offsets[p], all.size()), all.size()));
      }
      long left = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
      if (!found.isEmpty() || left <= 0) {
        return found;
      }
      try {
        wait(left);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new LogException("Stopped while reading " + form.topic() + ".", e);
      }
    }
  }

  private final class Reader implements LogReader<T> {
    private final long[] offsets;

    Reader(long[] offsets) {
      this.offsets = offsets;
    }

    @Override
    public List<Recorded<T>> poll(Duration limit) {
      List<Recorded<T>> found = after(offsets, limit);
      found.forEach(r -> offsets[r.place().partition()] = r.place().offset() + 1);
      return found;
    }

    @Override
    public Cut position() {
      return Cut.of(offsets);
    }

    @Override
    public void close() {}
  }

  @Override
  public void close() {}
}
